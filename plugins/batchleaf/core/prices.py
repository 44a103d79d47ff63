"""What is asked for one make and what of it stays; what those sold brought in and cost.

Every amount is rounded once, halves up, and what stays is the difference of the two
amounts beside it, so that each line and each column adds up. Time is never priced: that
so much stays for an hour says nothing of what an hour costs.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.figures import BatchFigures
from batchleaf.core.finished import finished_of
from batchleaf.measure.money import rounded

_HOUR: Final = 60
"""Minutes."""


@dataclass(frozen=True, slots=True)
class Stays:
    """What is left of an income when a cost is taken out, in minor units; it may be less than nothing.

    ``at_least``: some of the income is not known; ``at_most``: some of the cost is not. Where
    both are so, nobody knows what is left.
    """

    amount: int
    at_least: bool = False
    at_most: bool = False

    @property
    def known(self) -> bool:
        """Whether the amount says anything."""
        return not (self.at_least and self.at_most)

    @classmethod
    def of(cls, income: Cost, cost: Cost) -> Stays:
        """``income`` less ``cost``."""
        return cls(income.known - cost.known, at_least=not income.complete, at_most=not cost.complete)


@dataclass(frozen=True, slots=True)
class OnePrice:
    """One make of a batch: its cost, the minutes it took, what is asked, what stays in all and for an hour.

    ``minutes`` is ``None`` where the record says no time; what is asked, and what stays, where
    it asks nothing.
    """

    cost: Cost
    minutes: Fraction | None
    asked: int | None
    stays: Stays | None
    per_hour: Stays | None


@dataclass(frozen=True, slots=True)
class SoldMakes:
    """Makes that were sold: how many, what they brought in, and their share of what their batch cost."""

    count: int
    brought: Cost
    cost: Cost

    @property
    def stayed(self) -> Stays:
        """What they brought in less what they cost."""
        return Stays.of(self.brought, self.cost)

    def __add__(self, other: SoldMakes) -> SoldMakes:
        return SoldMakes(self.count + other.count, self.brought + other.brought, self.cost + other.cost)


def one_price(batch: BatchFigures) -> OnePrice | None:
    """The figures of one make; ``None`` before the first of a batch is finished."""
    project = batch.project
    if not project.finished:
        return None
    cost = Cost(batch.one or 0, complete=batch.one is not None and batch.cost_is_whole)
    minutes = Fraction(project.minutes, project.finished) if project.minutes else None
    if project.asks is None:
        return OnePrice(cost, minutes, None, None, None)
    asked = project.asks.price
    stays = Stays.of(Cost(asked), cost)
    return OnePrice(cost, minutes, asked, stays, _per_hour(batch, asked, stays))


def _per_hour(batch: BatchFigures, asked: int, stays: Stays) -> Stays | None:
    """From the exact cost of the batch, so that a part of a cent is not multiplied."""
    project = batch.project
    if not project.minutes:
        return None
    left = asked * project.finished - _cost_of_batch(batch).known
    return Stays(rounded(Fraction(left * _HOUR, project.minutes)), stays.at_least, stays.at_most)


def sold_makes(batch: BatchFigures) -> SoldMakes:
    """Those of one batch; all of them carry all that it cost."""
    finished = finished_of(batch.project)
    whole = _cost_of_batch(batch)
    share = rounded(Fraction(whole.known * finished.sold, finished.finished)) if finished.sold else 0
    cost = whole.part(share) if finished.sold else NOTHING
    return SoldMakes(finished.sold, finished.brought, cost)


def sold_together(some: Iterable[SoldMakes]) -> SoldMakes:
    """Those of several batches as one."""
    return sum(some, SoldMakes(0, NOTHING, NOTHING))


def _cost_of_batch(batch: BatchFigures) -> Cost:
    if batch.cost is None or not batch.cost.counted:
        return Cost(0, complete=False)
    return Cost(batch.cost.batch.known, batch.cost_is_whole)
