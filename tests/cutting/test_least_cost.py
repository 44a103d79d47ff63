"""The cheapest sheets: worked cases, laws, and every way tried on tiny jobs."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.cutting.least_cost import least_alone, least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import CostPlan
from batchleaf.core.cutting.verify import cost_faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.brute import brute_least_cost, tiny_job
from cutting.jobs import inches, mm, one_stock, part


def checked(job: Job, makes: int) -> CostPlan:
    """The plan for ``makes``, which the second opinion has found sound and rightly added up."""
    plan = least_cost(job, makes)
    assert cost_faults(job, plan) == ()
    return plan


def endless(size_text: str, cost: int) -> Stock:
    """Sheets without limit."""
    return Stock(size_text, inches(size_text), None, Fraction(cost))


def test_thirteen_cards_need_seven_letter_sheets() -> None:
    """A letter sheet gives two blanks, so thirteen makes take seven sheets and leave one spare or offcut."""
    job = Job((endless("8 1/2 x 11", 12),), (part("A", inches("5 1/2 x 8 1/2")),))
    plan = checked(job, 13)
    assert (plan.cost, plan.proved) == (Fraction(84), True)
    assert plan.reason == "6 sheets have less paper than the parts need"


def test_scraps_go_first_where_they_are_cheap() -> None:
    """A scrap that holds one card saves half a sheet, and with it a whole one for three cards."""
    scrap = Stock("scrap", inches("6 x 9"), 1, Fraction(1), scrap=True)
    job = Job((endless("8 1/2 x 11", 12), scrap), (part("A", inches("5 1/2 x 8 1/2")),))
    assert checked(job, 3).cost == 13
    assert checked(job, 4).cost == 24


def test_too_few_sheets_have_no_cost() -> None:
    """Two sheets give eight; nine are out of reach, and it is said so."""
    job = one_stock(mm(100, 100), 2, part("A", mm(50, 50)))
    plan = checked(job, 9)
    assert (plan.cost, plan.bound, plan.proved, plan.plans) == (None, None, True, ())
    assert plan.reason == "no way of cutting these sheets gives 9"


def test_a_part_that_fits_nothing_is_named() -> None:
    """The reason says which part it is."""
    job = Job((endless("12 x 12", 1),), (part("A", inches("13 x 1")),))
    assert least_cost(job, 1).reason == "part A fits on none of these sheets"


def test_nothing_costs_nothing() -> None:
    """No makes, no sheets."""
    assert least_cost(Job((endless("12 x 12", 1),), (part("A", inches("3 x 1")),)), 0).cost == 0


def test_four_strips_round_a_hole_cost_two_sheets() -> None:
    """5 x 5, four 3 x 2 and one 1 x 1: two sheets by through cuts (by definition)."""
    job = Job((Stock("card", mm(5, 5)),), (part("A", mm(3, 2), 4), part("B", mm(1, 1))))
    assert (checked(job, 1).cost, checked(job, 1).proved) == (Fraction(2), True)


def test_what_is_free_without_end_costs_nothing_and_is_not_wasted() -> None:
    """Nine small cards come from three free scraps and not from nine; the large ones are paid for."""
    free = Stock("scrap", mm(30, 60), None, Fraction(0), scrap=True)
    parts = (PartKind("A", mm(70, 40)), PartKind("B", mm(30, 20), 3))
    plan = checked(Job((Stock("card", mm(80, 90), None, Fraction(7)), free), parts), 3)
    assert (plan.cost, plan.proved) == (Fraction(14), True)
    assert sum(sheet.times for sheet in plan.plans if sheet.stock == "scrap") == 3


def test_papers_of_different_parts_add_up() -> None:
    """Two groups that share no sheet are bought apart."""
    job = Job(
        (Stock("card", mm(100, 100), None, Fraction(5)), Stock("paper", mm(50, 50), None, Fraction(3, 2))),
        (PartKind("A", mm(50, 100), sources=("card",)), PartKind("B", mm(25, 25), sources=("paper",))),
    )
    assert checked(job, 5).cost == 3 * 5 + 2 * Fraction(3, 2)


def test_a_stopped_search_keeps_an_honest_bound() -> None:
    """Stopped at once, the cost is one that can be paid and the bound is not above the least cost."""
    job = tiny_job(4)
    makes = most_makes(job).makes
    assert makes > 0
    stopped = least_cost(job, makes, stop=lambda _: True)
    least = brute_least_cost(job, makes)
    assert least is not None
    assert stopped.bound is not None
    assert stopped.bound <= least
    assert stopped.cost is None or stopped.cost >= least


@pytest.mark.parametrize("seed", range(150))
def test_nothing_cheaper_is_found_by_trying_everything(seed: int) -> None:
    """On tiny jobs the least cost is that of every way tried, proved, for as many makes as there can be."""
    job = tiny_job(3000 + seed)
    makes = max(1, most_makes(job).makes)
    plan = checked(job, makes)
    assert (plan.cost, plan.proved) == (brute_least_cost(job, makes), True)


@pytest.mark.parametrize("seed", range(40))
def test_more_makes_never_cost_less(seed: int) -> None:
    """With sheets without limit the cost rises with the makes."""
    job = tiny_job(4000 + seed)
    job = replace(job, stocks=tuple(replace(stock, have=None) for stock in job.stocks))
    costs = [checked(job, makes).cost for makes in (1, 2, 5)]
    known = [cost for cost in costs if cost is not None]
    assert known == sorted(known)
    assert len(known) in (0, 3)


@pytest.mark.parametrize("seed", range(60))
def test_the_cost_alone_is_that_of_the_plan(seed: int) -> None:
    """With the same bound, whether there is a plan or not."""
    job = tiny_job(seed)
    for makes in (1, 2, 5):
        alone, written = least_alone(job, makes), least_cost(job, makes)
        assert (alone.cost, alone.bound) == (written.cost, written.bound)
