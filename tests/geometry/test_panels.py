"""The faces of a base, and a box folded up again from its flat blank."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.panels import Panel, panels_of
from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import Face
from batchleaf.measure.rects import Rect
from core.drawers import size
from geometry.makes import base, box

Point = tuple[Fraction, Fraction, Fraction]
FOLDED = st.sampled_from([Fold.NONE, Fold.SIDE, Fold.TOP, Fold.TENT, Fold.GATE, Fold.ACCORDION])


def named(part: Part) -> dict[str, Panel]:
    """The faces of a base by name."""
    return {panel.name: panel for panel in panels_of(part)}


@pytest.mark.parametrize(
    ("part", "sizes"),
    [
        (base(50, 180), {"front": (50, 180), "back": (50, 180)}),
        (
            base(210, 148, Fold.SIDE),
            dict.fromkeys(["front", "back", "inside left", "inside right"], (105, 148)),
        ),
        (
            base(90, 100, Fold.TENT),
            dict.fromkeys(["front", "back", "inside top", "inside bottom"], (90, 50)),
        ),
        (
            base(200, 140, Fold.GATE),
            dict.fromkeys(["left door", "right door", "inside left door", "inside right door"], (50, 140))
            | dict.fromkeys(["back", "inside"], (100, 140)),
        ),
        (
            base(400, 120, Fold.ACCORDION, panels=4),
            {f"{side}panel {n}": (100, 120) for side in ("", "back of ") for n in (1, 2, 3, 4)},
        ),
    ],
)
def test_the_faces_of_a_base(part: Part, sizes: dict[str, tuple[int, int]]) -> None:
    """All that there is, under the trade's names."""
    assert {name: panel.size for name, panel in named(part).items()} == {
        name: size(*measures) for name, measures in sizes.items()
    }


@given(FOLDED, st.integers(20, 400), st.integers(20, 400), st.integers(2, 12))
def test_the_faces_of_each_side_are_the_blank(fold: Fold, width: int, height: int, panels: int) -> None:
    """On either side they cover it once: no gap, no overlap; behind each face lies one as large."""
    part = base(width, height, fold, panels=panels)
    for outer in (True, False):
        side = [panel.blank for panel in panels_of(part) if panel.outer is outer]
        assert sum(rect.area for rect in side) == part.size.area
        assert not any(a.common(b) for i, a in enumerate(side) for b in side[:i])
    outside = sorted(panel.blank.area for panel in panels_of(part) if panel.outer)
    assert outside == sorted(panel.blank.area for panel in panels_of(part) if not panel.outer)


def test_what_lies_behind_what() -> None:
    """Seen from outside a gate's left door lies at the right: it swings over to the left."""
    gate, card = named(base(200, 140, Fold.GATE)), named(base(210, 148, Fold.SIDE))
    doors = ("left door", "inside left door", "right door", "inside right door")
    assert [int(gate[door].blank.x) for door in doors] == [150, 0, 0, 150]
    # A card with its fold at the left: the inside of its front is the left-hand page.
    assert [int(card[page].blank.x) for page in ("front", "inside left")] == [105, 0]


# --- a box, folded up again --------------------------------------------------------


def folded_up(rect: Rect, face: Face, floor: Rect) -> list[Point]:
    """The corners of a panel once the walls of the blank stand: each turned up by its score at the floor."""
    corners = [(x, y) for x in (rect.x, rect.right) for y in (rect.y, rect.bottom)]
    zero = Fraction(0)
    match face:
        case Face.FRONT_WALL:
            return [(x, floor.bottom, y - floor.bottom) for x, y in corners]
        case Face.BACK_WALL:
            return [(x, floor.y, floor.y - y) for x, y in corners]
        case Face.LEFT_WALL:
            return [(floor.x, y, floor.x - x) for x, y in corners]
        case Face.RIGHT_WALL:
            return [(floor.right, y, x - floor.right) for x, y in corners]
    return [(x, y, zero) for x, y in corners]


@pytest.mark.parametrize(("width", "depth", "height"), [(60, 60, 30), (100, 70, 15), (61, 63, 20)])
def test_a_box_folds_up_from_its_blank(width: int, depth: int, height: int) -> None:
    """Scored at its height from each edge, the walls meet along every upright edge and are equally high."""
    part = box(width, depth, height)
    assert {score.at for score in part.scores} == {
        Fraction(height),
        Fraction(width + height),
        Fraction(depth + height),
    }
    faces = named(part)
    floor = faces["inside"].blank
    assert floor.size == size(width, depth)
    walls = {
        face: set(folded_up(panel.blank, face, floor))
        for panel in faces.values()
        if (face := panel.face) not in (Face.INSIDE, Face.FRONT)
    }
    uprights = {
        (x, y, z)
        for x in (floor.x, floor.right)
        for y in (floor.y, floor.bottom)
        for z in (0, Fraction(height))
    }
    assert set.union(*walls.values()) == uprights
    for corner in uprights:
        assert sum(corner in wall for wall in walls.values()) == 2


def test_a_lid_goes_over_its_box() -> None:
    """Both from their blanks: the lid is longer and wider by its room, and as deep as it is scored."""
    bottom, lid = named(box(60, 60, 30)), named(box(62, 62, 15, "L"))
    assert lid["front"].size.width - bottom["inside"].size.width == 2
    assert [int(walls["front wall"].size.height) for walls in (lid, bottom)] == [15, 30]
