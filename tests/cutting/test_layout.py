"""Places and cuts of a sheet plan, in the order of a person at a trimmer."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.core.cutting.verify_sheet import layout_faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.rects import Rect
from cutting.jobs import mm, one_stock, part


def settings(plan: SheetPlan, job: Job) -> list[int]:
    """The measures the stop is set to, cut by cut."""
    return [int(cut.setting) for cut in lay_out(plan, job).cuts]


def test_a_card_sheet_is_cut_wide_pieces_first() -> None:
    """Two bases and two panels from 305 x 305: first the strip of bases, then that of panels."""
    job = one_stock(mm(305, 305), 6, part("A", mm(210, 148), 2), part("B", mm(95, 138), 2, turns=False))
    plan = most_makes(job).plans[0]
    assert settings(plan, job) == [210, 148, 148, 138, 138]


def test_labels_share_the_strip_that_is_left() -> None:
    """Two bases, two panels and two labels: labels lie below the panels, with their waste at the end."""
    job = one_stock(
        mm(305, 305),
        6,
        part("A", mm(210, 148), 2, turns=False),
        part("B", mm(95, 138), 2, turns=False),
        part("C", mm(44, 26), 2, turns=False),
    )
    plan = most_makes(job).plans[0]
    laid = lay_out(plan, job)
    assert settings(plan, job) == [210, 148, 148, 138, 138, 26, 44, 44]
    assert [rect.size for rect in laid.leftovers] == [mm(7, 26), mm(210, 9), mm(95, 3)]


def test_equal_strips_go_through_at_one_setting() -> None:
    """Three equal strips are cut at 40 one after the other before the stop moves on."""
    strip: Node = ThroughCut(
        Axis.X, Fraction(40), PartLeaf("A"), ThroughCut(Axis.X, Fraction(50), PartLeaf("B"), Leftover())
    )
    tree = ThroughCut(Axis.Y, Fraction(30), strip, ThroughCut(Axis.Y, Fraction(30), strip, strip))
    job = one_stock(mm(100, 90), 1, part("A", mm(40, 30)), part("B", mm(50, 30)))
    plan = SheetPlan("card", 1, tree)
    assert settings(plan, job) == [30, 30, 40, 40, 40, 50, 50, 50]
    assert layout_faults(lay_out(plan, job)) == ()


def test_the_strip_that_needs_the_stop_where_it_stands_comes_first() -> None:
    """After 30 30 the strip cut at 30 goes before the one cut at 40."""
    at_40 = ThroughCut(Axis.X, Fraction(40), PartLeaf("A"), Leftover())
    at_30 = ThroughCut(Axis.X, Fraction(30), PartLeaf("B"), Leftover())
    tree = ThroughCut(Axis.Y, Fraction(30), at_40, ThroughCut(Axis.Y, Fraction(30), at_30, Leftover()))
    job = one_stock(mm(100, 90), 1, part("A", mm(40, 30)), part("B", mm(30, 30)))
    assert settings(SheetPlan("card", 1, tree), job) == [30, 30, 30, 40]


def test_parts_and_leftovers_lie_where_the_cuts_put_them() -> None:
    """A kerf of 2 lies between the first piece and the second."""
    tree = ThroughCut(Axis.X, Fraction(40), PartLeaf("A"), Leftover())
    laid = lay_out(SheetPlan("card", 1, tree), one_stock(mm(100, 30), 1, kerf=Fraction(2)))
    assert [placed.rect for placed in laid.parts] == [
        Rect(Fraction(0), Fraction(0), Fraction(40), Fraction(30))
    ]
    assert laid.leftovers == (Rect(Fraction(42), Fraction(0), Fraction(58), Fraction(30)),)


def test_a_trim_as_narrow_as_the_kerf_leaves_nothing() -> None:
    """A cut whose kerf takes the rest leaves no leftover, and it still counts as a cut."""
    tree = ThroughCut(Axis.X, Fraction(99), PartLeaf("A"), Leftover())
    laid = lay_out(SheetPlan("card", 1, tree), one_stock(mm(100, 30), 1, kerf=Fraction(2)))
    assert (len(laid.cuts), laid.leftovers) == (1, ())
    assert layout_faults(laid) == ()


def test_parts_and_leftovers_cover_the_sheet() -> None:
    """Without kerf the areas of parts and leftovers add up to the sheet, for every plan of a batch."""
    job = Job(
        (Stock("card", mm(305, 305), 4), Stock("scrap", mm(180, 230), 2, scrap=True)),
        (PartKind("A", mm(120, 95)), PartKind("B", mm(61, 44), 2), PartKind("C", mm(25, 70))),
    )
    for plan in most_makes(job).plans:
        laid = lay_out(plan, job)
        pieces = [placed.rect for placed in laid.parts] + list(laid.leftovers)
        assert sum(rect.size.area for rect in pieces) == laid.sheet.size.area
        assert layout_faults(laid) == ()
