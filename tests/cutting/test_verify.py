"""The second opinion refuses plans that are broken on purpose."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import Axis, CuttingPlan, Leftover, PartLeaf, Rect, SheetPlan, ThroughCut
from batchleaf.core.cutting.steps import CutStep, LaidOut, PlacedPart
from batchleaf.core.cutting.verify import faults
from batchleaf.core.cutting.verify_sheet import layout_faults
from cutting.jobs import mm, one_stock, part

JOB = one_stock(mm(100, 30), 2, part("A", mm(40, 30), turns=False))
TREE = ThroughCut(Axis.X, Fraction(40), PartLeaf("A"), Leftover())
GOOD = CuttingPlan(2, 4, "", (SheetPlan("card", 2, TREE),), ())


def told(plan: CuttingPlan) -> str:
    """All faults in one text."""
    return "; ".join(faults(JOB, plan))


def with_tree(tree: ThroughCut | PartLeaf) -> CuttingPlan:
    """The good plan, cut differently."""
    return replace(GOOD, plans=(SheetPlan("card", 2, tree),))


def test_a_sound_plan_has_no_faults() -> None:
    """Nothing is said about a plan that holds."""
    assert faults(JOB, GOOD) == ()
    assert faults(JOB, most_makes(JOB)) == ()


@pytest.mark.parametrize(
    ("plan", "fault"),
    [
        (replace(GOOD, makes=3), "2 of part A are too few for 3 makes"),
        (replace(GOOD, bound=1), "2 makes are more than the bound of 1"),
        (replace(GOOD, spares=(("A", 1),)), "the spares are {} and not {'A': 1}"),
        (replace(GOOD, makes=1), "the spares are {'A': 1} and not {}"),
        (replace(GOOD, plans=(SheetPlan("card", 3, TREE),)), "3 sheets of card are cut and 2 are there"),
        (replace(GOOD, plans=(SheetPlan("felt", 2, TREE),)), "there is no stock felt"),
        (replace(GOOD, plans=(SheetPlan("card", 0, TREE),)), "0 sheets are cut like this"),
        (with_tree(replace(TREE, at=Fraction(41))), "part A is cut 41 by 30"),
        (with_tree(replace(TREE, at=Fraction(140))), "a cut at 140 does not lie inside a piece of 100"),
        (with_tree(replace(TREE, first=PartLeaf("B"))), "there is no part B"),
        (with_tree(replace(TREE, first=PartLeaf("A", turned=True))), "part A is turned and may not be"),
        (with_tree(PartLeaf("A")), "part A is cut 100 by 30"),
    ],
)
def test_each_fault_is_named(plan: CuttingPlan, fault: str) -> None:
    """One thing broken, one sentence."""
    assert fault in told(plan)


def test_a_part_from_the_wrong_stock_is_refused() -> None:
    """Sources are held to."""
    job = replace(JOB, parts=(replace(JOB.parts[0], sources=("felt",)),))
    assert faults(job, GOOD) == ("plan 1: part A may not be cut from card",)


def rect(x: int, y: int, width: int, height: int) -> Rect:
    """A rectangle in whole mm."""
    return Rect(Fraction(x), Fraction(y), Fraction(width), Fraction(height))


PINWHEEL = (rect(0, 0, 7, 5), rect(7, 0, 5, 7), rect(5, 7, 7, 5), rect(0, 5, 5, 7))


def test_a_pinwheel_is_no_way_of_through_cuts() -> None:
    """Four 5 x 7 lie round a hole on 12 x 12; every first cut would go through a part."""
    cut = CutStep(1, rect(0, 0, 12, 12), Axis.X, Fraction(7), rect(0, 0, 7, 12), rect(7, 0, 5, 12))
    parts = tuple(PlacedPart("A", place, turned=False) for place in PINWHEEL)
    laid = LaidOut(rect(0, 0, 12, 12), parts, (rect(5, 5, 2, 2),), (cut,))
    assert layout_faults(laid) == ("what the cuts leave on the table is not the parts and the leftovers",)


def test_overlapping_parts_are_refused() -> None:
    """Two parts on the same paper."""
    laid = lay_out(SheetPlan("card", 1, TREE), JOB)
    moved = PlacedPart("A", rect(20, 0, 40, 30), turned=False)
    assert "parts A and A overlap" in layout_faults(replace(laid, parts=(*laid.parts, moved)))


def test_a_cut_that_stops_part_way_is_refused() -> None:
    """The piece in hand is the whole sheet; a cut through half of it is not a through cut."""
    laid = lay_out(SheetPlan("card", 1, TREE), JOB)
    half = replace(laid.cuts[0], piece=rect(0, 0, 100, 15))
    assert "cut 1 is not through a piece in hand" in layout_faults(replace(laid, cuts=(half,)))


def test_halves_that_do_not_belong_to_the_cut_are_refused() -> None:
    """A first piece wider than the setting."""
    laid = lay_out(SheetPlan("card", 1, TREE), JOB)
    wide = replace(laid.cuts[0], first=rect(0, 0, 50, 30))
    assert "cut 1 does not leave the two pieces it names" in layout_faults(replace(laid, cuts=(wide,)))
