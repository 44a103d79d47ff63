"""What was counted."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.facts import Count
from batchleaf.measure.errors import MeasureError
from batchleaf.records.amounts import read_amount, read_named
from batchleaf.records.grammar import read_date
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.known import KnownSupplies
from batchleaf.records.report import Report

_FOUND = re.compile(r"(?P<about>about\s+)?(?P<amount>.*?)(?:\s+left)?", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class FoundLine:
    """``chalk-card about 7 sheets`` in its pieces."""

    supply: str
    amount: str
    about: bool


def read_found(text: str) -> FoundLine:
    """What was counted of a supply, which is always all there is. Raises :class:`MeasureError`.

    ``chalk-card 7 sheets`` · ``shoal-pad about 9`` · ``shoal-pad about 9 left``
    """
    supply, amount = read_named(text)
    if re.search(r"(^|\s)in all$", amount):
        raise MeasureError(f"“{text}”: a count is always of all there is; leave out “in all”")
    found = _FOUND.fullmatch(amount)
    if found is None or not found["amount"]:
        raise MeasureError(f"“{text}” does not say how much was found; write for example chalk-card 7 sheets")
    return FoundLine(supply, found["amount"], about=bool(found["about"]))


def counts_of(one: InventoryFile, known: KnownSupplies, report: Report) -> Iterator[Count]:
    """What was found on each day of counting."""
    for i, counted in enumerate(one.written.counts):
        entry = Entry(one, ("counts", i), report)
        date = entry.read("date", read_date, counted.date)
        for j, text in enumerate(counted.found):
            place = entry.place("found", j)
            line = report.read(place, read_found, text)
            supply = known.find_kept(line.supply, place, report) if line else None
            quantity = report.read(place, read_amount, line.amount, supply) if line and supply else None
            if line and supply and quantity is not None and date is not None:
                yield Count(date, supply.slug, quantity, line.about, place)
