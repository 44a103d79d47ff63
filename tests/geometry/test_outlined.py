"""Shapes where they lie: on each face of a folded base, turned, seen from behind, and with room to stamp."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.aspects import AspectKind
from batchleaf.core.geometry.aspects_of_folds import aspects_of
from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.outlined import cut_off_part, of_blank, of_face, of_lying
from batchleaf.core.geometry.room import room_to_stamp, room_to_write
from batchleaf.core.geometry.seen import Seen, seen_in, seen_through_holes
from batchleaf.facts import Fold, Part
from batchleaf.measure.outlines import Outline, Point, area_within, clearance, points_on
from batchleaf.measure.rects import Rect
from geometry.makes import base, layer, make
from geometry.shapes import CUTS, Cut, by_chance, shape_of

TURNS = st.sampled_from(["", "turned 90", "turned 180", "turned 270"])


def cut_to(part: Part, words: str) -> Part:
    """A part with a shape; of a base that of the finished piece."""
    return replace(part, shape=shape_of(words, part.folded_size, part.fold))


def made_of(*parts: Part) -> MadeUp:
    """One make of these parts."""
    made = put_together(make(*parts))
    assert made is not None
    return made


def seen(made: MadeUp, kind: AspectKind, clear: str = "") -> list[Seen]:
    """What is seen in one of its aspects, the farthest first."""
    return list(seen_in(next(one for one in aspects_of(made) if one.kind is kind), made, clear))


def corners(outline: Outline | None) -> set[tuple[int, int]]:
    """Where its steps end; all in whole mm."""
    assert outline is not None
    points = {step.to for step in outline.edge}
    assert all(x.denominator == y.denominator == 1 for x, y in points)
    return {(int(x), int(y)) for x, y in points}


FACES = [
    # Clipped at the upper right by 10, on a face of 100 x 150; the fold stays.
    (Fold.SIDE, "front", [(0, 0), (90, 0), (100, 10), (100, 150), (0, 150)]),
    (Fold.SIDE, "inside right", [(0, 0), (90, 0), (100, 10), (100, 150), (0, 150)]),
    (Fold.SIDE, "inside left", [(10, 0), (100, 0), (100, 150), (0, 150), (0, 10)]),
    (Fold.SIDE, "back", [(10, 0), (100, 0), (100, 150), (0, 150), (0, 10)]),
    # Of a card folded on top at the lower right: inside on top it is upside down.
    (Fold.TOP, "front", [(0, 0), (100, 0), (100, 140), (90, 150), (0, 150)]),
    (Fold.TOP, "inside bottom", [(0, 0), (100, 0), (100, 140), (90, 150), (0, 150)]),
    (Fold.TOP, "inside top", [(0, 0), (90, 0), (100, 10), (100, 150), (0, 150)]),
    (Fold.TOP, "back", [(0, 0), (100, 0), (100, 150), (10, 150), (0, 140)]),
]
BLANKS = {Fold.SIDE: base(200, 150, Fold.SIDE), Fold.TOP: base(100, 300, Fold.TOP)}
WORDS = {Fold.SIDE: "clipped 10 top right", Fold.TOP: "clipped 10 bottom right"}


@pytest.mark.parametrize(("fold", "face", "points"), FACES)
def test_each_face_has_the_outline_of_the_finished_piece(
    fold: Fold, face: str, points: list[tuple[int, int]]
) -> None:
    """Worked out by hand, as each face is seen by itself."""
    card = cut_to(BLANKS[fold], WORDS[fold])
    panel = next(one for one in made_of(card).panels if one.name == face)
    assert corners(of_face(card, panel)) == set(points)


def test_an_opened_card_is_one_piece() -> None:
    """200 x 150, fold down the middle: both upper corners are clipped, and no line runs along the fold."""
    card = cut_to(BLANKS[Fold.SIDE], WORDS[Fold.SIDE])
    (sheet,) = seen(made_of(card), AspectKind.INSIDE)
    assert corners(sheet.outline) == {
        (100, 0), (190, 0), (200, 10), (200, 150), (100, 150), (0, 150), (0, 10), (10, 0),
    }  # fmt: skip
    assert sheet.outline is not None
    assert sheet.outline.area == card.area == 2 * (15_000 - 50)


@pytest.mark.parametrize("fold", [Fold.SIDE, Fold.TOP])
def test_the_blank_is_as_large_as_its_panels(fold: Fold) -> None:
    """Opened again, with its cut corners across the fold from one another."""
    card = cut_to(BLANKS[fold], WORDS[fold])
    blank = of_blank(card)
    assert blank is not None
    assert blank.area == card.area
    far = {Fold.SIDE: {(10, 0), (0, 10), (190, 0), (200, 10)}}
    far[Fold.TOP] = {(90, 0), (100, 10), (100, 290), (90, 300)}
    assert far[fold] <= corners(blank)


def test_folds_end_where_the_paper_does() -> None:
    """Four panels of 50 x 80, pointed by 20 on top: their folds begin 20 down."""
    houses = cut_to(base(200, 80, Fold.ACCORDION, panels=4), "pointed 20 top")
    creases = aspects_of(made_of(houses))[0].creases
    assert [(int(one.x1), int(one.y1), int(one.x2), int(one.y2)) for one in creases] == [
        (x, 20, x, 80) for x in (50, 100, 150)
    ]
    (sheet,) = seen(made_of(houses), AspectKind.FRONT)
    assert sheet.outline is not None
    assert sheet.outline.area == houses.area == 4 * (4000 - 500)


def test_holes_of_an_accordion_lie_over_one_another() -> None:
    """5 from the left of panel 1; so 5 from the right of panel 2, and so on: 7.5 is the middle."""
    strip = cut_to(base(200, 80, Fold.ACCORDION, panels=4), "hole 5 left, right 5")
    (sheet,) = seen(made_of(strip), AspectKind.FRONT)
    assert sheet.outline is not None
    middles = sorted(
        (min(step.to[0] for step in hole) + max(step.to[0] for step in hole)) / 2
        for hole in sheet.outline.holes
    )
    assert middles == [Fraction(15, 2), 100 - Fraction(15, 2), 100 + Fraction(15, 2), 200 - Fraction(15, 2)]


def test_a_turned_part_takes_its_shape_with_it() -> None:
    """A pennant of 20 x 40 pointed at its foot, turned to the right: its point looks to the left."""
    pennant = cut_to(layer("B", 20, 40, "top left, right 10, down 10, turned 90"), "pointed 10 bottom")
    _, found = seen(made_of(base(100, 100), pennant), AspectKind.FRONT)
    assert corners(found.outline) == {(50, 10), (50, 30), (20, 30), (10, 20), (20, 10)}


def test_seen_through_a_clear_base_it_is_turned_over() -> None:
    """Clipped at its upper left, on the back of a film of 100: from the front it is at the upper right."""
    label = cut_to(layer("B", 20, 30, "back, top left, right 10, down 10"), "clipped 5 top left")
    made = made_of(base(100, 100), label)
    found = next(one for one in seen(made, AspectKind.FRONT, clear="A") if one.index == 0)
    assert corners(found.outline) == {(70, 10), (85, 10), (90, 15), (90, 40), (70, 40)}
    found = next(one for one in seen(made, AspectKind.BACK, clear="A") if one.index == 0)
    assert corners(found.outline) == {(15, 10), (30, 10), (30, 40), (10, 40), (10, 15)}


def test_a_hole_shows_what_lies_behind() -> None:
    """A hole of 20 in the front of a card, 10 from the top and the left: the page behind it has one too.

    A panel inside on the right covers it; one on the front lies before it, and is not behind.
    """
    card = cut_to(base(200, 150, Fold.SIDE), "hole 20 top left, right 10, down 10")
    made = made_of(card, layer("B", 40, 40, "inside right, top left"), layer("C", 10, 10, "bottom", on="A"))
    front = aspects_of(made)[0]
    assert [(one.part.letter, one.rect) for one in seen_through_holes(front, made)] == [
        ("B", Rect(Fraction(10), Fraction(10), Fraction(20), Fraction(20)))
    ]
    back = next(one for one in aspects_of(made) if one.kind is AspectKind.BACK)
    assert [(one.part.letter, one.reverse) for one in seen_through_holes(back, made)] == [("B", True)]
    assert seen_through_holes(front, made_of(base(200, 150, Fold.SIDE), layer("B", 40, 40))) == ()


# --- room -------------------------------------------------------------------------


@given(CUTS, TURNS)
def test_room_to_stamp_lies_inside_the_shape(one: Cut, turn: str) -> None:
    """Its four corners lie on the piece, no corner of the piece lies in it, and no hole meets it."""
    made, outline = lying(one, turn)
    room = room_to_stamp(made, made.lying[0])
    assert room is not None
    assert made.lying[0].rect.holds(room.rect)
    if outline is not None:
        assert_inside(room.rect, outline)


def lying(one: Cut, turn: str = "") -> tuple[MadeUp, Outline | None]:
    """One piece on a large base, and its outline there."""
    piece = replace(layer("B", 1, 1, turn), size=one.size, shape=one.shape)
    made = made_of(base(300, 300), piece)
    return made, of_lying(made.lying[0])


def assert_inside(rect: Rect, outline: Outline) -> None:
    """Corners may lie on the line, so they are looked at a hair inside."""
    hair = Fraction(1, 1000)
    inner = Rect(rect.x + hair, rect.y + hair, rect.width - 2 * hair, rect.height - 2 * hair)
    assert all(clearance(at, outline.edge) is not None for at in four_corners(inner))
    for loop in (outline.edge, *outline.holes):
        assert not any(inner.x < x < inner.right and inner.y < y < inner.bottom for x, y in points_on(loop))
        assert loop == outline.edge or all(clearance(at, loop) is None for at in four_corners(inner))


def four_corners(rect: Rect) -> tuple[Point, ...]:
    """Those of a rectangle."""
    x, y, right, bottom = rect.x, rect.y, rect.right, rect.bottom
    return (x, y), (right, y), (right, bottom), (x, bottom)


@given(CUTS)
def test_what_is_cut_off_is_covered(one: Cut) -> None:
    """With the rectangles that cover it the area of the piece is left at most."""
    made, outline = lying(one)
    covered = cut_off_part(made.lying[0])
    if outline is not None:
        xs = sorted({one.x for one in covered} | {one.right for one in covered})
        left = made.lying[0].rect.area
        for a, b in pairwise(xs):
            left -= (b - a) * union([one for one in covered if one.x <= a and b <= one.right])
        assert left <= area_within(outline.edge)


def union(rects: list[Rect]) -> Fraction:
    """How much of a column some rectangles cover together, from top to foot."""
    covered, reached = Fraction(0), Fraction(-1000)
    for one in sorted(rects, key=lambda one: one.y):
        covered += max(one.bottom - max(one.y, reached), Fraction(0))
        reached = max(reached, one.bottom)
    return covered


def test_the_room_of_a_circle() -> None:
    """The largest square in a circle of 100 has a side of 70.71, and half its area; in whole hundredths."""
    made = made_of(base(200, 200), cut_to(layer("B", 100, 100), "circle"))
    room = room_to_stamp(made, made.lying[0])
    assert room is not None
    assert 4990 < room.rect.area < 5000
    assert 70 < room.rect.width < 71
    for side in (room.rect.x, room.rect.y, room.rect.width, room.rect.height):
        assert (side * 100).denominator == 1


def test_the_room_of_a_tag() -> None:
    """60 x 100, clipped 14 on top, below its hole: all that is straight, 86 high."""
    tag = cut_to(layer("B", 60, 100), "clipped 14 top, hole 5 top, down 5")
    made = made_of(base(200, 200), tag)
    room = room_to_stamp(made, made.lying[0])
    assert room is not None
    assert [int(margin) for margin in room.margins] == [0, 14, 0, 0]


def test_room_to_write_lies_inside_too() -> None:
    """The inside of a card of 100 x 150 whose right end is a half circle is not as wide as its page."""
    card = cut_to(base(200, 100, Fold.SIDE), "rounded 50 right")
    room = room_to_write(made_of(card), {"A"})
    assert room is not None
    outline = of_face(card, room.panel)
    assert outline is not None
    assert_inside(room.rect, outline)
    # At most 75 x 86.6: at 60° of the half circle.
    assert 6450 < room.rect.area < 6496


# --- another geometry ---------------------------------------------------------------


@pytest.mark.slow
def test_room_lies_inside_by_another_geometry() -> None:
    """Five hundred shapes: Shapely finds no more than a hair of any room outside of its piece."""
    shapely: Any = pytest.importorskip("shapely", reason="Shapely is not installed")
    for seed in range(500):
        one = by_chance(seed)
        made, outline = lying(one)
        room = room_to_stamp(made, made.lying[0])
        assert room is not None, (seed, one.words)
        if outline is None:
            continue
        edge, *holes = ([tuple(map(float, at)) for at in points_on(loop)] for loop in outlines(outline))
        piece = shapely.Polygon(edge, holes)
        rect = shapely.box(
            *(float(side) for side in (room.rect.x, room.rect.y, room.rect.right, room.rect.bottom))
        )
        assert piece.is_valid, (seed, one.words)
        assert rect.difference(piece).area < 0.02, (seed, one.words)


def outlines(outline: Outline) -> tuple[Any, ...]:
    """The edge, then the holes."""
    return outline.edge, *outline.holes
