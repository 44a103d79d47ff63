"""The largest rectangle that nothing covers, against trying every one."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.lying import put_together
from batchleaf.core.geometry.room import has_room_for, largest_empty, room_to_stamp, room_to_write
from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import START, Spot
from batchleaf.measure.rects import Rect
from core.drawers import size
from geometry.makes import base, box, layer, make


def rect(x: int, y: int, width: int, height: int) -> Rect:
    """A rectangle in whole mm."""
    return Rect(Fraction(x), Fraction(y), Fraction(width), Fraction(height))


GRID = 7
RECTS = st.builds(rect, *[st.integers(-2, GRID)] * 2, *[st.integers(1, GRID)] * 2)


@given(st.integers(1, GRID), st.integers(1, GRID), st.lists(RECTS, max_size=6))
def test_no_rectangle_on_the_grid_is_larger(width: int, height: int, covered: list[Rect]) -> None:
    """Every rectangle with whole sides is tried: what is found is free, lies inside, and is the largest."""
    area = rect(0, 0, width, height)
    every = (
        rect(left, top, right - left, bottom - top)
        for left, right in combinations(range(width + 1), 2)
        for top, bottom in combinations(range(height + 1), 2)
    )
    free = [one for one in every if not any(one.common(block) for block in covered)]
    found = largest_empty(area, covered)
    if found is None:
        assert not free
    else:
        assert found in free
        assert found.area == max(one.area for one in free)


@given(st.lists(RECTS, max_size=6))
def test_the_order_of_what_covers_it_changes_nothing(covered: list[Rect]) -> None:
    """The answer is one of many equals, and always the same one, also where something is told twice."""
    area = rect(0, 0, GRID, GRID)
    assert largest_empty(area, covered) == largest_empty(area, covered[::-1] * 2)


@pytest.mark.parametrize(
    ("parts", "panel", "room"),
    [
        # 210 x 148 folds to 105 x 148: nothing inside, so all of the right-hand page.
        ((base(210, 148, Fold.SIDE),), "inside right", rect(0, 0, 105, 148)),
        # 90 x 130 in the middle of the right page leaves strips; the left page is free.
        (
            (base(210, 148, Fold.SIDE), layer("B", 90, 130, "inside right")),
            "inside left",
            rect(0, 0, 105, 148),
        ),
        # A band of 105 x 40 at the top of the right, and one of 105 x 60 at the top of the left page.
        (
            (
                base(210, 148, Fold.SIDE),
                layer("B", 105, 40, "inside right, top"),
                layer("C", 105, 60, "inside left, top"),
            ),
            "inside right",
            rect(0, 40, 105, 108),
        ),
        # The middle of a gate fold is 100 wide; a label of 60 x 20 lies 10 from the top.
        (
            (base(200, 140, Fold.GATE), layer("B", 60, 20, "inside, top, down 10")),
            "inside",
            rect(0, 30, 100, 110),
        ),
        # A bookmark has no inside: its back.
        ((base(50, 180), layer("B", 44, 70)), "back", rect(0, 0, 50, 180)),
    ],
)
def test_room_to_write(parts: tuple[Part, ...], panel: str, room: Rect) -> None:
    """Worked out by hand."""
    made = put_together(make(*parts))
    assert made is not None
    found = room_to_write(made, "A")
    assert found is not None
    assert (found.panel.name, found.rect) == (panel, room)


def test_nobody_writes_in_a_box() -> None:
    """Its inside holds something else."""
    made = put_together(make(box(60, 60, 30)))
    assert made is not None
    assert room_to_write(made, "A") is None


def test_room_to_stamp() -> None:
    """A mat of 90 x 130 under a strip of 90 x 30 across its middle, 50 from the top: 50 above, 50 below."""
    made = put_together(
        make(
            base(210, 148, Fold.SIDE),
            layer("B", 90, 130),
            layer("C", 90, 30, "front"),
            layer("D", 20, 10, "top left, right 5, down 5", on="B"),
        )
    )
    assert made is not None
    mat, strip, _ = made.lying
    found = room_to_stamp(made, mat)
    assert found is not None
    # Below the strip nothing lies; above it a label does. The mat begins at 7 1/2, 9.
    assert found.rect == Rect(Fraction(15, 2), Fraction(89), Fraction(90), Fraction(50))
    assert [int(margin) for margin in found.margins] == [0, 80, 0, 0]
    of_the_strip = room_to_stamp(made, strip)
    assert of_the_strip is not None
    assert of_the_strip.rect == strip.rect


def test_what_is_hidden_wholly_has_no_room() -> None:
    """A part as large as the one it lies on."""
    made = put_together(make(base(100, 100), layer("B", 80, 80), layer("C", 80, 80, on="B")))
    assert made is not None
    assert room_to_stamp(made, made.lying[0]) is None


def test_what_is_tucked_behind_covers_nothing_above_it() -> None:
    """A tag behind a panel: the panel keeps all its room, the tag what sticks out at the top."""
    made = put_together(
        make(base(100, 100), layer("B", 60, 40, "bottom"), layer("C", 20, 60, "bottom, behind B"))
    )
    assert made is not None
    panel, tag = made.lying
    above, below = room_to_stamp(made, panel), room_to_stamp(made, tag)
    assert above is not None
    assert below is not None
    assert (above.rect, below.rect) == (panel.rect, rect(40, 40, 20, 20))


@given(st.lists(st.builds(rect, *[st.integers(0, 9)] * 2, *[st.integers(1, 6)] * 2), max_size=5))
def test_an_image_has_room_where_some_place_on_the_grid_has(covered: list[Rect]) -> None:
    """Every place of a part of 12 x 10 is tried, both ways round."""
    parts = [
        replace(
            layer(letter, int(one.width), int(one.height), on="B"), spots=(Spot(START, START, one.x, one.y),)
        )
        for letter, one in zip("CDEFG", covered, strict=False)
    ]
    made = put_together(make(base(40, 40), layer("B", 12, 10, "top left"), *parts))
    assert made is not None
    for image in (size(3, 5), size(8, 2), size(6, 6)):
        found = any(
            not any(rect(x, y, int(way.width), int(way.height)).common(one) for one in covered)
            for way in (image, image.turned)
            for x in range(12 - int(way.width) + 1)
            for y in range(10 - int(way.height) + 1)
        )
        assert has_room_for(image, made, made.lying[0]) is found
