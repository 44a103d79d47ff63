"""The drawer year by year: what it held, what came in, what went out, what was left.

For each pile, and for all of them together, in quantity and in value:

    start + there before + bought + of unknown origin + found + used + gone + missing = end

where used, gone and missing are below nothing. Quantities of different supplies have no sum.
"""

from __future__ import annotations

import datetime as dt
from collections import defaultdict
from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum, auto
from fractions import Fraction
from itertools import groupby
from typing import Final

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.entries import Kind
from batchleaf.core.movements import Holding, Ledger, Movement


class Way(Enum):
    """How something came into the drawer or left it."""

    BEFORE = auto()
    """There before the first record of it."""
    BOUGHT = auto()
    UNEXPLAINED = auto()
    """Used, and in no record of what came in."""
    FOUND = auto()
    """More at a count than expected."""
    USED = auto()
    """Taken by batches, less what they kept."""
    GONE = auto()
    """Left for something else than a batch."""
    EMPTIED = auto()
    """Of what is kept by level: what a count finds less has been used."""
    MISSING = auto()
    """Less at a count than expected."""


_WAY_OF: Final = {
    Kind.OPENING: Way.BEFORE,
    Kind.BOUGHT: Way.BOUGHT,
    Kind.UNEXPLAINED: Way.UNEXPLAINED,
    Kind.TAKEN: Way.USED,
    Kind.KEPT: Way.USED,
    Kind.GONE: Way.GONE,
}


@dataclass(frozen=True, slots=True)
class Amount:
    """So much of one pile, and what it cost."""

    quantity: Fraction
    cost: Cost

    def __add__(self, other: Amount) -> Amount:
        return Amount(self.quantity + other.quantity, self.cost + other.cost)


EMPTY: Final = Amount(Fraction(0), NOTHING)


@dataclass(frozen=True, slots=True)
class PileYear:
    """One pile over a year; what left it is below nothing. A way nothing went is not there."""

    holding: Holding
    start: Amount
    ways: Mapping[Way, Amount]
    end: Amount


@dataclass(frozen=True, slots=True)
class DrawerMonth:
    """``bought``: what was paid, delivery included. ``worth``: of all, at the end of the month."""

    bought: Cost
    worth: Cost | None


@dataclass(frozen=True, slots=True)
class DrawerYear:
    """All piles over a year. ``months``: what was bought in each, and what all was worth at its end.

    A month before the first movement, or after the day of which the drawer is told, has
    no worth: nobody has told of it.
    """

    piles: tuple[PileYear, ...]
    months: tuple[DrawerMonth, ...]

    @property
    def start(self) -> Cost:
        """What the drawer was worth before the year."""
        return sum((pile.start.cost for pile in self.piles), NOTHING)

    @property
    def end(self) -> Cost:
        """What it was worth at the end of the year, or on the day of which the drawer is told."""
        return sum((pile.end.cost for pile in self.piles), NOTHING)

    def moved(self, way: Way) -> Cost | None:
        """What went one way in all; ``None`` where nothing did."""
        costs = [pile.ways[way].cost for pile in self.piles if way in pile.ways]
        return sum(costs, NOTHING) if costs else None


def drawer_years(
    ledger: Ledger, years: Iterable[int], until: dt.date, by_level: Container[str]
) -> dict[int, DrawerYear]:
    """The drawer in each of ``years``, which are in order and hold every movement.

    ``until``: the day of which the drawer is told; no movement comes after it.
    ``by_level``: supplies of which nobody measures what is used.
    """
    by_month = {
        month: list(moved) for month, moved in groupby(ledger.movements, key=lambda one: _month_of(one.date))
    }
    first = min(by_month, default=_month_of(until))
    held: dict[Holding, Amount] = {}
    found: dict[int, DrawerYear] = {}
    for year in years:
        before, moved, months = dict(held), list[Movement](), list[DrawerMonth]()
        for month in range(1, 13):
            here = by_month.get((year, month), [])
            held |= {one.holding: Amount(one.on_hand, one.worth) for one in here}
            told = first <= (year, month) <= _month_of(until)
            worth = sum((amount.cost for amount in held.values()), NOTHING) if told else None
            bought = sum((one.cost for one in here if one.kind is Kind.BOUGHT), NOTHING)
            months.append(DrawerMonth(bought, worth))
            moved += here
        found[year] = DrawerYear(tuple(_piles(before, moved, held, by_level)), tuple(months))
    return found


def _month_of(date: dt.date) -> tuple[int, int]:
    return date.year, date.month


def _piles(
    before: Mapping[Holding, Amount],
    moved: Iterable[Movement],
    after: Mapping[Holding, Amount],
    by_level: Container[str],
) -> Iterator[PileYear]:
    ways: defaultdict[Holding, dict[Way, Amount]] = defaultdict(dict)
    for one in moved:
        way = _way(one, by_level)
        if way is not None:
            mine = ways[one.holding]
            mine[way] = mine.get(way, EMPTY) + Amount(one.quantity, one.cost)
    for holding, end in after.items():
        yield PileYear(holding, before.get(holding, EMPTY), ways[holding], end)


def _way(movement: Movement, by_level: Container[str]) -> Way | None:
    """``None`` for a count that found what was expected."""
    if movement.kind is not Kind.COUNTED:
        return _WAY_OF[movement.kind]
    if not movement.quantity:
        return None
    if movement.quantity > 0:
        return Way.FOUND
    return Way.EMPTIED if movement.holding.supply in by_level else Way.MISSING
