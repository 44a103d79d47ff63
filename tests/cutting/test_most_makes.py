"""The most makes: worked cases, reasons, laws, and every way tried on tiny jobs."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import CuttingPlan, leaves_of
from batchleaf.core.cutting.verify import faults
from batchleaf.core.cutting.verify_sheet import layout_faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.brute import brute_most_makes, tiny_job
from cutting.jobs import inches, mm, one_stock, part


def checked(job: Job) -> CuttingPlan:
    """The plan for ``job``, which the second opinion has found sound."""
    plan = most_makes(job)
    assert faults(job, plan) == ()
    for sheet_plan in plan.plans:
        assert layout_faults(lay_out(sheet_plan, job)) == ()
    return plan


def test_six_sheets_give_twelve_cards() -> None:
    """Two bases fit a sheet and a third would not: 6 sheets of 305 x 305 give 12."""
    job = one_stock(mm(305, 305), 6, part("A", mm(210, 148)), part("B", mm(95, 138)), part("C", mm(44, 26)))
    plan = checked(job)
    assert (plan.makes, plan.proved) == (12, True)
    assert [(sheet_plan.times, leaves_of(sheet_plan.tree)) for sheet_plan in plan.plans] == [
        (6, {"A": 2, "B": 2, "C": 2})
    ]
    assert plan.spares == ()


def test_seven_letter_sheets_give_fourteen_blanks() -> None:
    """A letter sheet halved gives two blanks."""
    plan = checked(one_stock(inches("8 1/2 x 11"), 7, part("A", inches("5 1/2 x 8 1/2"))))
    assert (plan.makes, len(plan.plans)) == (14, 1)


@pytest.mark.parametrize(
    ("job", "makes", "reason"),
    [
        (one_stock(mm(100, 100), 3, part("A", mm(60, 60))), 3, "each sheet gives at most 1 of part A"),
        (
            replace(
                one_stock(mm(100, 100), 1, replace(part("A", mm(60, 40)), name="base")),
                stocks=(Stock("card", mm(100, 100), 1, name="chalk card"),),
            ),
            3,
            "the sheet of chalk card gives at most 3 of base A",
        ),
        (
            one_stock(mm(100, 100), 2, part("A", mm(50, 50))),
            8,
            "9 would need more paper than these sheets have",
        ),
        (one_stock(mm(100, 100), 2, part("A", mm(101, 5))), 0, "part A fits on none of these sheets"),
        (
            one_stock(mm(100, 100), 2, part("A", mm(101, 5)), part("B", mm(1, 1)), part("C", mm(101, 9))),
            0,
            "part A and part C fit on none of these sheets",
        ),
        (one_stock(mm(100, 100), 0, part("A", mm(5, 5))), 0, "there is no sheet to cut"),
        (one_stock(mm(100, 100), 1), 0, "there is no part to cut"),
        (
            one_stock(mm(50, 50), 1, part("A", mm(30, 30)), part("B", mm(25, 25))),
            0,
            "no way of cutting these sheets gives 1",
        ),
        (
            Job(
                (Stock("card", mm(100, 100), 2), Stock("scrap", mm(60, 60), 1, scrap=True)),
                (PartKind("A", mm(60, 60), 2),),
            ),
            1,
            "these sheets give at most 3 of part A, and one more make would need 4",
        ),
    ],
)
def test_the_reason_is_the_plainest_that_holds(job: Job, makes: int, reason: str) -> None:
    """Each limit has its own words."""
    plan = checked(job)
    assert (plan.makes, plan.bound, plan.reason) == (makes, makes, reason)


def test_four_strips_round_a_hole_need_two_sheets() -> None:
    """5 x 5, four 3 x 2 and one 1 x 1: two sheets by through cuts, one by stopped cuts (by definition)."""
    parts = (part("A", mm(3, 2), 4), part("B", mm(1, 1)))
    assert [checked(one_stock(mm(5, 5), have, *parts)).makes for have in (1, 2)] == [0, 1]


def test_parts_of_different_papers_are_planned_apart() -> None:
    """A base of card and a strip of patterned paper: the poorer paper decides."""
    job = Job(
        (Stock("card", mm(100, 100), 5), Stock("paper", mm(50, 50), 1)),
        (PartKind("A", mm(50, 100), sources=("card",)), PartKind("B", mm(25, 25), sources=("paper",))),
    )
    plan = checked(job)
    assert (plan.makes, plan.bound) == (4, 4)
    assert {(sheet.stock, sheet.times) for sheet in plan.plans} == {("card", 2), ("paper", 1)}


def test_sheets_without_limit_have_no_most() -> None:
    """The question needs counted sheets."""
    job = replace(one_stock(mm(9, 9), 1, part("A", mm(3, 3))), stocks=(Stock("card", mm(9, 9)),))
    with pytest.raises(ValueError, match="counted"):
        most_makes(job)


def test_thirds_of_an_inch_are_exact() -> None:
    """Three of 3 2/3 in from 11 in, with nothing left over."""
    plan = checked(one_stock(inches("8 1/2 x 11"), 1, part("A", inches("8 1/2 x 3 2/3"))))
    assert plan.makes == 3
    assert lay_out(plan.plans[0], one_stock(inches("8 1/2 x 11"), 1)).leftovers == ()


def test_offcuts_are_kept_whole() -> None:
    """One small part leaves one large offcut, not two narrow ones."""
    job = one_stock(mm(300, 200), 1, part("A", mm(40, 30), turns=False), part("B", mm(200, 200)))
    (plan,) = checked(job).plans
    sizes = sorted(rect.size.area for rect in lay_out(plan, job).leftovers)
    assert sizes[-1] == 100 * 170


def test_spares_no_make_needs_are_not_cut() -> None:
    """The last sheet is cut for what is missing, the rest of it is kept."""
    job = Job(
        (Stock("card", mm(100, 100), 3), Stock("paper", mm(10, 10), 9)),
        (PartKind("A", mm(50, 50), sources=("card",)), PartKind("B", mm(10, 10), sources=("paper",))),
    )
    plan = checked(job)
    assert (plan.makes, plan.spares) == (9, ())


def test_a_search_that_is_stopped_says_so_honestly() -> None:
    """Stopped at once, the plan still holds, and the bound is not called met unless it is."""
    job = Job(
        (Stock("s0", inches("8 1/2 x 11"), 9), Stock("s1", inches("12 x 12"), 7)),
        (
            PartKind("A", inches("3 1/4 x 4 3/4"), 2),
            PartKind("B", inches("2 3/8 x 5 1/8")),
            PartKind("C", inches("1 7/8 x 1 1/4"), 3),
        ),
    )
    stopped = most_makes(job, stop=lambda _: True)
    assert faults(job, stopped) == ()
    full = checked(job)
    assert stopped.makes <= full.makes <= full.bound <= stopped.bound


def test_the_same_job_gives_the_same_plan() -> None:
    """Nothing depends on chance or on what was asked before."""
    job = tiny_job(11)
    first = most_makes(job)
    most_makes(tiny_job(12))
    assert most_makes(job) == first


@pytest.mark.parametrize("seed", range(150))
def test_nothing_better_is_found_by_trying_everything(seed: int) -> None:
    """On tiny jobs the most makes are those of every way tried, and they are proved."""
    job = tiny_job(seed)
    plan = checked(job)
    assert (plan.makes, plan.bound) == (brute_most_makes(job),) * 2


@pytest.mark.parametrize("seed", range(40))
def test_another_sheet_never_lowers_the_makes(seed: int) -> None:
    """More paper, at least as many makes."""
    job = tiny_job(1000 + seed)
    more = replace(job, stocks=(replace(job.stocks[0], have=(job.stocks[0].have or 0) + 1), *job.stocks[1:]))
    assert checked(more).makes >= checked(job).makes


@pytest.mark.parametrize("seed", range(40))
def test_the_order_of_parts_and_stocks_changes_no_number(seed: int) -> None:
    """Turned round, the lists give the same makes and the same bound."""
    job = tiny_job(2000 + seed)
    turned = replace(job, parts=job.parts[::-1], stocks=job.stocks[::-1])
    assert (checked(turned).makes, checked(turned).bound) == (most_makes(job).makes, most_makes(job).bound)


@pytest.mark.parametrize("scale", [Fraction(1, 7), Fraction(127, 80), Fraction(10)])
def test_the_unit_of_length_changes_nothing(scale: Fraction) -> None:
    """A job in sevenths or in sixteenths of an inch has the same answer."""
    job = tiny_job(31)
    scaled = Job(
        tuple(replace(s, size=mm(s.size.width * scale, s.size.height * scale)) for s in job.stocks),
        tuple(replace(p, size=mm(p.size.width * scale, p.size.height * scale)) for p in job.parts),
        job.kerf * scale,
    )
    assert checked(scaled).makes == checked(job).makes
