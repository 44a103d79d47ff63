"""Which cuts make a run."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.core.cutting.steps import CutStep
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size
from batchleaf.views.runs import numbers_of, runs_of

A, REST = PartLeaf("A"), Leftover()


def strips(axis: Axis, at: int, times: int, each: Node, rest: Node = REST) -> Node:
    """``times`` pieces of ``at`` mm cut off one after the other."""
    for _ in range(times):
        rest = ThroughCut(axis, Fraction(at), each, rest)
    return rest


def cuts_of(tree: Node) -> tuple[CutStep, ...]:
    """The cuts of ``tree`` on a sheet of 300 × 200 mm."""
    size = Size(Fraction(300), Fraction(200))
    parts = (PartKind("A", Size(Fraction(1), Fraction(1))),)
    return lay_out(SheetPlan("s", 1, tree), Job((Stock("s", size),), parts)).cuts


CASES = {
    "three strips": (strips(Axis.X, 50, 3, A), ["1–3"]),
    "two are no run": (strips(Axis.X, 50, 2, A), ["1", "2"]),
    "another setting ends it": (
        strips(Axis.X, 50, 3, A, strips(Axis.X, 40, 3, A)),
        ["1–3", "4–6"],
    ),
    "equal rows on one line": (
        strips(Axis.Y, 40, 4, ThroughCut(Axis.X, Fraction(100), A, REST)),
        ["1–4", "5–8"],
    ),
    "equal rows of strips": (
        strips(Axis.Y, 40, 2, strips(Axis.X, 60, 2, A)),
        ["1", "2", "3–6"],
    ),
    "equal columns of strips": (
        strips(Axis.X, 120, 2, strips(Axis.Y, 40, 3, A)),
        ["1", "2", "3–8"],
    ),
    "a shorter row is told alone": (
        strips(Axis.Y, 60, 2, strips(Axis.X, 50, 3, A), ThroughCut(Axis.X, Fraction(50), A, REST)),
        ["1", "2", "3–8", "9"],
    ),
    "two on one line, after the same stop the other way": (
        ThroughCut(Axis.X, Fraction(100), strips(Axis.Y, 100, 1, A), strips(Axis.Y, 100, 1, A)),
        ["1", "2", "3"],
    ),
}


@pytest.mark.parametrize(("tree", "told"), CASES.values(), ids=CASES)
def test_what_makes_a_run(tree: Node, told: list[str]) -> None:
    """Three or more that follow one another at one setting, on the same lines."""
    assert [numbers.shown for numbers in numbers_of(cuts_of(tree))] == told


def test_lines_are_told_once() -> None:
    """Rows of strips lie on the same lines, however many rows."""
    *_, run = runs_of(cuts_of(strips(Axis.Y, 40, 2, strips(Axis.X, 60, 2, A))))
    assert list(run.lines) == [60, 120]
