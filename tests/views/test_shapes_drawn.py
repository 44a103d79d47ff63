"""Parts with other outlines than a rectangle: in drawings, in words, in the list of parts."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.commands.opened import open_archive
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Fold
from batchleaf.measure.lengths import Unit
from batchleaf.views.drawing.cutouts import cutout, lines_within, polygons_of, reach_at
from batchleaf.views.drawing.shapes import Box, Cutout, Drawing, Polygon
from batchleaf.views.drawing.shapes import Path as Line
from batchleaf.views.part_rows import part_rows
from batchleaf.views.shape_in_words import shape_words
from batchleaf.views.stand_in import stand_in
from batchleaf.views.together import together_view
from core.drawers import size, supply
from geometry.makes import base, layer, make
from geometry.shapes import CUTS, Cut, shape_of

ROOT = Path(__file__).parents[2]
SUPPLIES = {"card": supply("card", size=size(600, 600))}


def plain(text: str) -> str:
    """With spaces that break, for comparing."""
    return text.replace("\u00a0", " ")


@pytest.fixture(scope="module")
def figures() -> Figures:
    """The demo's."""
    found = open_archive(ROOT).worked().figures
    assert found is not None
    return found


def drawn(figures: Figures, slug: str) -> tuple[BatchFigures, list[Drawing]]:
    """A batch of the demo and the drawings of one make of it."""
    batch = figures.batches[slug]
    view = together_view(batch.project, {one.slug: one for one in figures.archive.supplies})
    assert view is not None
    return batch, [figure.drawing for figure in (*view.figures, *view.layers)]


def area_of(piece: Cutout) -> float:
    """The area of its edge less that of its holes, each curve in sixteen straight pieces."""
    edge, *holes = (_area(list(_points(path))) for path in piece.paths)
    return edge - sum(holes)


def _points(path: Line) -> list[tuple[float, float]]:
    points = [path.start]
    for piece in path.pieces:
        if len(piece) == 1:
            points.append(piece[0])
            continue
        (x0, y0), ((x1, y1), (x2, y2), (x3, y3)) = points[-1], piece
        for n in range(1, 17):
            t = n / 16
            a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3
            points.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
    return points


def _area(points: list[tuple[float, float]]) -> float:
    pairs = zip(points, (*points[1:], points[0]), strict=True)
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairs)) / 2


@settings(max_examples=40)
@given(CUTS, st.sampled_from(["", "turned 90", "back", "back, turned 270"]))
def test_what_is_drawn_is_as_large_as_the_part(one: Cut, at: str) -> None:
    """From the front and slanting, turned, on the back: the oblique view makes each area 0.448 of it.

    0.82 x 0.4 + 0.24 x 0.5 is how much a square millimetre of a face covers there.
    """
    part = replace(layer("B", 1, 1, at), size=one.size, shape=one.shape)
    view = together_view(make(base(300, 300), part), SUPPLIES)
    assert view is not None
    flat = view.figures[-1].drawing if at.startswith("back") else view.figures[0].drawing
    for drawing, share in ((flat, 1.0), (view.layers[-1].drawing, 0.448)):
        pieces = [shape for shape in drawing.shapes if isinstance(shape, Cutout) and "layer" in shape.role]
        if one.shape.is_rectangle:
            assert pieces == []
        else:
            assert area_of(pieces[-1]) == pytest.approx(float(part.area) * share, rel=4e-3)


def test_a_plain_make_is_drawn_from_rectangles() -> None:
    """Nothing of it is a cutout."""
    view = together_view(make(base(210, 148, Fold.SIDE), layer("B", 50, 50)), SUPPLIES)
    assert view is not None
    drawings = [figure.drawing for figure in (*view.figures, *view.layers)]
    assert not any(isinstance(shape, Cutout) for drawing in drawings for shape in drawing.shapes)


def test_the_tag_of_the_demo_is_drawn_as_its_steps_make_it(figures: Figures) -> None:
    """Two corners clipped by 14, a hole of 5 ten from the top, a round moon; the plan cuts rectangles."""
    _, (front, apart) = drawn(figures, "first-frost-tags")
    tag, moon, outline = (shape for shape in front.shapes if isinstance(shape, Cutout))
    assert (len(tag.paths), len(tag.paths[0].pieces)) == (2, 6)
    assert outline.role == "outline"
    assert {at for path in outline.paths for piece in path.pieces for at in piece} >= {
        (14, 0),
        (46, 0),
        (60, 14),
    }
    assert [len(piece) for piece in moon.paths[0].pieces] == [3, 3, 3, 3]
    # The panel is a rectangle; so are all that leave the sheets.
    assert [shape.role.split()[0] for shape in front.shapes if isinstance(shape, Box)] == ["layer"]
    assert len([shape for shape in apart.shapes if isinstance(shape, Cutout)]) == 2
    assert len([shape for shape in apart.shapes if isinstance(shape, Polygon)]) == 1


def test_the_demo_in_words(figures: Figures) -> None:
    """For those who cannot see the drawings."""
    said = {
        slug: " ".join(plain(drawing.description) for drawing in drawn(figures, slug)[1])
        for slug in ("first-frost-tags", "harbour-square-cards", "towpath-accordions")
    }
    assert (
        "60 × 100 mm, its top corners clipped by 14 mm, a hole of 5 mm, 10 mm from the top and 27.5"
        in (said["first-frost-tags"])
    )
    assert "moon of white card, a circle of 16 mm, on the panel" in said["first-frost-tags"]
    assert "pennant of white card, 12 × 40 mm, pointed at the foot by 8 mm" in said["harbour-square-cards"]
    assert "reed of moss card, 1/2 × 3 in, pointed on top by 5/8 in" in said["towpath-accordions"]


def test_the_list_of_parts_says_it(figures: Figures) -> None:
    """With what the part is cut to first."""
    batch = figures.batches["first-frost-tags"]
    supplies = {one.slug: one for one in figures.archive.supplies}
    rows = part_rows(batch.project, supplies, {})
    details = {row.letter: [plain(one) for one in row.details] for row in rows}
    assert details["A"][:2] == [
        "its top corners clipped by 14 mm",
        "a hole of 5 mm, 10 mm from the top and 27.5 mm from both sides",
    ]
    assert details["C"][:2] == ["a circle of 16 mm", "cut 18 × 18 mm first"]


@pytest.mark.parametrize(
    ("shape", "words"),
    [
        ("oval", ["an oval of 60 × 40 mm"]),
        ("rounded 6", ["its corners rounded by 6 mm"]),
        ("rounded 6 top left", ["its top left corner rounded by 6 mm"]),
        ("notched 9 left", ["notched at the left by 9 mm"]),
        ("scalloped 8 top", ["scalloped on top, 7 half circles"]),
        ("scalloped 8", ["scalloped all round, 20 half circles"]),
        ("hole 6", ["a hole of 6 mm, 17 mm from the top and the foot and 27 mm from both sides"]),
    ],
)
def test_shapes_in_words(shape: str, words: list[str]) -> None:
    """On a piece of 60 x 40: along 60 fit 7 scallops of 8, between two rows of them 6, and 4 on 40 - 8."""
    part = replace(layer("B", 60, 40), shape=shape_of(shape, size(60, 40)))
    assert [plain(one) for one in shape_words(part, Unit.MM)] == words


def test_patterns_stay_on_the_paper() -> None:
    """A stripe across a ring of 20 with a hole of 10 is two pieces of 5; one beside it is none."""
    ring = shape_of("circle, hole 10", size(20, 20)).outline(size(20, 20))
    across = list(lines_within([(-5.0, 10.0, 25.0, 10.0)], ring))
    assert [round(end - start, 6) for start, _, end, _ in across] == [5, 5]
    assert list(lines_within([(1.0, 1.0, 1.0, 1.0), (10.0, 10.0, 10.0, 10.0)], ring)) == []
    assert list(lines_within([(-5.0, 10.0, 25.0, 10.0)], None)) == [(-5.0, 10.0, 25.0, 10.0)]


def test_leaders_end_on_the_paper() -> None:
    """At half its height a pointed tag of 40 x 60 is 40 wide, 5 above its tip 10."""
    tag = shape_of("pointed 20 bottom", size(40, 60)).outline(size(40, 60))
    assert reach_at(tag, 30.0) == (0, 40)
    assert reach_at(tag, 55.0) == (15, 25)
    assert reach_at(tag, 61.0) is None


def test_a_fold_is_no_edge() -> None:
    """Of a closed card with a rounded corner the outline leaves out the fold at its left."""
    card = base(210, 148, Fold.SIDE)
    card = replace(card, shape=shape_of("rounded 10 bottom right", card.folded_size, card.fold))
    view = together_view(make(card, layer("B", 50, 50)), SUPPLIES)
    assert view is not None
    (outline,) = (
        one for one in view.figures[0].drawing.shapes if isinstance(one, Cutout) and one.role == "outline"
    )
    (path,) = outline.paths
    assert (path.start, path.closed, path.pieces[-1][-1]) == ((0, 0), False, (0, 148))


def test_where_there_is_no_photo_the_shape_stands_in(figures: Figures) -> None:
    """The pennant of a batch that is only planned."""
    supplies = {one.slug: one for one in figures.archive.supplies}
    shapes = stand_in(figures.batches["harbour-square-cards"], supplies)
    assert len([shape for shape in shapes if isinstance(shape, Cutout)]) == 1


def test_a_curve_is_followed_closely() -> None:
    """The drawn circle of 100 has its area within three parts in ten thousand."""
    circle = shape_of("circle", size(100, 100)).outline(size(100, 100))
    assert area_of(cutout(circle, "layer", "", lambda at: at)) == pytest.approx(2500 * 3.14159265, rel=3e-3)
    assert len(polygons_of(circle)) == 1
