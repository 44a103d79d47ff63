"""Plans that are easy at the table: few of them, few settings, large offcuts."""

from __future__ import annotations

from batchleaf.core.cutting.arrange import arrangements
from batchleaf.core.cutting.integers import Sheet, shapes_of
from batchleaf.core.cutting.layout import lay_out, settings_of
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import Axis, leaves_of
from batchleaf.core.cutting.strips import Leaf, Strips, in_a_row, parts_of, spelling, without
from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.jobs import mm, one_stock, part

A, B = (shapes_of(0, 40, 30, turns=False)[0], shapes_of(1, 20, 30, turns=False)[0])


def test_papers_of_a_pad_are_all_cut_alike() -> None:
    """Six cards give twelve bases; four papers then give three skies and three waters each, by one plan."""
    job = Job(
        (Stock("card", mm(210, 297), 6), Stock("pad", mm(180, 230), 4)),
        (
            PartKind("A", mm(210, 148), sources=("card",)),
            PartKind("D", mm(85, 51), turns=False, sources=("pad",)),
            PartKind("E", mm(85, 74), turns=False, sources=("pad",)),
        ),
    )
    plans = {plan.stock: plan for plan in most_makes(job).plans}
    assert len(plans) == 2
    assert (plans["pad"].times, leaves_of(plans["pad"].tree)) == (4, {"D": 3, "E": 3})


def test_a_row_of_equal_parts_needs_one_setting() -> None:
    """Six strips of 50 from 305: five or six cuts, the stop set once besides the trim."""
    job = one_stock(mm(305, 180), 3, part("A", mm(50, 180), turns=False))
    (plan,) = most_makes(job).plans
    assert settings_of(lay_out(plan, job)) == 1


def test_settings_are_runs_of_equal_measures() -> None:
    """50 50 20: the stop is set twice for three cuts."""
    job = one_stock(mm(100, 100), 1, part("A", mm(50, 50), 3), part("B", mm(20, 50)))
    (plan,) = most_makes(job).plans
    laid = lay_out(plan, job)
    assert [int(cut.setting) for cut in laid.cuts] == [50, 50, 50, 20]
    assert settings_of(laid) == 2


def test_strips_have_one_spelling() -> None:
    """Nested rows along one axis are one row, larger parts first, in whatever order they came."""
    small, large = Leaf(B), Leaf(A)
    nested = in_a_row(Axis.X, [small, in_a_row(Axis.X, [large, small]) or small])
    flat = in_a_row(Axis.X, [large, small, small])
    assert nested == flat
    assert isinstance(flat, Strips)
    assert (flat.width, flat.height, spelling(flat)) == (80, 30, "x(0 1 1)")


def test_a_part_can_be_taken_out() -> None:
    """What is left is spelt as if the part had never been there."""
    row = in_a_row(Axis.X, [Leaf(A), Leaf(B), Leaf(B)])
    assert row is not None
    assert without(row, 0) == in_a_row(Axis.X, [Leaf(B), Leaf(B)])
    assert without(Leaf(A), 0) is None


def test_other_arrangements_hold_the_same_parts_on_the_same_sheet() -> None:
    """Nothing is lost, nothing is added, nothing sticks out."""
    sheet = Sheet(100, 90, (*shapes_of(0, 40, 30, turns=True), *shapes_of(1, 20, 30, turns=True)))
    piece = in_a_row(Axis.X, [in_a_row(Axis.Y, [Leaf(A)] * 3) or Leaf(A), Leaf(B), Leaf(B)])
    assert piece is not None
    others = arrangements(piece, sheet)
    assert others
    for other in others:
        assert parts_of(other) == parts_of(piece)
        assert (other.width <= 100, other.height <= 90) == (True, True)
