"""How many strokes a work takes: by the weight of papers, on a plate, on whole sheets."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.batch_cutting import PLANNER, cutting_of
from batchleaf.core.bench.times import STROKE_SECONDS
from batchleaf.core.bench.work import Bench, Done, bench_work
from batchleaf.facts import (
    Moment,
    Part,
    Project,
    StackLimit,
    Status,
    Tool,
    Wait,
    Waiting,
    Work,
    WorkKind,
)
from batchleaf.measure.lengths import Size, Unit
from core.drawers import batch, part, supply

LIGHT = replace(supply("light"), grammage=Fraction(100))
HEAVY = replace(supply("heavy"), grammage=Fraction(240))
UNKNOWN = supply("unknown")
SUPPLIES = {one.slug: one for one in (LIGHT, HEAVY, UNKNOWN)}
PUNCH = Tool(
    "punch", "the punch", "punch", Unit.MM,
    stack=(StackLimit(3, Fraction(130)), StackLimit(2, Fraction(300))),
)  # fmt: skip
HALF_MINUTE = replace(PUNCH, slug="slow", stroke=30)
PRESS = Tool("press", "the press", "press", Unit.MM, plate=Size(Fraction(100), Fraction(60)))
TOOLS = {one.slug: one for one in (PUNCH, HALF_MINUTE, PRESS)}


def made(begun: int, *works: Work, parts: tuple[Part, ...]) -> Project:
    """So many makes begun of these parts, planned."""
    one = replace(batch(1, finished=0), begun=begun, status=Status.PLANNED, parts=parts, works=works, cut=())
    return replace(one, tools=tuple(TOOLS))


def bench(project: Project) -> Bench:
    """Its bench work; there is some."""
    found = bench_work(project, cutting_of(project, SUPPLIES, PLANNER), SUPPLIES, TOOLS)
    assert found is not None
    return found


def only(begun: int, work: Work, *papers: str, extra: int = 0) -> Done:
    """One work on parts B, one in each make, of these papers."""
    one = replace(part("B", 20, 30, *papers), extra=extra)
    (done,) = bench(made(begun, work, parts=(one,))).works
    return done


def punched(tool: str = "punch", times: int = 0) -> Work:
    """B is punched."""
    return Work(WorkKind.PUNCH, ("B",), tool, Moment.AFTER, times=times)


@pytest.mark.parametrize(
    ("papers", "begun", "strokes"),
    [
        (("light",), 7, 3),  # 3 + 3 + 1
        (("heavy",), 7, 4),  # 2 + 2 + 2 + 1
        (("unknown",), 7, 4),  # taken for the heaviest
        (("light", "heavy"), 7, 4),  # four light ones in two strokes, three heavy ones in two
        (("light", "light"), 7, 3),  # of one weight, so they are stacked together
    ],
)
def test_each_weight_of_paper_is_stacked_by_itself(papers: tuple[str, ...], begun: int, strokes: int) -> None:
    """As many at once as the tool takes of it, and the last ones take a stroke as well."""
    assert only(begun, punched(), *papers).strokes == strokes


def test_strokes_for_one_piece_are_counted_for_each_stack() -> None:
    """Two strokes each for three stacks; extras are worked on too."""
    assert only(6, punched(times=2), "light", extra=1).strokes == 2 * 3


def test_bare_hands_take_one() -> None:
    """However light it is."""
    assert only(6, punched(tool=""), "light").strokes == 6


def test_on_a_plate_lie_as_many_as_it_would_give() -> None:
    """100 x 60 are five across and two down of 20 x 30: 24 pieces take three strokes."""
    done = only(24, replace(punched("press"), kind=WorkKind.DIE_CUT), "heavy")
    assert [one.at_once for one in done.piles] == [10]
    assert done.strokes == 3


def test_before_cutting_sheets_are_worked_on() -> None:
    """By area 100 x 100 give at most sixteen of 20 x 30, so seventeen need two sheets, inked one by one."""
    ink = Work(WorkKind.INK, ("B",), "", Moment.BEFORE)
    done = only(17, ink, "heavy")
    assert (done.pieces, done.strokes, done.of_sheets) == (2, 2, True)


def test_a_sheet_with_two_parts_is_inked_once() -> None:
    """B and C come from one sheet."""
    parts = (part("B", 20, 30, "heavy"), part("C", 20, 30, "heavy"))
    ink = Work(WorkKind.INK, ("B", "C"), "", Moment.BEFORE)
    (done,) = bench(made(2, ink, parts=parts)).works
    assert done.pieces == 1


def test_the_estimate_is_strokes_by_what_one_takes() -> None:
    """By the house's figure, or by the tool's own; drying counts once for all pieces of a work."""
    dry = replace(punched(), wait=Wait(Waiting.DRY, 20))
    assert only(6, dry, "light").seconds == 2 * STROKE_SECONDS[WorkKind.PUNCH]
    assert only(6, punched("slow"), "light").seconds == 2 * 30
    one = part("B", 20, 30, "light")
    assert bench(made(6, dry, parts=(one,))).waiting == 20
    assert bench(made(60, dry, replace(dry, tool="slow"), parts=(one,))).waiting == 40


def test_nothing_to_do_is_no_bench_work() -> None:
    """A batch that is only cut."""
    one = part("B", 20, 30, "light")
    assert bench_work(made(6, parts=(one,)), None, SUPPLIES, TOOLS) is None


@given(
    st.integers(1, 40),
    st.lists(st.sampled_from(sorted(SUPPLIES)), min_size=1, max_size=3).map(tuple),
    st.sampled_from(["", *TOOLS]),
    st.integers(0, 3),
)
def test_another_piece_never_takes_fewer_strokes(
    begun: int, papers: tuple[str, ...], tool: str, times: int
) -> None:
    """Nor does it take less time; one stroke is never more than one for each piece."""
    work = Work(WorkKind.PUNCH, ("B",), tool, Moment.AFTER, times=times)
    fewer, more = (_counted(count, work, papers) for count in (begun, begun + 1))
    assert fewer.strokes <= more.strokes <= (begun + 1) * (times or 1)
    assert fewer.seconds <= more.seconds


def _counted(begun: int, work: Work, papers: tuple[str, ...]) -> Done:
    one = part("B", 20, 30, *papers)
    found = bench_work(made(begun, work, parts=(one,)), None, SUPPLIES, TOOLS)
    assert found is not None
    return found.works[0]
