"""Rows of a sheet as orders: what came on one day from one place is one order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from batchleaf.facts import Settings, Supply
from batchleaf.measure.errors import MeasureError
from batchleaf.records.known import bare
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.writing.csv_in.cells import iso_day
from batchleaf.writing.csv_in.said import Said


@dataclass(frozen=True, slots=True)
class OrderRow:
    """A row as a line of an order; ``delivery`` is that of the whole order, where this row tells it."""

    line: int
    date: str
    source: str
    text: str
    delivery: str = ""


@dataclass(frozen=True, slots=True)
class Order:
    """What came on one day from one place, with the rows that say so."""

    date: str
    source: str
    rows: tuple[OrderRow, ...]

    @property
    def delivery(self) -> str:
        """What its delivery cost; rows of one order are held to one such value."""
        return next((row.delivery for row in self.rows if row.delivery), "")


def order_row(said: Said, supplies: Mapping[str, Supply], settings: Settings) -> OrderRow:
    """A row as a line of an order. Raises :class:`MeasureError`."""
    for key in ("date", "supply", "amount"):
        if not said.get(key):
            raise MeasureError(f"no {key} stands here; a purchase has a date, a supply and an amount")
    name = said.get("supply")
    slug = name if name in supplies else _called(name, supplies)
    price = said.priced("price", settings.currency) or "price unknown"
    return OrderRow(
        said.line,
        iso_day(said.get("date")),
        said.get("from"),
        f"{slug} {said.amount()}, {price}",
        said.get("delivery") if said.get("delivery").strip("0. ") else "",
    )


def _called(name: str, supplies: Mapping[str, Supply]) -> str:
    """The short name of the supply that is called so. Raises :class:`MeasureError`."""
    wanted = bare(name)
    found = [one.slug for one in supplies.values() if wanted in (bare(one.slug), bare(one.name))]
    if len(found) == 1:
        return found[0]
    if found:
        raise MeasureError(f"“{name}” may be {' or '.join(found)}; write which one")
    names = [*supplies, *(one.name for one in supplies.values())]
    hint = did_you_mean(name, names) or "; write it there first, or import the sheet of supplies before this"
    raise MeasureError(f"“{name}” is not in the drawer{hint}")


def orders_of(rows: Iterable[OrderRow]) -> tuple[Order, ...]:
    """The rows by day and place, in the order of the sheet."""
    found: dict[tuple[str, str], list[OrderRow]] = {}
    for row in rows:
        found.setdefault((row.date, row.source), []).append(row)
    return tuple(Order(date, source, tuple(rows)) for (date, source), rows in found.items())


def second_deliveries(orders: Sequence[Order]) -> dict[int, str]:
    """Line → what is told of it, where an order has its delivery in several rows."""
    return {
        row.line: (
            f"this order has its delivery in line {first.line} already; write what the delivery of"
            " the whole order cost into one of its lines"
        )
        for order in orders
        for first, row in _after_the_first([row for row in order.rows if row.delivery])
    }


def _after_the_first(rows: Sequence[OrderRow]) -> Iterator[tuple[OrderRow, OrderRow]]:
    return ((rows[0], row) for row in rows[1:])
