"""Pads: a sheet stands for one of its papers, named or not."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.batch_cutting import PLANNER, Cutting, cutting_of, uncut_parts
from batchleaf.core.cutting.plan import leaves_of
from batchleaf.facts import Part, Project
from core.drawers import batch_of, part, supply

PAD = replace(supply("pad"), designs=12, copies=2)
PAPERS = tuple(
    replace(supply(f"pad-{number}"), name=f"pad {number}", pad="pad", number=number)
    for number in range(1, 13)
)
SUPPLIES = {one.slug: one for one in (PAD, *PAPERS, supply("card"))}


def any_of(count: int, letter: str = "B", width: int = 50, height: int = 50) -> Part:
    """A part from so many papers of the pad."""
    return replace(part(letter, width, height, "pad"), any_of=count)


def cutting(one: Project) -> Cutting:
    """The cutting that there must be."""
    found = cutting_of(one, SUPPLIES, PLANNER)
    assert found is not None
    return found


def from_each_sheet(one: Project) -> list[int]:
    """How many parts each sheet gives, the most first."""
    found = [sum(leaves_of(plan.tree).values()) for plan in cutting(one).plans for _ in range(plan.times)]
    return sorted(found, reverse=True)


def test_any_six_papers_are_six_sheets() -> None:
    """Twelve of 50 x 50 would lie on three sheets; dealt over six papers, two come from each."""
    one = batch_of(any_of(6), makes=12, planned=True)
    assert from_each_sheet(one) == [2] * 6
    assert [(line.supply, line.count) for line in cutting(one).sheets.values()] == [("pad", 6)]


def test_sheets_cut_of_the_pad_are_as_many_papers() -> None:
    """Any 6, and four sheets cut: the twelve come from four papers, three each."""
    one = batch_of(any_of(6), makes=12, cuts=(("pad", 4),))
    assert from_each_sheet(one) == [3] * 4


def test_alike_papers_are_one_plan() -> None:
    """Six papers that are cut in the same way are one plan of six sheets."""
    plans = cutting(batch_of(any_of(6), makes=12, planned=True)).plans
    assert [(plan.stock, plan.times) for plan in plans] == [("s0", 6)]


def test_two_parts_share_the_papers_of_their_pad() -> None:
    """Four of B and four of C from any 4: one of each from every sheet."""
    one = batch_of(any_of(4), any_of(4, "C", 40, 40), makes=4, planned=True)
    assert from_each_sheet(one) == [2] * 4


def test_a_part_of_the_pad_may_come_from_its_numbered_papers() -> None:
    """The record says any 2, and under cut which ones they were."""
    one = batch_of(any_of(2), makes=4, cuts=(("pad-3", 1), ("pad-7", 1)))
    assert from_each_sheet(one) == [2, 2]
    assert uncut_parts(one, SUPPLIES) == ()


def test_a_part_of_numbered_papers_may_come_from_sheets_of_the_pad() -> None:
    """The record says 1, 4 and 7, and under cut three sheets of the pad."""
    one = batch_of(part("B", 50, 50, "pad-1", "pad-4", "pad-7"), makes=6, cuts=(("pad", 3),))
    assert from_each_sheet(one) == [2, 2, 2]
    assert uncut_parts(one, SUPPLIES) == ()


def test_a_numbered_paper_does_not_stand_for_another() -> None:
    """Paper 3 was cut, and B comes from 1 and 4."""
    one = batch_of(part("B", 50, 50, "pad-1", "pad-4"), makes=2, cuts=(("pad-3", 1),))
    assert cutting_of(one, SUPPLIES, PLANNER) is None
    assert [left.letter for left in uncut_parts(one, SUPPLIES)] == ["B"]


def test_what_the_sheets_could_have_given_does_not_ask_for_evenness() -> None:
    """Three sheets of four are twelve, however many papers they are."""
    most = cutting(batch_of(any_of(2), makes=3, cuts=(("pad", 3),))).most
    assert most is not None
    assert most.makes == 12


@pytest.mark.parametrize("numbered", [False, True])
@given(papers=st.integers(2, 6), makes=st.integers(1, 14))
@settings(max_examples=25, deadline=None)
def test_no_paper_gives_more_than_its_share(papers: int, makes: int, *, numbered: bool) -> None:
    """Each gives the makes divided by the papers, rounded down or up; a sheet has room for ten."""
    names = [f"pad-{number}" for number in range(1, papers + 1)]
    wanted = part("B", 50, 20, *names) if numbered else any_of(papers, "B", 50, 20)
    one = batch_of(wanted, makes=makes, planned=True)
    least, more = divmod(makes, papers)
    shares = Counter({least + 1: more, least: papers - more if least else 0})
    assert Counter(from_each_sheet(one)) == +shares
