"""The thickest spot over overlapping rectangles, against slower ways that share no code with it."""

from __future__ import annotations

import random
from collections import Counter
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.stacked import RIM, Sheet, Stacked, stack
from batchleaf.measure.rects import Rect


def rect(x: int | str, y: int | str, width: int | str, height: int | str) -> Rect:
    """A rectangle."""
    return Rect(Fraction(x), Fraction(y), Fraction(width), Fraction(height))


FACE = rect(0, 0, 30, 40)


def by_counting(sheets: list[Sheet], face: Rect) -> Stacked:
    """On whole millimetres: every square of one by one is added up by itself."""
    spots = Counter[tuple[int, int]]()
    for one, thickness in sheets:
        for x in range(int(one.x), int(one.right)):
            for y in range(int(one.y), int(one.bottom)):
                spots[x, y] += thickness  # type: ignore[assignment]
    on_face = {
        (x, y) for x in range(int(face.x), int(face.right)) for y in range(int(face.y), int(face.bottom))
    }
    rim = [
        spots[x, y]
        for x, y in spots.keys() | on_face
        if not (
            face.x + RIM <= x
            and x + 1 <= face.right - RIM
            and face.y + RIM <= y
            and y + 1 <= face.bottom - RIM
        )
    ]
    inside = sorted(Fraction(spots[spot]) for spot in on_face)
    half = inside[(len(inside) + 1) // 2 - 1]
    return Stacked(max(map(Fraction, spots.values()), default=Fraction(0)), half, max(map(Fraction, rim)))


def random_layout(seed: int, finest: int) -> list[Sheet]:
    """A base and up to fourteen rectangles, some of which reach past it."""
    chance = random.Random(seed)
    sheets: list[Sheet] = [(FACE, Fraction(chance.randint(1, 9), 10))]
    for _ in range(chance.randint(0, 14)):
        x, y = (Fraction(chance.randint(-5 * finest, 30 * finest), finest) for _ in range(2))
        width, height = (Fraction(chance.randint(1, 25 * finest), finest) for _ in range(2))
        sheets.append((Rect(x, y, width, height), Fraction(chance.randint(1, 40), 20)))
    return sheets


@pytest.mark.parametrize("seed", range(60))
def test_the_thickest_spot_is_that_of_a_count_of_squares(seed: int) -> None:
    """Most, usual and rim; all sides on whole millimetres."""
    sheets = random_layout(seed, finest=1)
    assert stack(sheets, FACE) == by_counting(sheets, FACE)


@pytest.mark.slow
def test_the_thickest_spot_is_that_of_another_geometry() -> None:
    """A thousand layouts on eighths of an inch and tenths of a millimetre, cut up by Shapely."""
    shapely: Any = pytest.importorskip("shapely", reason="Shapely is not installed")
    for seed in range(1000):
        sheets = random_layout(seed, finest=(8, 10, 3)[seed % 3])
        assert_alike(stack(sheets, FACE), by_shapely(shapely, sheets), seed)


def by_shapely(shapely: Any, sheets: list[Sheet]) -> Stacked:
    """The outlines cut the plane into faces; each is looked at in one point of it."""
    boxes = [shapely.box(float(r.x), float(r.y), float(r.right), float(r.bottom)) for r, _ in sheets]
    face = boxes[0]
    inner = shapely.box(*(float(side) for side in (RIM, RIM, FACE.right - RIM, FACE.bottom - RIM)))
    lines = shapely.unary_union([box.exterior for box in (*boxes, inner)])
    most = rim = 0.0
    areas = Counter[float]()
    for cell in shapely.polygonize([lines]).geoms:
        if cell.area < 1e-9:  # slivers between sides that are one, but for the last bit
            continue
        point = cell.representative_point()
        thickness = sum(float(t) for box, (_, t) in zip(boxes, sheets, strict=True) if box.covers(point))
        most = max(most, thickness)
        if not inner.covers(point):
            rim = max(rim, thickness)
        if face.covers(point):
            areas[round(thickness, 6)] += cell.area
    covered, half = 0.0, 0.0
    for thickness in sorted(areas):
        covered += areas[thickness]
        if covered >= face.area / 2 - 1e-9:
            half = thickness
            break
    return Stacked(*(Fraction(round(one, 6)).limit_denominator(1000) for one in (most, half, rim)))


def assert_alike(found: Stacked, other: Stacked, seed: int) -> None:
    """To a millionth."""
    assert (found.most, found.usual, found.rim) == (other.most, other.usual, other.rim), seed


def test_edges_that_meet_do_not_lie_over_one_another() -> None:
    """Two sheets side by side are one thick; a hair of overlap is two."""
    one, half = Fraction(1), Fraction(1, 2)
    side_by_side = [(rect(0, 0, 15, 40), one), (rect(15, 0, 15, 40), one)]
    assert stack(side_by_side, FACE) == Stacked(one, one, one)
    hair = [(rect(0, 0, 15, 40), one), (rect("14.999", 0, "15.001", 40), half)]
    assert stack(hair, FACE).most == Fraction(3, 2)


def test_a_corner_in_a_corner_is_found() -> None:
    """Three strips that cross in one square of a millimetre; it lies at the rim."""
    strips = [(FACE, Fraction(1)), (rect(0, 0, 30, 1), Fraction(1)), (rect(29, 0, 1, 40), Fraction(1))]
    assert stack(strips, FACE) == Stacked(Fraction(3), Fraction(1), Fraction(3))


RECTS = st.builds(rect, st.integers(-5, 30), st.integers(-5, 40), st.integers(1, 25), st.integers(1, 25))
SHEETS = st.lists(st.tuples(RECTS, st.integers(1, 9).map(lambda tenths: Fraction(tenths, 10))), max_size=8)


def turned(one: Rect) -> Rect:
    """By a right angle: across is down."""
    return Rect(one.y, one.x, one.height, one.width)


@given(SHEETS, st.randoms(use_true_random=False))
def test_neither_order_nor_turning_nor_scale_changes_the_thickest_spot(
    sheets: list[Sheet], chance: random.Random
) -> None:
    """All that counts is what lies where."""
    found = stack([(FACE, Fraction(1)), *sheets], FACE)
    shuffled = [(FACE, Fraction(1)), *sheets]
    chance.shuffle(shuffled)
    assert stack(shuffled, FACE) == found
    assert stack([(turned(one), thick) for one, thick in shuffled], turned(FACE)) == found
    moved = [(one.moved(Fraction(1, 7), Fraction(-3)), thick) for one, thick in shuffled]
    assert stack(moved, FACE.moved(Fraction(1, 7), Fraction(-3))) == found


@given(SHEETS, RECTS)
def test_one_sheet_more_never_makes_it_thinner(sheets: list[Sheet], more: Rect) -> None:
    """At most by its own thickness thicker; as thick as the thickest sheet at least, as all at most."""
    before = stack([(FACE, Fraction(1)), *sheets], FACE)
    after = stack([(FACE, Fraction(1)), *sheets, (more, Fraction(1, 2))], FACE)
    assert before.most <= after.most <= before.most + Fraction(1, 2)
    assert before.usual <= after.usual
    assert before.rim <= after.rim
    assert max([Fraction(1), *(t for _, t in sheets)]) <= before.most <= 1 + sum(t for _, t in sheets)
    assert max(before.usual, before.rim) <= before.most
