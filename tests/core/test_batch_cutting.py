"""The cutting of one batch: questions asked once, papers dealt round, sheets needed before the first cut."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from batchleaf.core.batch_cutting import PLANNER, Planner, cutting_of, remembering, uncut_parts
from batchleaf.core.cutting.job import Job
from batchleaf.core.cutting.plan import CostPlan, leaves_of
from batchleaf.facts import Part, Project, Status
from batchleaf.measure.lengths import Size
from core.drawers import batch, cut, supply

SUPPLIES = {slug: supply(slug) for slug in ("card", "fern", "plum")}


def part(letter: str, width: int, height: int, *papers: str, each: int = 1) -> Part:
    """A part that may be turned."""
    return Part(letter, letter.lower(), Size(Fraction(width), Fraction(height)), each, papers, turns=True)


def project(
    *parts: Part, makes: int, cuts: tuple[tuple[str, int], ...] = (), planned: bool = False
) -> Project:
    """A batch with these parts, from sheets of 100 x 100."""
    one = batch(
        1,
        cut=tuple(cut(count, slug=slug) for slug, count in cuts),
        finished=makes,
        status=Status.PLANNED if planned else Status.MADE,
    )
    return replace(one, parts=parts)


def cut_out(one: Project) -> dict[str, dict[str, int]]:
    """Supply → how many of each part the plans give from it."""
    cutting = cutting_of(one, SUPPLIES, PLANNER)
    assert cutting is not None
    found: dict[str, dict[str, int]] = {}
    for plan in cutting.plans:
        by_part = found.setdefault(cutting.sheets[plan.stock].supply, {})
        for letter, count in leaves_of(plan.tree).items():
            by_part[letter] = by_part.get(letter, 0) + count * plan.times
    return found


def test_a_part_comes_evenly_from_its_papers() -> None:
    """Eight of 50 x 50 fit on two sheets; dealt round, four come from each paper."""
    one = project(part("A", 50, 50, "fern", "plum"), makes=8, cuts=(("fern", 2), ("plum", 2)))
    assert cut_out(one) == {"fern": {"A": 4}, "plum": {"A": 4}}


def test_where_the_papers_do_not_reach_evenly_they_still_reach() -> None:
    """One sheet of fern gives four; six from plum make ten."""
    one = project(part("A", 50, 50, "fern", "plum"), makes=10, cuts=(("fern", 1), ("plum", 2)))
    found = cut_out(one)
    assert found["fern"]["A"] + found["plum"]["A"] >= 10


def test_before_the_first_cut_the_sheets_that_are_needed_are_counted() -> None:
    """Four of 50 x 50 to a sheet: three for nine. Five strips to a sheet: four for eighteen."""
    one = project(part("A", 50, 50, "card"), part("B", 20, 100, "fern", each=2), makes=9, planned=True)
    cutting = cutting_of(one, SUPPLIES, PLANNER)
    assert cutting is not None
    assert {sheets.supply: sheets.count for sheets in cutting.sheets.values()} == {"card": 3, "fern": 4}
    assert (cutting.most, cutting.makes) == (None, 9)


def test_a_part_whose_paper_was_not_cut_is_left_out() -> None:
    """It is never taken from another paper."""
    one = project(part("A", 50, 50, "card"), part("B", 20, 20, "fern"), makes=4, cuts=(("card", 1),))
    assert cut_out(one) == {"card": {"A": 4}}
    assert [left.letter for left in uncut_parts(one, SUPPLIES)] == ["B"]


def test_scraps_are_used_before_sheets() -> None:
    """Four of 50 x 50 lie on one scrap as well as on one sheet."""
    one = project(part("A", 50, 50, "card"), makes=4, cuts=(("card", 1),))
    scrap = cut(1, slug="card", scrap=Size(Fraction(100), Fraction(100)))
    cutting = cutting_of(replace(one, cut=(*one.cut, scrap)), SUPPLIES, PLANNER)
    assert cutting is not None
    assert [cutting.sheets[plan.stock].scrap is not None for plan in cutting.plans] == [True]


def test_a_question_is_asked_once() -> None:
    """The second time the answer comes from memory, and is the same."""
    asked: list[Job] = []

    def cheapest(job: Job, makes: int) -> CostPlan:
        asked.append(job)
        return PLANNER.cheapest(job, makes)

    planner = remembering(Planner(PLANNER.most, cheapest))
    one = project(part("A", 50, 50, "card"), makes=4, cuts=(("card", 1),))
    first, second = cutting_of(one, SUPPLIES, planner), cutting_of(one, SUPPLIES, planner)
    assert first == second
    assert len(asked) == 1
