"""Rows of purchases as lines of a new file of the drawer: those that it has not and that can be read."""

from __future__ import annotations

from bisect import bisect_right
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from batchleaf.facts import NOWHERE, Problem, Purchase, Settings, Supply
from batchleaf.measure.errors import MeasureError
from batchleaf.records.archive import Reading
from batchleaf.records.nodes import Node, Plain, place_of
from batchleaf.writing.block import group_item
from batchleaf.writing.csv_in.found import Found, Remark
from batchleaf.writing.csv_in.purchases import Order, OrderRow, order_row, orders_of, second_deliveries
from batchleaf.writing.csv_in.said import Said
from batchleaf.writing.csv_in.tried import Tried, tried


def new_purchases(
    rows: Iterable[Said], reading: Reading, settings: Settings, found: Found
) -> tuple[list[str], int]:
    """The lines of the new file, and how many rows stand in them. Raises :class:`CannotMapError`."""
    supplies = {one.slug: one for one in reading.archive.supplies if not one.supposed}
    orders = orders_of(_order_rows(rows, supplies, settings, found))
    orders = _without(orders, second_deliveries(orders), found)
    known = Counter(map(_fields_of, reading.archive.purchases))
    checked = False
    while orders:
        lines = _order_lines(orders)
        read = tried(lines, reading, settings)
        faulty = _by_row(read.problems, read.node, orders)
        if not faulty and checked:
            return lines, sum(len(order.rows) for order in orders)
        if faulty:
            orders = _without(orders, faulty, found)
        else:
            orders, checked = _new_only(orders, read, known, found), True
    return [], 0


def _order_rows(
    rows: Iterable[Said], supplies: dict[str, Supply], settings: Settings, found: Found
) -> Iterator[OrderRow]:
    for said in rows:
        try:
            yield order_row(said, supplies, settings)
        except MeasureError as error:
            found.faults.append(Remark(said.line, str(error)))


def _order_lines(orders: Sequence[Order]) -> list[str]:
    lines = ["purchases:"]
    for order in orders:
        keys: dict[str, Plain] = {
            "date": order.date,
            **({"from": order.source} if order.source else {}),
            "lines": [row.text for row in order.rows],
            **({"delivery": order.delivery} if order.delivery else {}),
        }
        lines += group_item(keys, 2)
    return lines


def _by_row(problems: Sequence[Problem], node: Node, orders: Sequence[Order]) -> dict[int, str]:
    """Line of the sheet → what is wrong; what is wrong with an order is wrong with all of its rows."""
    at_row = {
        place_of(node, ("purchases", i, "lines", j)).line: row
        for i, order in enumerate(orders)
        for j, row in enumerate(order.rows)
    }
    starts = [place_of(node, ("purchases", i)).line for i in range(len(orders))]
    told: dict[int, str] = {}
    for problem in problems:
        line = problem.place.line
        order = orders[max(bisect_right(starts, line) - 1, 0)]
        for row in (at_row[line],) if line in at_row else order.rows:
            told.setdefault(row.line, problem.sentence)
    return told


def _without(orders: Sequence[Order], faulty: dict[int, str], found: Found) -> tuple[Order, ...]:
    """The orders without faulty rows; one with a delivery is taken whole, or not at all."""
    kept: list[Order] = []
    for order in orders:
        bad = {row.line: faulty[row.line] for row in order.rows if row.line in faulty}
        if bad and order.delivery:
            lines = ", ".join(map(str, sorted(bad)))
            why = f"its order is not taken without line {lines}, since the delivery belongs to all of it"
            bad = {row.line: bad.get(row.line, why) for row in order.rows}
        found.faults += (Remark(line, sentence) for line, sentence in bad.items())
        if rows := tuple(row for row in order.rows if row.line not in bad):
            kept.append(replace(order, rows=rows))
    return tuple(kept)


def _new_only(
    orders: Sequence[Order], read: Tried, known: Counter[object], found: Found
) -> tuple[Order, ...]:
    """The orders without rows that are in the drawer already, field by field, each as often as there."""
    by_line = {one.place.line: one for one in read.bought}
    left, kept = known.copy(), list[Order]()
    for i, order in enumerate(orders):
        there: dict[int, str] = {}
        for j, row in enumerate(order.rows):
            fields = _fields_of(by_line[place_of(read.node, ("purchases", i, "lines", j)).line])
            if left[fields]:
                left[fields] -= 1
                there[row.line] = "this purchase is in the drawer already, the same in every field"
        found.there += (Remark(line, sentence) for line, sentence in there.items())
        rest = replace(order, rows=tuple(row for row in order.rows if row.line not in there))
        kept += _whole(rest, some_there=bool(there), delivery=order.delivery, found=found)
    return tuple(kept)


def _whole(order: Order, *, some_there: bool, delivery: str, found: Found) -> Iterator[Order]:
    """The order, unless its delivery would be spread over a rest of it."""
    if order.rows and some_there and delivery:
        why = (
            "other lines of this order are in the drawer already, and its delivery belongs to all of"
            " them; write this line there"
        )
        found.faults += (Remark(row.line, why) for row in order.rows)
    elif order.rows:
        yield order


def _fields_of(purchase: Purchase) -> object:
    """All that is told of a purchase; where from in words that are spelt alike."""
    return replace(purchase, supplier=" ".join(purchase.supplier.split()), place=NOWHERE)
