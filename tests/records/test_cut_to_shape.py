"""Shapes in the words of records: read, told apart from papers, and written out in full."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts import Fold, Part
from batchleaf.facts.shapes import Corner, CornerCut, CornerKind, Edge, EdgeCut, EdgeKind, Hole, Shape, Whole
from batchleaf.measure.lengths import WRITTEN, Unit, parse_size
from batchleaf.records.bases import read_base
from batchleaf.records.cut_to_shape import fitted, read_features, spell_shape
from batchleaf.records.explaining.bases import spelt_base
from batchleaf.records.written.projects import part_in_one_line
from geometry.shapes import CUTS, Cut
from records.test_parts import part

HALF = Fraction(1, 2)
FOURTEEN = CornerCut(CornerKind.CLIPPED, Fraction(14), Edge.TOP.ends)
ONE_ROUNDED = CornerCut(CornerKind.ROUNDED, Fraction(6), (Corner.TOP_LEFT,))
PUNCHED = Hole(Fraction(5), HALF, Fraction(0), Fraction(0), Fraction(10))


@pytest.mark.parametrize(
    ("words", "shape"),
    [
        ("circle", Shape(Whole.CIRCLE)),
        ("Oval", Shape(Whole.OVAL)),
        ("rounded 6", Shape(corners=(CornerCut(CornerKind.ROUNDED, Fraction(6), tuple(Corner)),))),
        (
            "rounded 6 mm top left",
            Shape(corners=(CornerCut(CornerKind.ROUNDED, Fraction(6), (Corner.TOP_LEFT,)),)),
        ),
        ("clipped 14 top", Shape(corners=(FOURTEEN,))),
        ("clipped  14  top,hole 5 top, down 10", Shape(corners=(FOURTEEN,), holes=(PUNCHED,))),
        ("clipped 1.4 cm top, hole 5, top, down 10", Shape(corners=(FOURTEEN,), holes=(PUNCHED,))),
        ("pointed 10 bottom", Shape(edges=(EdgeCut(EdgeKind.POINTED, Fraction(10), (Edge.BOTTOM,)),))),
        ("notched 1/2 in left", Shape(edges=(EdgeCut(EdgeKind.NOTCHED, Fraction("12.7"), (Edge.LEFT,)),))),
        ("scalloped 8", Shape(edges=(EdgeCut(EdgeKind.SCALLOPED, Fraction(8), tuple(Edge)),))),
        ("scalloped 8 all round", Shape(edges=(EdgeCut(EdgeKind.SCALLOPED, Fraction(8), tuple(Edge)),))),
        ("hole 4", Shape(holes=(Hole(Fraction(4), HALF, HALF),))),
        (
            "hole 4 bottom right, up 3, left 5",
            Shape(holes=(Hole(Fraction(4), Fraction(1), Fraction(1), Fraction(-5), Fraction(-3)),)),
        ),
    ],
)
def test_a_shape_means_what_it_says(words: str, shape: Shape) -> None:
    """In capitals or not, with units or without, with spaces or not."""
    size = parse_size("60 x 60", Unit.MM)
    assert fitted(read_features(words, Unit.MM), size, Fold.NONE, Unit.MM) == shape


@pytest.mark.parametrize(
    ("line", "keys"),
    [
        (
            "18 x 18, white-card, circle, at top right, left 7",
            {"size": "18 x 18", "paper": "white-card", "shape": "circle", "at": "top right, left 7"},
        ),
        ("18 x 18, circle", {"size": "18 x 18", "shape": "circle"}),
        (
            "60 x 100, moss-card, oat-card, clipped 14 top, hole 5 top, down 10",
            {
                "size": "60 x 100",
                "paper": "moss-card, oat-card",
                "shape": "clipped 14 top, hole 5 top, down 10",
            },
        ),
        ("border 1/8 in, as A, rounded 1/4", {"border": "1/8 in", "paper": "as A", "shape": "rounded 1/4"}),
        ("18 x 18, ready star-sticker, oval", {"size": "18 x 18", "ready": "star-sticker", "shape": "oval"}),
        ("ready star-sticker, circle", {"ready": "star-sticker", "shape": "circle"}),
        ("18 x 18, circle-card", {"size": "18 x 18", "paper": "circle-card"}),
        ("18 x 18, oat-card, cirle", {"size": "18 x 18", "paper": "oat-card", "shape": "cirle"}),
        ("18 x 18, oat-card, clip-card", {"size": "18 x 18", "paper": "oat-card, clip-card"}),
    ],
)
def test_a_shape_in_one_line(line: str, keys: dict[str, str]) -> None:
    """It stands before the place; a supply whose name only begins like a shape is none."""
    assert part_in_one_line(line) == keys


def test_the_part_and_its_area(tmp_path: Path) -> None:
    """A part of 20 x 30 with its two lower corners clipped by 4: 600 less twice 8."""
    found = part("B label: 20 x 30, chalk-card, clipped 4 bottom", tmp_path)
    assert [cut.corners for cut in found.shape.corners] == [Edge.BOTTOM.ends]
    assert [found.area, found.size.area] == [584, 600]


@pytest.mark.parametrize(
    ("text", "area"),
    [
        # 200 x 150 folds to 100 x 150; each half loses two triangles of 10 x 10 / 2.
        ("card 200 x 150, side fold, clipped 10 right", 2 * (100 * 150 - 100)),
        ("card 100 x 300, top fold, clipped 10 bottom", 2 * (100 * 150 - 100)),
        # Each panel of 50 x 80 loses half of a strip of 20.
        ("card 200 x 80, accordion of 4, pointed 20 top", 4 * (50 * 80 - 50 * 20 // 2)),
        ("tag 60 x 100, clipped 14 top", 6000 - 196),
    ],
)
def test_a_folded_base_is_cut_through_all_of_its_panels(text: str, area: int) -> None:
    """So each loses as much."""
    base = read_base(text, Unit.MM)
    part = Part(
        "A", "base", base.size, 1, (), turns=True, fold=base.fold, scores=base.scores, shape=base.shape
    )
    assert part.area == area


@given(CUTS)
def test_in_full_it_reads_back_as_the_same(one: Cut) -> None:
    """A shape written out, in millimetres and in inches, is the same shape."""
    for unit in (Unit.MM, Unit.INCH):
        spelt = spell_shape(one.shape, unit)
        again = fitted(read_features(spelt, unit), one.size, Fold.NONE, unit) if spelt else Shape()
        assert again == one.shape


@given(CUTS, st.sampled_from(WRITTEN))
def test_a_base_in_full_reads_back_as_the_same(one: Cut, unit: Unit) -> None:
    """With its measures and its shape."""
    size = f"{float(one.size.width):g} x {float(one.size.height):g} mm"
    base = read_base(f"tag {size}, {one.words}" if one.words else f"tag {size}", Unit.MM)
    assert base.shape == one.shape
    assert read_base(spelt_base(base, unit), unit) == base
