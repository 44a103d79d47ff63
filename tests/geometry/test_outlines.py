"""The areas and outlines of shapes: formulas, polygons inside and outside, another geometry."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from math import cos, pi, sin, tan
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts.shapes import Edge, Shape
from batchleaf.measure.lengths import Size, Unit, parse_size
from batchleaf.measure.outlines import (
    PI,
    Loop,
    Outline,
    area_within,
    points_on,
    points_within,
    rectangle,
    starts_of,
)
from batchleaf.measure.rects import Rect
from geometry.shapes import CUTS, Cut, by_chance, cut_off_by_hand, shape_of

SIDES = st.integers(1, 400).map(lambda tenths: Fraction(tenths, 10))


def outline(words: str, size: str) -> Outline:
    """That of a shape on a piece of this size."""
    whole = parse_size(size, Unit.MM)
    return shape_of(words, whole).outline(whole)


def test_pi_is_as_near_as_is_said() -> None:
    """355/113 is too large, by less than 2.7 in ten million; and never so by one part in eleven million."""
    assert 0 < float(PI) - pi < 2.7e-7
    assert (float(PI) - pi) / pi < 1 / 11_000_000


@given(SIDES, st.integers(3, 60))
def test_a_circle_lies_between_two_polygons(diameter: Fraction, corners: int) -> None:
    """Larger than the regular polygon with its corners on it, smaller than the one with its sides on it."""
    size = Size(diameter, diameter)
    area = float(shape_of("circle", size).outline(size).area) if diameter >= Fraction(1, 5) else 0.0
    radius, half = float(diameter) / 2, pi / corners
    if area:
        assert corners * radius**2 * sin(half) * cos(half) < area < corners * radius**2 * tan(half)


@given(CUTS)
def test_what_is_left_and_what_is_cut_off_are_the_whole(one: Cut) -> None:
    """The rest is summed from the formula of each cut, and both together are the rectangle, exactly."""
    assert one.shape.outline(one.size).area + cut_off_by_hand(one) == one.size.area


@given(CUTS)
def test_polygons_inside_are_smaller(one: Cut) -> None:
    """With its corners on the curves it is smaller, with these moved inwards still smaller; not by much."""
    edge = one.shape.outline(one.size).edge
    on, within = polygon(points_on(edge)), polygon(points_within(edge))
    assert within <= on <= area_within(edge)
    assert on >= area_within(edge) * Fraction(97, 100)


def polygon(corners: tuple[tuple[Fraction, Fraction], ...]) -> Fraction:
    """The area of a polygon, by the trapezia under its sides."""
    pairs = zip(corners, (*corners[1:], corners[0]), strict=True)
    return abs(sum(((x1 - x2) * (y1 + y2) / 2 for (x1, y1), (x2, y2) in pairs), Fraction(0)))


@given(CUTS, st.integers(0, 3))
def test_it_keeps_its_area_however_it_lies(one: Cut, turns: int) -> None:
    """Turned, moved, and seen from behind."""
    there = one.shape.outline(one.size)
    for other in (
        there.turned(one.size, turns),
        there.flipped(one.size.width),
        there.upside_down(Fraction(7)),
    ):
        assert other.area == there.area


@given(CUTS)
def test_four_quarter_turns_and_two_mirrors_are_none(one: Cut) -> None:
    """It is back where it was."""
    there = one.shape.outline(one.size)
    size, turned = one.size, there
    for _ in range(4):
        turned, size = turned.turned(size, 1), size.turned
    assert turned == there.turned(one.size, 0) == there
    twice = there.flipped(one.size.width).flipped(one.size.width)
    assert (sorted_points(twice.edge), twice.area) == (sorted_points(there.edge), there.area)
    over = there.flipped(one.size.width).upside_down(one.size.height)
    assert sorted_points(over.edge) == sorted_points(there.turned(one.size, 2).edge)


def sorted_points(loop: Loop) -> list[Any]:
    """Every step as its two ends and its corner, from whichever end it is walked."""
    return sorted((*sorted((start, step.to)), step.corner or ()) for start, step in starts_of(loop))


def test_outlines_by_hand() -> None:
    """A tag with clipped corners, a pennant, a swallowtail, a rounded corner: their corners in mm."""
    assert corners("clipped 14 top", "60 x 100") == [(14, 0), (46, 0), (60, 14), (60, 100), (0, 100), (0, 14)]
    assert corners("pointed 8 bottom", "12 x 40") == [(12, 0), (12, 32), (6, 40), (0, 32), (0, 0)]
    assert corners("notched 8 bottom", "12 x 40") == [(12, 0), (12, 40), (6, 32), (0, 40), (0, 0)]
    assert corners("rounded 5 top left", "20 x 30") == [(5, 0), (20, 0), (20, 30), (0, 30), (0, 5)]
    assert corners("pointed 20 bottom, pointed 20 top", "30 x 40") == [(15, 0), (30, 20), (15, 40), (0, 20)]
    # 50 wide, scallops of 12: four fit, 12.5 each, 6 deep.
    assert corners("scalloped 12 bottom", "50 x 30")[2:7] == [
        (43.75, 30), (37.5, 24), (31.25, 30), (25, 24), (18.75, 30),
    ]  # fmt: skip


def corners(words: str, size: str) -> list[tuple[float, float]]:
    """Where the steps of an outline end, the first one from its start on."""
    return [(float(step.to[0]), float(step.to[1])) for step in outline(words, size).edge]


def test_areas_by_hand() -> None:
    """Four scallops of 12.5 x 6 stand on 50 x 24; a circle of 16 has 64π; a hole of 5 is 25π/4."""
    assert outline("scalloped 12 bottom", "50 x 30").area == 50 * 24 + 4 * PI * Fraction(25, 4) * 6 / 2
    assert outline("circle", "16 x 16").area == 64 * PI
    assert outline("clipped 14 top, hole 5 top, down 10", "60 x 100").area == 6000 - 196 - PI * 25 / 4
    assert outline("oval, hole 4", "30 x 20").area == 150 * PI - 4 * PI


def test_two_halves_are_one_piece() -> None:
    """Where they share a line they are joined there; where they share none, that is told."""
    left = Outline(rectangle(Rect(Fraction(0), Fraction(0), Fraction(5), Fraction(9))))
    right = left.moved(Fraction(5), Fraction(0))
    assert left.joined(right).area == 90
    with pytest.raises(ValueError, match="in common"):
        left.joined(right.moved(Fraction(1), Fraction(0)))


def test_scallops_cut_off_leave_the_rest() -> None:
    """12 mm scallops stand 6 deep: without them 50 x 24 is left, and a hole stays where it was."""
    size = Size(Fraction(50), Fraction(30))
    shape = shape_of("scalloped 12 bottom, hole 4 top, down 3", size)
    bare = shape.without_scallops(size)
    assert bare.area == 50 * 24 - 4 * PI
    assert bare.holes == shape.outline(size).holes
    assert replace(shape, edges=(), holes=()) == Shape()


# --- another geometry -------------------------------------------------------------


@pytest.mark.slow
def test_the_area_is_that_of_another_geometry() -> None:
    """Two thousand shapes put together by Shapely from rectangles, discs and triangles.

    Its discs have 4 x 256 corners, and are too small by less than one part in a hundred thousand.
    """
    shapely: Any = pytest.importorskip("shapely", reason="Shapely is not installed")
    for seed in range(2000):
        one = by_chance(seed)
        area, other = float(one.shape.outline(one.size).area), by_shapely(shapely, one)
        assert other.is_valid, (seed, one.words)
        assert abs(other.area - area) < 2e-5 * float(one.size.area), (seed, one.words)


def by_shapely(shapely: Any, one: Cut) -> Any:
    """A rectangle, less or and what each word says."""
    width, height = float(one.size.width), float(one.size.height)
    shape = one.shape
    piece = shapely.box(0, 0, width, height)
    if shape.whole:
        piece = disc(shapely, width / 2, height / 2, width / 2, height / 2)
    for corner in shape.corners:
        for name in corner.corners:
            piece = piece.difference(off_corner(shapely, name, corner.kind, float(corner.by), width, height))
    deep = {edge: float(cut.by) / 2 for cut in shape.edges for edge in cut.edges if cut.kind == "scalloped"}
    left, top, right, bottom = (
        deep.get(edge, 0.0) for edge in (Edge.LEFT, Edge.TOP, Edge.RIGHT, Edge.BOTTOM)
    )
    for edge in deep:
        strip = band(shapely, edge, deep[edge], width, height)
        start, end = (left, width - right) if edge.is_level else (top, height - bottom)
        half = (end - start) / shape.scallops(edge, one.size) / 2
        for number in range(shape.scallops(edge, one.size)):
            x, y = place(edge, start + half * (2 * number + 1), deep[edge], width, height)
            at = (half, deep[edge]) if edge.is_level else (deep[edge], half)
            strip = strip.difference(disc(shapely, x, y, *at))
        piece = piece.difference(strip)
    for cut in shape.edges:
        for edge in cut.edges if cut.kind != "scalloped" else ():
            by, length = float(cut.by), width if edge.is_level else height
            triangle = shapely.Polygon(
                [place(edge, *at, width, height) for at in ((0.0, 0.0), (length / 2, by), (length, 0.0))]
            )
            if cut.kind == "pointed":
                # The strip along the edge, less the triangle that stands on it the other way.
                upright = ((0.0, by), (length / 2, 0.0), (length, by))
                point = shapely.Polygon([place(edge, *at, width, height) for at in upright])
                triangle = band(shapely, edge, by, width, height).difference(point)
            piece = piece.difference(triangle)
    for hole in shape.holes:
        square = hole.on(one.size)
        radius = float(hole.diameter) / 2
        piece = piece.difference(
            disc(shapely, float(square.x) + radius, float(square.y) + radius, radius, radius)
        )
    return piece


def off_corner(shapely: Any, corner: str, kind: str, by: float, width: float, height: float) -> Any:
    """What is cut off a corner: a triangle, or a square without its quarter of a disc."""
    x, y = (0.0 if "left" in corner else width), (0.0 if "top" in corner else height)
    inner_x, inner_y = abs(x - by), abs(y - by)
    if kind == "clipped":
        return shapely.Polygon([(inner_x, y), (x, y), (x, inner_y)])
    square = shapely.box(min(x, inner_x), min(y, inner_y), max(x, inner_x), max(y, inner_y))
    return square.difference(disc(shapely, inner_x, inner_y, by, by))


def band(shapely: Any, edge: Edge, deep: float, width: float, height: float) -> Any:
    """So much along an edge, from end to end."""
    length = width if edge.is_level else height
    (x1, y1), (x2, y2) = (place(edge, *at, width, height) for at in ((0.0, 0.0), (length, deep)))
    return shapely.box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))


def place(edge: str, along: float, deep: float, width: float, height: float) -> tuple[float, float]:
    """A point so far along an edge and so far inside of it."""
    match edge:
        case "top":
            return along, deep
        case "bottom":
            return along, height - deep
        case "left":
            return deep, along
    return width - deep, along


def disc(shapely: Any, x: float, y: float, wide: float, high: float) -> Any:
    """An ellipse with these half axes."""
    corners = [(x + wide * cos(n * pi / 512), y + high * sin(n * pi / 512)) for n in range(1024)]
    return shapely.Polygon(corners)
