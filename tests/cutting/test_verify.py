"""The second opinion refuses plans that are broken on purpose."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from typing import Final

import pytest

from batchleaf.core.cutting.best_use import best_use
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import (
    Axis,
    BestUse,
    CostPlan,
    CuttingPlan,
    Leftover,
    PartLeaf,
    SheetPlan,
    ThroughCut,
)
from batchleaf.core.cutting.steps import CutStep, LaidOut, PlacedPart
from batchleaf.core.cutting.verify import cost_faults, faults, use_faults
from batchleaf.core.cutting.verify_sheet import layout_faults, overlaps
from batchleaf.facts.jobs import Offer, PartKind
from batchleaf.measure.rects import Rect
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
    assert layout_faults(replace(laid, cuts=(half,))) == (
        "cut 1 is not through a piece in hand",
        "what the cuts leave on the table is not the parts and the leftovers",
    )


def test_halves_that_do_not_belong_to_the_cut_are_refused() -> None:
    """A first piece wider than the setting."""
    laid = lay_out(SheetPlan("card", 1, TREE), JOB)
    wide = replace(laid.cuts[0], first=rect(0, 0, 50, 30))
    assert "cut 1 does not leave the two pieces it names" in layout_faults(replace(laid, cuts=(wide,)))


WHOLE = rect(0, 0, 100, 30)
FIRST, SECOND = rect(0, 0, 40, 30), rect(42, 0, 58, 30)
HALVES = [
    (40, rect(0, 0, 41, 30), SECOND),  # wider than the setting
    (40, rect(1, 0, 40, 30), SECOND),  # beside it
    (40, rect(0, 0, 40, 29), SECOND),  # shorter than the piece
    (0, rect(0, 0, 0, 30), rect(2, 0, 98, 30)),  # at the edge
    (100, WHOLE, rect(100, 0, 0, 30)),  # at the other edge
    (40, FIRST, rect(42, 1, 58, 30)),  # lower than the piece
    (40, FIRST, rect(42, 0, 58, 29)),  # shorter
    (40, FIRST, rect(39, 0, 61, 30)),  # upon the first one
    (40, FIRST, rect(42, 0, 57, 30)),  # ends before the piece
    (40, FIRST, rect(42, 0, 59, 30)),  # and after it
]


HALF: Final = Fraction(1, 2)
HAIR: Final = (HALF, replace(WHOLE, width=HALF), rect(1, 0, 99, 30))
"""A setting below one."""
SOUND: Final = [(40, FIRST, SECOND), HAIR]


def turned(one: Rect) -> Rect:
    """The same with its sides changed."""
    return Rect(one.y, one.x, one.height, one.width)


@pytest.mark.parametrize("axis", list(Axis))
@pytest.mark.parametrize(("setting", "first", "second"), [*SOUND, *HALVES])
def test_a_cut_leaves_two_pieces_of_the_one_in_hand(
    axis: Axis, setting: Fraction | int, first: Rect, second: Rect
) -> None:
    """Edge to edge, down the sheet and across it; what lies between them is what the blade takes."""
    as_cut = (lambda one: one) if axis is Axis.X else turned
    cut = CutStep(1, as_cut(WHOLE), axis, Fraction(setting), as_cut(first), as_cut(second))
    left = tuple(piece for piece in (cut.first, cut.second) if piece.width and piece.height)
    told = layout_faults(LaidOut(as_cut(WHOLE), (), left, (cut,)))
    sound = (setting, first, second) in SOUND
    assert told == (() if sound else ("cut 1 does not leave the two pieces it names",))


def test_a_second_piece_begins_where_the_first_one_ends_at_the_earliest() -> None:
    """A blade that takes nothing leaves them side by side."""
    cut = CutStep(1, WHOLE, Axis.X, Fraction(40), FIRST, rect(40, 0, 60, 30))
    assert layout_faults(LaidOut(WHOLE, (), (cut.first, cut.second), (cut,))) == ()


def test_no_makes_from_no_sheets_are_sound() -> None:
    """Less than none are not."""
    assert faults(JOB, CuttingPlan(0, 4, "", (), ())) == ()
    assert "-1 makes are less than none" in faults(JOB, CuttingPlan(-1, 4, "", (), (("A", 1),)))


COSTLY = CostPlan(2, Fraction(2), Fraction(2), "", GOOD.plans, ())


@pytest.mark.parametrize(
    ("plan", "fault"),
    [
        (replace(COSTLY, cost=Fraction(3)), "the sheets cost 2 and not 3"),
        (replace(COSTLY, cost=Fraction(1), bound=Fraction(1)), "the sheets cost 2 and not 1"),
        (replace(COSTLY, bound=Fraction(5, 2)), "a cost of 2 is less than the bound of 5/2"),
        (replace(COSTLY, bound=Fraction(-1)), "a bound of -1 is less than nothing"),
        (replace(COSTLY, bound=None), "there is a cost of 2, and it is said that there is no way"),
        (replace(COSTLY, cost=None, bound=None), "there are plans, and no cost"),
        (replace(COSTLY, cost=None, plans=(), spares=(("A", 1),)), "there are spares of nothing"),
        (replace(COSTLY, makes=3), "2 of part A are too few for 3 makes"),
        (replace(COSTLY, makes=-1), "-1 makes are less than none"),
        (replace(COSTLY, spares=(("A", -1),)), "the spares are {} and not {'A': -1}"),
        (replace(COSTLY, plans=(SheetPlan("card", -2, TREE),)), "plan 1: -2 sheets are cut like this"),
        (replace(COSTLY, plans=(SheetPlan("card", 3, TREE),)), "3 sheets of card are cut and 2 are there"),
        (replace(COSTLY, plans=(SheetPlan("card", 2, PartLeaf("A")),)), "plan 1: part A is cut 100 by 30"),
    ],
)
def test_each_fault_of_a_cost_is_named(plan: CostPlan, fault: str) -> None:
    """One thing broken, one sentence."""
    assert fault in cost_faults(JOB, plan)


def test_sound_costs_have_no_faults() -> None:
    """Also where there is no way, and where none was found."""
    none = CostPlan(9, None, None, "", (), ())
    for plan in (COSTLY, least_cost(JOB, 2), least_cost(JOB, 9), none, replace(none, bound=Fraction(0))):
        assert cost_faults(JOB, plan) == ()


OFFERS = (Offer(JOB.parts[0], 5, 1), Offer(PartKind("B", mm(10, 10)), 2))
USE = BestUse(5, 7, SheetPlan("card", 1, TREE))
TWICE = replace(TREE, second=ThroughCut(Axis.X, Fraction(40), PartLeaf("A"), Leftover()))


@pytest.mark.parametrize(
    ("use", "fault"),
    [
        (replace(USE, worth=6), "the parts are worth 5 and not 6"),
        (replace(USE, bound=4), "a worth of 5 is more than the bound of 4"),
        (replace(USE, plan=SheetPlan("card", 2, TREE)), "2 sheets of card are cut and not one of card"),
        (replace(USE, plan=SheetPlan("felt", 1, TREE)), "1 sheets of felt are cut and not one of card"),
        (replace(USE, plan=SheetPlan("card", 1, TWICE)), "2 of part A are cut, and at most 1 are of use"),
        (
            replace(USE, plan=SheetPlan("card", 1, PartLeaf("A", turned=True))),
            "part A is turned and may not be",
        ),
        (replace(USE, plan=SheetPlan("card", 1, PartLeaf("C"))), "there is no part C"),
    ],
)
def test_each_fault_of_a_use_is_named(use: BestUse, fault: str) -> None:
    """One thing broken, one sentence."""
    assert fault in use_faults(JOB.stocks[0], OFFERS, use)


def test_sound_uses_have_no_faults() -> None:
    """Wherever the parts may come from otherwise."""
    elsewhere = (replace(OFFERS[0], part=replace(JOB.parts[0], sources=("felt",))), OFFERS[1])
    assert use_faults(JOB.stocks[0], OFFERS, USE) == ()
    assert use_faults(JOB.stocks[0], elsewhere, best_use(JOB.stocks[0], elsewhere)) == ()


def test_what_the_kerf_takes_is_no_part() -> None:
    """40 and 60 from 100 leave nothing for a kerf of 1."""
    job = replace(JOB, parts=(*JOB.parts, part("B", mm(60, 30))), kerf=Fraction(1))
    tree = replace(TREE, second=PartLeaf("B"))
    plan = replace(GOOD, makes=0, plans=(SheetPlan("card", 1, tree),), spares=(("A", 1), ("B", 1)))
    assert faults(job, plan) == ("plan 1: part B is cut 59 by 30",)
    taken = replace(job, kerf=Fraction(60))
    assert faults(taken, plan) == ("plan 1: the kerf leaves nothing of a piece that is to be used",)


def test_a_row_of_thousands_is_looked_at_as_well() -> None:
    """Each cut of a long row lies on the rest of the one before; the depth of the tree is no limit."""
    tree: ThroughCut | PartLeaf = PartLeaf("A")
    for _ in range(4_999):
        tree = ThroughCut(Axis.X, Fraction(1), PartLeaf("A"), tree)
    job = one_stock(mm(5_000, 1), 1, part("A", mm(1, 1)))
    assert faults(job, CuttingPlan(5_000, 5_000, "", (SheetPlan("card", 1, tree),), ())) == ()


@pytest.mark.parametrize("seed", range(60))
def test_the_sweep_sees_an_overlap_where_there_is_one(seed: int) -> None:
    """Against every pair looked at: one is told exactly where there is one."""
    dice = random.Random(seed)
    numbers = [
        (dice.randint(0, 20), dice.randint(0, 20), dice.randint(1, 6), dice.randint(1, 6)) for _ in range(5)
    ]
    rects = [rect(*four) for four in numbers]
    lying = any(
        a.x < b.x + b.width and b.x < a.x + a.width and a.y < b.y + b.height and b.y < a.y + a.height
        for a, b in combinations(rects, 2)
    )
    assert any(overlaps([("A", one) for one in rects])) == lying
