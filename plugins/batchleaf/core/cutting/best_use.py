"""The best use of one sheet: parts that are worth something, each at most so often.

Constrained guillotine cutting (Christofides and Whitlock, Operations Research 25
(1977) 30-44). A toll on parts that come too often turns it into the question
without limits: for any tolls t, no way is worth more than F(worth - t) + Σ t·most.
What can then beat the best known use lies within a gap of F, and is enumerated.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.effort import Effort, Stop
from batchleaf.core.cutting.fullest import filled
from batchleaf.core.cutting.integers import Sheet, in_whole_numbers
from batchleaf.core.cutting.near_best import near_best
from batchleaf.core.cutting.patterns import Pricer
from batchleaf.core.cutting.plan import BestUse, Leftover, SheetPlan
from batchleaf.core.cutting.strips import Arrangement, parts_of, without
from batchleaf.core.cutting.values import Values
from batchleaf.core.cutting.write_up import tree_of
from batchleaf.facts.jobs import Job, Offer, Stock

TOLL_STEPS: Final = 1 << 12
"""Tolls are whole multiples of this fraction of one unit of worth."""
TOLL_ROUNDS: Final = 60
LOOKS: Final = ((200, 30), (50, 60), (1, 15), (1, 60), (1, 300), (1, 1_500))
"""Within which fraction of the best to look, and how many contents of a piece to keep, in turn."""
MOST_OF_A_PART: Final = 10**6
"""Stands for no limit."""


@dataclass(frozen=True, slots=True)
class _Limits:
    sheet: Sheet
    worth: tuple[int, ...]
    most: tuple[int, ...]

    @property
    def all_worth(self) -> int:
        """All parts together, each as often as it may come; only those that fit at all."""
        fitting = {shape.part for shape in self.sheet.shapes}
        return sum(self.worth[part] * self.most[part] for part in fitting)

    def worth_of(self, piece: Arrangement) -> int:
        return sum(self.worth[part] * min(many, self.most[part]) for part, many in parts_of(piece).items())

    def kept(self, piece: Arrangement) -> Arrangement | None:
        """``piece`` without the parts that are too many."""
        rest: Arrangement | None = piece
        for part, many in parts_of(piece).items():
            if rest and many > self.most[part]:
                rest = without(rest, part, many - self.most[part])
        return rest


@dataclass(frozen=True, slots=True)
class _Tolled:
    """The table under some tolls, and the bound it gives, in steps of toll."""

    table: Values
    bound: int


def best_use(
    stock: Stock, offers: Sequence[Offer], *, kerf: Fraction = Fraction(0), stop: Stop | None = None
) -> BestUse:
    """The most worth that one sheet of ``stock`` gives by through cuts.

    ``stop`` as in :func:`~batchleaf.core.cutting.most_makes.most_makes`.
    """
    job = Job((stock,), tuple(replace(offer.part, sources=()) for offer in offers), kerf)
    whole = in_whole_numbers(job)
    limits = _Limits(
        whole.sheets[0],
        tuple(offer.worth for offer in offers),
        tuple(MOST_OF_A_PART if offer.most is None else offer.most for offer in offers),
    )
    if not limits.sheet.shapes:
        return BestUse(0, 0, SheetPlan(stock.id, 1, Leftover()))
    piece, bound = _searched(limits, Effort(stop))
    tree = tree_of(job, whole, 0, limits.kept(piece) if piece else None)
    return BestUse(limits.worth_of(piece) if piece else 0, bound, SheetPlan(stock.id, 1, tree))


def _searched(limits: _Limits, effort: Effort) -> tuple[Arrangement | None, int]:
    best = _at_once(limits, effort)
    lowest: _Tolled | None = None
    for tolled in _tolls(limits, effort):
        best = _better(limits, best, tolled.table.arrangement())
        if lowest is None or tolled.bound < lowest.bound:
            lowest = tolled
    if lowest is None:
        raise AssertionError("there is always a first table")
    bound = min(lowest.bound // TOLL_STEPS, limits.all_worth)
    for fraction, beam in LOOKS:
        known = limits.worth_of(best) if best else 0
        if known == bound or effort.over:
            break
        gap = lowest.bound - (known + 1) * TOLL_STEPS
        within = lowest.table.whole_sheet // fraction
        near = near_best(lowest.table, min(gap, within), limits.most, effort, beam=beam)
        for piece in near.pieces:
            best = _better(limits, best, piece)
        if near.complete and gap <= within:
            bound = limits.worth_of(best) if best else 0
    return best, bound


def _at_once(limits: _Limits, effort: Effort) -> Arrangement | None:
    """What the sheet holds when it is filled once with no more of any part than may be; often the best."""
    if not effort.step():
        return None
    return filled(limits.sheet, limits.most, limits.worth, effort)


def _better(limits: _Limits, best: Arrangement | None, piece: Arrangement | None) -> Arrangement | None:
    if piece is None or (best is not None and limits.worth_of(piece) <= limits.worth_of(best)):
        return best
    return piece


def _tolls(limits: _Limits, effort: Effort) -> Iterator[_Tolled]:
    """Tables under tolls that rise on parts too many and fall on parts too few (a subgradient walk)."""
    pricer = Pricer((limits.sheet,), (0,), effort)
    prices = [worth * TOLL_STEPS for worth in limits.worth]
    tolls = [0] * len(prices)
    step = max(prices) // 4
    for _ in range(TOLL_ROUNDS):
        table = pricer.table(0, [price - toll for price, toll in zip(prices, tolls, strict=True)])
        bound = table.at_most + sum(toll * most for toll, most in zip(tolls, limits.most, strict=True))
        yield _Tolled(table, bound)
        counts = parts_of(table.arrangement())
        over = [counts[part] - most for part, most in enumerate(limits.most)]
        if not effort.step() or all(
            many == 0 or (many < 0 and not toll) for many, toll in zip(over, tolls, strict=True)
        ):
            return
        length = max(1, sum(many * many for many, toll in zip(over, tolls, strict=True) if many > 0 or toll))
        for part, many in enumerate(over):
            moved = tolls[part] + step * many // length
            tolls[part] = max(0, min(prices[part] - 1, moved))
        step = max(1, step * 9 // 10)
