"""What left the drawer for something else than a batch: given away, spoiled by damp, used in a class."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.facts import Gone, Settings
from batchleaf.records.grammar import read_date
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.known import KnownSupplies
from batchleaf.records.pieces import read_amount_line
from batchleaf.records.report import Report


def gone_of(one: InventoryFile, known: KnownSupplies, settings: Settings, report: Report) -> Iterator[Gone]:
    """The lines of a file, each with its day and its why."""
    for i, written in enumerate(one.written.gone):
        entry = Entry(one, ("gone", i), report)
        date = entry.read("date", read_date, written.date)
        for j, text in enumerate(written.lines):
            place = entry.place("lines", j)
            line = report.read(place, read_amount_line, text, settings.unit)
            supply = known.find_kept(line.supply, place, report) if line else None
            quantity = report.read(place, line.quantity, supply) if line and supply else None
            if line is None or supply is None or quantity is None:
                continue
            if not quantity:
                report.error(place, f"“{text}” is nothing; leave the line out")
            elif date is not None:
                yield Gone(date, supply.slug, line.piece(supply), quantity, written.why, place)
