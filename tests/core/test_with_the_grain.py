"""Folds along the fibres, where that takes no more paper.

Cards of 200 x 100 that fold down the middle, from sheets of 300 x 600: lying as they are
written six come from a sheet, turned nine.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.batch_cutting import PLANNER, Cutting, cutting_of
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Node, PartLeaf, ThroughCut
from batchleaf.core.folds_across import folds_across
from batchleaf.facts import Fold, Grain, Part, Project, Score, Status, Supply
from core.drawers import batch, part, size, supply

SCORE = Score(runs_down=True, at=Fraction(100))
CARD = replace(part("A", 200, 100, "card"), fold=Fold.SIDE, scores=(SCORE,))
PAPER = supply("card", size=size(300, 600))


def planned(makes: int, card: Part = CARD, paper: Supply = PAPER) -> Cutting:
    """The plan for so many cards that are not cut yet."""
    one: Project = replace(
        batch(1, slug="cards", finished=0, status=Status.PLANNED), parts=(card,), begun=makes
    )
    found = cutting_of(one, {"card": paper}, PLANNER)
    assert found is not None
    return found


def turned(cutting: Cutting) -> set[bool]:
    """How the parts of all its plans lie, as they are named and as they measure."""
    named = {leaf.turned for plan in cutting.plans for leaf in leaves(plan.tree)}
    laid = {
        (placed.rect.width, placed.rect.height) != (CARD.size.width, CARD.size.height)
        for plan in cutting.plans
        for placed in lay_out(plan, cutting.job).parts
    }
    assert laid == named
    return named


def leaves(tree: Node) -> Iterator[PartLeaf]:
    """The parts that come out of a tree of cuts."""
    if isinstance(tree, PartLeaf):
        yield tree
    elif isinstance(tree, ThroughCut):
        yield from leaves(tree.first)
        yield from leaves(tree.second)


def sheets(cutting: Cutting) -> int:
    """How many are cut."""
    return sum(plan.times for plan in cutting.plans)


@pytest.mark.parametrize("grain", [Grain.LONG, Grain.SHORT])
@pytest.mark.parametrize("makes", [1, 3, 6])
def test_a_fold_runs_with_the_grain(makes: int, grain: Grain) -> None:
    """Up to six from one sheet: down it where the fibres run down it, across where they run across."""
    cutting = planned(makes, paper=replace(PAPER, grain=grain))
    assert turned(cutting) == {grain is Grain.SHORT}
    assert sheets(cutting) == 1


def test_not_where_it_takes_more_paper() -> None:
    """Nine come from one sheet only if they lie across the fibres."""
    cutting = planned(9, paper=replace(PAPER, grain=Grain.LONG))
    assert turned(cutting) == {True}
    assert sheets(cutting) == 1


@pytest.mark.parametrize(
    ("card", "paper"),
    [
        (replace(CARD, turns=False), replace(PAPER, grain=Grain.SHORT)),
        (
            replace(CARD, scores=(SCORE, Score(runs_down=False, at=Fraction(50)))),
            replace(PAPER, grain=Grain.LONG),
        ),
        (replace(CARD, scores=(), fold=Fold.NONE), replace(PAPER, grain=Grain.LONG)),
        (CARD, PAPER),
    ],
    ids=["may not turn", "folds both ways", "flat", "grain not known"],
)
def test_where_it_is_no_question(card: Part, paper: Supply) -> None:
    """The plan is the one that would be made anyway, and every part is in it."""
    cutting = planned(5, card, paper)
    assert sum(1 for plan in cutting.plans for _ in leaves(plan.tree)) == 5
    assert sheets(cutting) == 1
    if not card.turns:
        assert turned(cutting) == {False}


def across(makes: int, card: Part = CARD, grain: Grain = Grain.LONG) -> list[str]:
    """What is told of the folds of so many cards."""
    one = replace(batch(1, slug="cards", finished=0, status=Status.PLANNED), parts=(card,), begun=makes)
    paper = replace(PAPER, grain=grain)
    return [found.sentence for found in folds_across(one, planned(makes, card, paper), {"card": paper})]


def test_what_lies_across_the_grain_is_told() -> None:
    """Nine from one sheet lie turned, across fibres that run down it; six do not, nor where nobody knows."""
    assert across(9) == ["A folds across the grain of card; score it well before it is folded"]
    assert across(6) == across(9, grain=Grain.UNKNOWN) == across(9, grain=Grain.SHORT) == []


def test_a_part_that_may_not_turn_says_why() -> None:
    """As it is written it folds down the sheet, across fibres that run to the right."""
    assert across(2, replace(CARD, turns=False), Grain.SHORT) == [
        "A folds across the grain of card, since it may not be turned; score it well before it is folded"
    ]


def test_only_those_that_lie_across_are_counted() -> None:
    """A sheet of nine that lie turned beside one of six that do not."""
    paper = replace(PAPER, grain=Grain.LONG)
    nine, six = planned(9, paper=paper), planned(6, paper=paper)
    (sheet,) = six.sheets.values()
    other = [replace(plan, stock="other") for plan in six.plans]
    both = replace(nine, plans=(*nine.plans, *other), sheets={**nine.sheets, "other": sheet})
    one = replace(batch(1), parts=(CARD,))
    (found,) = folds_across(one, both, {"card": paper})
    assert found.sentence.startswith("A folds across the grain of card on 9 of 15;")
