"""The cutting of one batch: questions asked once, papers dealt round, sheets needed before the first cut."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.batch_cutting import PLANNER, Cutting, Planner, cutting_of, remembering, uncut_parts
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import CostPlan, leaves_of
from batchleaf.core.cutting.verify import faults
from batchleaf.core.figures import in_full, work_out_batch
from batchleaf.core.sheets_needed import count_sheets
from batchleaf.facts import Origin, Project, Supply, Trim
from batchleaf.facts.jobs import Job
from core.drawers import batch_of, cut, part, size, supply

SUPPLIES = {slug: supply(slug) for slug in ("card", "fern", "plum")}


def cutting(one: Project, supplies: Mapping[str, Supply] = SUPPLIES) -> Cutting:
    """The cutting that there must be."""
    found = cutting_of(one, supplies, PLANNER)
    assert found is not None
    return found


def cut_out(one: Project) -> dict[str, dict[str, int]]:
    """Supply → how many of each part the plans give from it."""
    whole = cutting(one)
    found: dict[str, dict[str, int]] = {}
    for plan in whole.plans:
        by_part = found.setdefault(whole.sheets[plan.stock].supply, {})
        for letter, count in leaves_of(plan.tree).items():
            by_part[letter] = by_part.get(letter, 0) + count * plan.times
    return found


def test_a_part_comes_evenly_from_its_papers() -> None:
    """Eight of 50 x 50 fit on two sheets; dealt round, four come from each paper."""
    one = batch_of(part("A", 50, 50, "fern", "plum"), makes=8, cuts=(("fern", 2), ("plum", 2)))
    assert cut_out(one) == {"fern": {"A": 4}, "plum": {"A": 4}}


def test_where_the_papers_do_not_reach_evenly_they_still_reach() -> None:
    """One sheet of fern gives four; six from plum make ten."""
    one = batch_of(part("A", 50, 50, "fern", "plum"), makes=10, cuts=(("fern", 1), ("plum", 2)))
    found = cut_out(one)
    assert found["fern"]["A"] + found["plum"]["A"] >= 10


def test_before_the_first_cut_the_sheets_that_are_needed_are_counted() -> None:
    """Four of 50 x 50 to a sheet: three for nine. Five strips to a sheet: four for eighteen."""
    one = batch_of(part("A", 50, 50, "card"), part("B", 20, 100, "fern", each=2), makes=9, planned=True)
    needed = cutting(one)
    assert {sheets.supply: sheets.count for sheets in needed.sheets.values()} == {"card": 3, "fern": 4}
    assert (needed.most, needed.makes) == (None, 9)


def test_a_part_whose_paper_was_not_cut_is_left_out() -> None:
    """It is never taken from another paper."""
    one = batch_of(part("A", 50, 50, "card"), part("B", 20, 20, "fern"), makes=4, cuts=(("card", 1),))
    assert cut_out(one) == {"card": {"A": 4}}
    assert [left.letter for left in uncut_parts(one, SUPPLIES)] == ["B"]


def test_scraps_are_used_before_sheets() -> None:
    """Four of 50 x 50 lie on one scrap as well as on one sheet."""
    one = batch_of(part("A", 50, 50, "card"), makes=4, cuts=(("card", 1),))
    scrap = cut(1, slug="card", scrap=size(100, 100))
    both = cutting(replace(one, cut=(*one.cut, scrap)))
    assert [both.sheets[plan.stock].scrap is not None for plan in both.plans] == [True]


def test_a_question_is_asked_once() -> None:
    """The second time the answer comes from memory, and is the same."""
    asked: list[Job] = []

    def cheapest(job: Job, makes: int) -> CostPlan:
        asked.append(job)
        return PLANNER.cheapest(job, makes)

    planner = remembering(Planner(PLANNER.most, cheapest))
    one = batch_of(part("A", 50, 50, "card"), makes=4, cuts=(("card", 1),))
    first, second = cutting_of(one, SUPPLIES, planner), cutting_of(one, SUPPLIES, planner)
    assert first == second
    assert len(asked) == 1


def test_extras_are_cut_on_top_of_the_makes() -> None:
    """Four of 50 x 50 to a sheet: four makes and one more take a second sheet."""
    one = batch_of(part("A", 50, 50, "card", extra=1), makes=4, cuts=(("card", 2),))
    found = cutting(one)
    assert (found.makes, found.extras, found.left_out) == (4, (("A", 1),), ())
    assert sum(plan.times for plan in found.plans) == 2
    assert cut_out(one)["card"]["A"] == 5 + dict(found.spares).get("A", 0)


def test_extras_do_not_lower_what_the_sheets_could_have_given() -> None:
    """Full sets are counted: two sheets give eight, whatever is wanted on top of four."""
    one = batch_of(part("A", 50, 50, "card", extra=3), makes=4, cuts=(("card", 2),))
    most = cutting(one).most
    assert most is not None
    assert most.makes == 8


def test_where_the_sheets_do_not_give_the_extras_too_they_are_left_out() -> None:
    """One sheet gives the four makes, and no fifth piece."""
    one = batch_of(part("A", 50, 50, "card", extra=1), makes=4, cuts=(("card", 1),))
    found = cutting(one)
    assert (found.makes, found.extras, found.left_out) == (4, (), (("A", 1),))
    assert cut_out(one) == {"card": {"A": 4}}


def test_before_the_first_cut_the_extras_count_as_well() -> None:
    """Eight makes fill two sheets; with one more the batch needs three."""
    plain, more = (part("A", 50, 50, "card", extra=extra) for extra in (0, 1))
    needed = [cutting(batch_of(one, makes=8, planned=True)).sheets["s0"].count for one in (plain, more)]
    assert needed == [2, 3]


@given(makes=st.integers(1, 9), extra=st.integers(0, 5), sheets=st.integers(1, 4))
@settings(max_examples=40, deadline=None)
def test_all_that_the_plans_give_is_accounted_for(makes: int, extra: int, sheets: int) -> None:
    """Parts cut = parts of the makes + extras + spares."""
    one = batch_of(
        part("A", 50, 40, "card", extra=extra), part("B", 20, 30, "card", each=2),
        makes=makes, cuts=(("card", sheets),),
    )  # fmt: skip
    found = cutting(one)
    given = Counter[str]()
    for plan in found.plans:
        for letter, count in leaves_of(plan.tree).items():
            given[letter] += count * plan.times
    wanted = Counter({kept.letter: kept.each * found.makes for kept in one.parts})
    assert given == wanted + Counter(dict(found.extras)) + Counter(dict(found.spares))
    assert all(count <= sheets for count in Counter(plan.stock for plan in found.plans).values())


def test_a_sheet_is_cut_after_it_is_trimmed() -> None:
    """100 x 100 with 10 off the top is 100 x 90: two of 50 x 50, where four lay before."""
    trimmed = {"card": replace(supply("card"), trim=Trim(top=Fraction(10)))}
    one = batch_of(part("A", 50, 50, "card"), makes=4, planned=True)
    assert cutting(one, trimmed).sheets["s0"].count == 2
    assert cutting(one, trimmed).job.stocks[0].size == size(100, 90)


def test_a_scrap_is_trimmed_already() -> None:
    """A piece of 100 x 100 gives four, whatever is trimmed off whole sheets."""
    trimmed = {"card": replace(supply("card"), trim=Trim(top=Fraction(10)))}
    one = batch_of(part("A", 50, 50, "card"), makes=4)
    one = replace(one, cut=(cut(1, slug="card", scrap=size(100, 100)),))
    assert cutting(one, trimmed).makes == 4


@given(st.tuples(*(st.integers(0, 30),) * 4))
@settings(max_examples=40, deadline=None)
def test_trimming_never_gives_more(edges: tuple[int, int, int, int]) -> None:
    """What comes off the edges comes off the makes, if anything."""
    one = batch_of(part("A", 30, 20, "card"), makes=1, cuts=(("card", 1),))
    trimmed = replace(supply("card"), trim=Trim(*map(Fraction, edges)))
    whole, less = cutting(one).most, cutting(one, {"card": trimmed}).most
    assert whole is not None
    assert less is not None
    assert less.makes <= whole.makes


@pytest.mark.parametrize("origin", [Origin.BY_HAND, Origin.READY])
def test_what_does_not_come_from_sheets_is_in_no_plan(origin: Origin) -> None:
    """Its paper is not asked for, and nothing is missing where it was not cut."""
    other = replace(part("B", 20, 20, "fern"), origin=origin)
    made = batch_of(part("A", 50, 50, "card"), other, makes=4, cuts=(("card", 1),))
    assert cut_out(made) == {"card": {"A": 4}}
    assert uncut_parts(made, SUPPLIES) == ()
    planned = batch_of(part("A", 50, 50, "card"), other, makes=4, planned=True)
    assert [line.supply for line in cutting(planned).sheets.values()] == ["card"]


@pytest.mark.parametrize("origin", [Origin.BY_HAND, Origin.READY])
def test_a_batch_without_parts_from_sheets_has_no_cutting(origin: Origin) -> None:
    """Neither made nor planned, with sheets under cut or without."""
    only = replace(part("A", 20, 20, "fern"), origin=origin)
    for one in (
        batch_of(only, makes=4),
        batch_of(only, makes=4, cuts=(("fern", 1),)),
        batch_of(only, makes=4, planned=True),
    ):
        assert cutting_of(one, SUPPLIES, PLANNER) is None


def test_a_part_that_is_trimmed_later_is_cut_larger() -> None:
    """Four of 90 x 90 come from a sheet of 190 x 190, also with 2 more on each side; with 3 more only one."""
    sheet = supply("card", size=size(190, 190))
    for oversize, most in ((0, 4), (2, 4), (3, 1)):
        square = replace(part("A", 90, 90, "card"), oversize=Fraction(oversize))
        found = cutting_of(batch_of(square, makes=1, cuts=(("card", 1),)), {"card": sheet}, PLANNER)
        assert found is not None
        assert found.most is not None
        assert found.most.makes == most
        sizes = {placed.rect.size for plan in found.plans for placed in lay_out(plan, found.job).parts}
        assert sizes == {size(90 + 2 * oversize, 90 + 2 * oversize)}


@pytest.mark.parametrize(("kerf", "most"), [(0, 4), (1, 2)])
def test_what_a_blade_takes_away_is_counted(kerf: int, most: int) -> None:
    """ISO 216: four A6 leave no millimetre across an A4, so a saw of 1 mm spoils two of them."""
    sheet = supply("card", size=size(210, 297))
    one = replace(batch_of(part("A", 105, 148, "card"), makes=2, cuts=(("card", 1),)), kerf=Fraction(kerf))
    alone = work_out_batch(one, {"card": sheet}, {}, PLANNER)
    found = in_full(alone, {"card": sheet}, (), PLANNER, count_sheets)
    assert found.cutting is not None
    assert found.cutting.most is not None
    assert found.cutting.most.makes == most
    assert [count.count.through for count in found.from_one_sheet] == [most]
    (plan,) = found.cutting.plans
    assert plan.times == 1
    assert faults(found.cutting.job, replace(found.cutting.most, makes=2, plans=(plan,), spares=())) == ()
