"""What was bought: orders, line by line, with the delivery spread over them."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import Purchase, Settings
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.money import parse_money, share
from batchleaf.records.amounts import read_named, read_some
from batchleaf.records.grammar import read_date
from batchleaf.records.inventory import Entry, InventoryFile
from batchleaf.records.known import KnownSupplies
from batchleaf.records.prices import read_price
from batchleaf.records.report import Report
from batchleaf.records.written import OrderWritten


@dataclass(frozen=True, slots=True)
class OrderLine:
    """``chalk-card 25 sheets, 9.75`` in its pieces."""

    supply: str
    amount: str
    price: str


def read_order_line(text: str) -> OrderLine:
    """A line of an order: supply, amount, and after a comma what it cost. Raises :class:`MeasureError`.

    ``chalk-card 25 sheets, 9.75`` · ``found-card 6 sheets, price unknown`` · ``star-sticker 20, gift``
    """
    taken, comma, price = (piece.strip() for piece in _parted(text))
    supply, amount = read_named(taken)
    if not amount:
        raise MeasureError(f"“{text}” is no line of an order; write for example chalk-card 25 sheets, 9.75")
    if not comma:
        raise MeasureError(f"“{text}” has no price; write it after a comma, like chalk-card 25 sheets, 9.75")
    if not price:
        raise MeasureError(f"“{text}” has a comma and no price; write what it cost, or price unknown")
    return OrderLine(supply, amount, price)


_BETWEEN: Final = re.compile(r",(?![0-9]{3}(?![0-9.]))")
"""The comma before a price; one between thousands belongs to its number, which says so itself."""


def _parted(text: str) -> tuple[str, str, str]:
    found = _BETWEEN.search(text)
    return (text[: found.start()], ",", text[found.end() :]) if found else (text, "", "")


def purchases_of(
    one: InventoryFile, known: KnownSupplies, settings: Settings, report: Report
) -> Iterator[Purchase]:
    """The lines of all orders in a file, each with its share of the delivery."""
    for i, order in enumerate(one.written.purchases):
        entry = Entry(one, ("purchases", i), report)
        date = entry.read("date", read_date, order.date)
        delivery = entry.read("delivery", parse_money, order.delivery, settings.currency)
        lines = list(_lines(entry, order, known, settings))
        if delivery and len(lines) == len(order.lines) and all(line.value is None for line in lines):
            report.error(
                entry.place("delivery"), "a delivery is given, and no line has a price to spread it over"
            )
        if date is not None:
            yield from _with_delivery([replace(line, date=date) for line in lines], delivery or 0)


def _lines(entry: Entry, order: OrderWritten, known: KnownSupplies, settings: Settings) -> Iterator[Purchase]:
    report = entry.report
    for i, text in enumerate(order.lines):
        place = entry.place("lines", i)
        line = report.read(place, read_order_line, text)
        if line is None:
            continue
        price = report.read(place, read_price, line.price, settings.currency)
        supply = known.find_kept(line.supply, place, report)
        quantity = report.read(place, read_some, line.amount, supply) if supply else None
        if supply is not None and quantity is not None and price is not None:
            yield Purchase(
                dt.date.min, supply.slug, quantity, price.value, order.from_ or "", price.basis, place
            )


def _with_delivery(lines: list[Purchase], delivery: int) -> Iterator[Purchase]:
    """The delivery is part of the cost (IAS 2, paragraph 10): spread by price over the priced lines."""
    weights = [Fraction(line.value or 0) for line in lines]
    if not any(weights):  # gifts alone: each line bears an equal share
        weights = [Fraction(line.value is not None) for line in lines]
    shares = share(delivery, weights)
    for line, part in zip(lines, shares, strict=True):
        yield line if line.value is None else replace(line, value=line.value + part)
