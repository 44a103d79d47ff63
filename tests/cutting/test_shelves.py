"""Many kinds of parts and very fine measures: an answer is there, and says no more than it shows."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest

from batchleaf.core.cutting.from_one_sheet import from_one_sheet
from batchleaf.core.cutting.integers import Sheet, shapes_of
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.one_size import covered_by_bars, in_strips
from batchleaf.core.cutting.plan import CuttingPlan
from batchleaf.core.cutting.values import best_values
from batchleaf.core.cutting.verify import faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size
from cutting.jobs import mm
from cutting.work_clock import by_work
from waiting import soon

MANY_KINDS = Job(
    (Stock("card", mm(200, 200), 1, Fraction(40_000)),),
    tuple(PartKind(f"P{at}", mm(10 + at, 20)) for at in range(24)),
)
MOMENT = 0.5
"""Seconds, by a clock of work."""
QUARTERS = Job(
    (Stock("a4", mm(210, 297), 8), Stock("square", mm(200, 200), 1)),
    (
        PartKind("A", mm(Fraction(17, 2), Fraction(11, 2)), sources=("a4",)),
        PartKind("B", mm(4, Fraction(21, 4)), sources=("a4",)),
        PartKind("C", mm(Fraction(3, 4), Fraction(7, 2)), sources=("square",)),
    ),
)


def many_kinds(seed: int) -> Job:
    """10 to 26 kinds of parts, one each, on one or two sheets."""
    dice = random.Random(seed)
    parts = tuple(
        PartKind(f"P{at}", mm(dice.randint(8, 60), dice.randint(8, 60)), turns=dice.random() < 0.5)
        for at in range(dice.randint(10, 26))
    )
    return Job((Stock("card", mm(210, 297), dice.randint(1, 3)),), parts)


def makes_in_rows(job: Job) -> int:
    """The makes by rows of parts as given: highest first, a row is as high as its first part."""
    stock = job.stocks[0]
    makes = 0
    while True:
        waiting = sorted(
            [part.size for part in job.parts for _ in range(makes + 1)], key=lambda size: -size.height
        )
        sheets = 0
        while waiting and sheets <= (stock.have or 0):
            sheets += 1
            top = Fraction(0)
            while waiting and any(top + size.height <= stock.size.height for size in waiting):
                first = next(size for size in waiting if top + size.height <= stock.size.height)
                left, row = stock.size.width, []
                for size in waiting:
                    if size.height <= first.height and size.width <= left:
                        row.append(size)
                        left -= size.width
                for size in row:
                    waiting.remove(size)
                top += first.height
        if waiting or sheets > (stock.have or 0):
            return makes
        makes += 1


@pytest.mark.parametrize("limit", [0, 300])
@pytest.mark.parametrize("seed", range(6))
def test_never_fewer_makes_than_plain_rows_give(seed: int, limit: int) -> None:
    """However early it is ended, the answer is as good as rows of parts, sound, and within its bound."""
    job = many_kinds(seed)
    plan = most_makes(job, stop=lambda steps: steps > limit)
    rows = makes_in_rows(job)
    assert plan.makes >= (rows if limit else min(rows, 1))
    assert plan.makes <= plan.bound
    assert faults(job, plan) == ()
    if rows:
        cost = least_cost(job, rows, stop=lambda steps: steps > limit)
        assert cost.cost is not None
        assert faults(job, CuttingPlan(rows, rows, "", cost.plans, cost.spares)) == ()


def test_twenty_four_kinds_from_one_sheet() -> None:
    """One make lies in rows in plain sight; it is found however early the search is ended."""
    assert most_makes(MANY_KINDS, stop=lambda steps: steps > 0).makes >= 1
    assert least_cost(MANY_KINDS, 1, stop=lambda steps: steps > 0).cost == 40_000


def test_quarters_of_a_millimetre_take_a_moment_and_claim_no_proof_that_fails() -> None:
    """What a longer search finds lies within the bound of one that was ended at once."""
    with soon():
        early = most_makes(QUARTERS, stop=lambda steps: steps > 1)
        later = most_makes(QUARTERS, stop=lambda steps: steps > 2_000)
    assert early.makes <= later.makes <= early.bound
    # By area: 8 sheets of A4 for A and B together.
    assert later.bound <= 8 * 210 * 297 / (8.5 * 5.5 + 4 * 5.25)


@pytest.mark.parametrize("part", [mm(2, 2), mm(2, Fraction(9, 4)), mm(Fraction(11, 4), Fraction(7, 2))])
def test_tiny_parts_from_a_large_sheet_are_counted_in_a_moment(part: Size) -> None:
    """A square metre in quarters of a millimetre; rows at least, and no more than the area holds."""
    with soon(), by_work() as clock:
        found = from_one_sheet(mm(1000, 1000), part, turns=True)
        assert clock() < MOMENT
    assert found.grid <= found.through <= found.at_most <= 1_000_000 / part.area


@pytest.mark.parametrize("seed", range(40))
def test_strips_and_bars_stand_on_both_sides_of_the_exact_count(seed: int) -> None:
    """Rows lying one way or the other never give more than the most, bars never less."""
    dice = random.Random(seed)
    width, height = dice.randint(20, 60), dice.randint(20, 60)
    sheet = Sheet(width, height, shapes_of(0, dice.randint(2, 9), dice.randint(10, 19), turns=True))
    most = best_values(sheet, (1,)).whole_sheet
    assert in_strips(sheet) <= most <= covered_by_bars(sheet)
