"""What was counted."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from batchleaf.facts import Count, Place, Settings
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit
from batchleaf.records.amounts import read_named
from batchleaf.records.grammar import read_date
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.known import KnownSupplies
from batchleaf.records.pieces import AmountLine, pieces_in
from batchleaf.records.report import Report

_FOUND = re.compile(r"(?P<about>about\s+)?(?P<amount>.*?)(?:\s+left)?", re.IGNORECASE)


def read_found(text: str, unit: Unit) -> AmountLine:
    """What was counted of a supply, which is always all there is. Raises :class:`MeasureError`.

    ``chalk-card 7 sheets`` · ``shoal-pad about 9`` · ``chalk-card 3 scraps 60 x 210`` · ``glue half``
    """
    bare = re.sub(r"\s+left$", "", text.strip())
    if pieces := pieces_in(bare, unit):
        return pieces
    supply, amount = read_named(text)
    if re.search(r"(^|\s)in all$", amount):
        raise MeasureError(f"“{text}”: a count is always of all there is; leave out “in all”")
    found = _FOUND.fullmatch(amount)
    if found is None or not found["amount"]:
        raise MeasureError(f"“{text}” does not say how much was found; write for example chalk-card 7 sheets")
    return AmountLine(supply, found["amount"], about=bool(found["about"]))


def counts_of(
    one: InventoryFile, known: KnownSupplies, settings: Settings, report: Report
) -> Iterator[Count]:
    """What was found on each day of counting."""
    for i, counted in enumerate(one.written.counts):
        entry = Entry(one, ("counts", i), report)
        date = entry.read("date", read_date, counted.date)
        for j, text in enumerate(counted.found):
            place = entry.place("found", j)
            line = report.read(place, read_found, text, settings.unit)
            supply = known.find_kept(line.supply, place, report) if line else None
            quantity = report.read(place, line.quantity, supply) if line and supply else None
            if line and supply and quantity is not None and date is not None:
                yield Count(date, supply.slug, quantity, line.about, line.piece(supply), place)


def counted_once(counts: Sequence[Count], report: Report) -> Iterator[Count]:
    """The counts, of which none is of the same on the same day: nobody could tell which of two stands."""
    first: dict[tuple[object, ...], Place] = {}
    for count in counts:
        same = (count.date, count.supply, count.piece)
        if same in first:
            there = first[same]
            report.error(
                count.place,
                f"“{count.supply}” was counted on {count.date.isoformat()} already, in {there.file},"
                f" line {there.line}; keep the count that stands",
            )
        else:
            first[same] = count.place
            yield count
