"""What lay in the drawer before the first record."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from dataclasses import replace

from batchleaf.facts import Opening, Place, Scrap, Settings, Supply
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import parse_size
from batchleaf.records.amounts import read_come_in
from batchleaf.records.grammar import read_date
from batchleaf.records.inventory import Entry
from batchleaf.records.prices import NOT_KNOWN, read_price
from batchleaf.records.written import OpeningWritten

_SCRAP = re.compile(
    r"(?:(?P<count>[0-9]{1,4})\s+of\s+)?(?P<size>[^,]+)(?:,\s*(?:worth\s+)?(?P<worth>[^,\s][^,]*))?"
)


def with_opening(supply: Supply, entry: Entry, written: OpeningWritten | None, settings: Settings) -> Supply:
    """The supply with what was there of it; ``entry`` is where its opening stands."""
    if written is None:
        return supply
    date = entry.read("date", read_date, written.date)
    price = entry.read("worth", read_price, written.worth, settings.currency) or NOT_KNOWN
    scraps = tuple(_scraps(supply, entry, written, date or dt.date.min, settings))
    if written.worth and written.amount is None:
        entry.report.error(
            entry.place("worth"), "a worth is given, and no amount that is worth it; write the amount too"
        )
    quantity = entry.read("amount", read_come_in, written.amount, supply)
    there = None
    if quantity is not None and date is not None:
        there = Opening(date, quantity, price.value, price.basis, entry.place())
    return replace(supply, opening=there, scraps=scraps)


def _scraps(
    supply: Supply, entry: Entry, written: OpeningWritten, date: dt.date, settings: Settings
) -> Iterator[Scrap]:
    for i, text in enumerate(written.scraps):
        place = entry.place("scraps", i)
        scrap = entry.report.read(place, _scrap, text, date, settings, place)
        if scrap is not None:
            yield replace(scrap, size=supply.piece(scrap.size))


def _scrap(text: str, date: dt.date, settings: Settings, place: Place) -> Scrap:
    """``2 of 4 x 9, worth 0.40``."""
    found = _SCRAP.fullmatch(text.strip())
    if found is None:
        raise MeasureError(f"“{text}” is no scrap; write for example 2 of 4 x 9, worth 0.40")
    size = parse_size(found["size"], settings.unit)
    price = read_price(found["worth"], settings.currency) if found["worth"] else NOT_KNOWN
    return Scrap(size, int(found["count"] or 1), price.value, date, price.basis, place)
