"""Sleeves, slipcases and covers, folded up again from their blanks round what they are for."""

from __future__ import annotations

from fractions import Fraction
from itertools import accumulate, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.geometry.aspects import AspectKind
from batchleaf.core.geometry.aspects_of_folds import aspects_of
from batchleaf.core.geometry.folded import fold_up
from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.panels import panels_of
from batchleaf.facts import Part
from batchleaf.facts.spots import Face
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.records.bases import BaseLine, read_base
from batchleaf.records.explaining.bases import spelt_base
from core.drawers import size
from geometry.makes import layer, make

MM = st.integers(1, 400)
ROOM = st.integers(1, 9)
ZERO = Fraction(0)
QUARTER_TURNS = ((1, 0), (0, 1), (-1, 0), (0, -1))


def read(text: str) -> BaseLine:
    """A base in mm."""
    return read_base(text, Unit.MM)


def part_of(line: BaseLine) -> Part:
    """The base as a part."""
    return Part("A", "base", line.size, 1, ("card",), turns=True, fold=line.fold, scores=line.scores)


def made(line: BaseLine, *parts: Part) -> MadeUp:
    """One make of it."""
    found = put_together(make(part_of(line), *parts))
    assert found is not None
    return found


def columns(line: BaseLine) -> list[Fraction]:
    """How wide what lies between its upright scores is, from the left."""
    down = sorted(score.at for score in line.scores if score.runs_down)
    return [b - a for a, b in pairwise([Fraction(0), *down, line.size.width])]


def rows(line: BaseLine) -> list[Fraction]:
    """How high what lies between its level scores is, from the top."""
    across = sorted(score.at for score in line.scores if not score.runs_down)
    return [b - a for a, b in pairwise([Fraction(0), *across, line.size.height])]


def faces(line: BaseLine) -> dict[Face, Rect]:
    """Where its outer faces lie on the blank."""
    return {panel.face: panel.blank for panel in panels_of(part_of(line)) if panel.outer}


# --- folded up again ---------------------------------------------------------------


@given(MM, MM, MM, ROOM, MM)
def test_a_sleeve_closes_round_it(width: int, height: int, depth: int, room: int, flap: int) -> None:
    """A quarter turn at each score leads back to where it began; the flap then lies on the front."""
    line = read(f"sleeve for {width} x {height} x {depth}, room {room}, flap {flap}")
    *walls, last = columns(line)
    x = y = ZERO
    corners = []
    for (right, up), wall in zip(QUARTER_TURNS, walls, strict=True):
        x, y = x + right * wall, y + up * wall
        corners.append((x, y))
    wide, deep = Fraction(width + room), Fraction(depth + room)
    assert corners == [(wide, ZERO), (wide, deep), (ZERO, deep), (ZERO, ZERO)]
    assert [last, line.size.height, *rows(line)] == [flap, height, height]
    assert line.finished_size == size(width + room, height)
    assert line.height == deep


@given(MM, MM, ROOM)
def test_a_sleeve_without_depth_lies_flat(width: int, height: int, room: int) -> None:
    """Front, back and flap: the back ends where the front began."""
    line = read(f"sleeve for {width} x {height}, room {room}")
    front, back, flap = columns(line)
    assert [front, back, flap] == [width + room, width + room, 12]
    assert line.height is None
    folded = fold_up(made(line), part_of(line))
    assert [one.rect.x for one in folded.layers] == [0, 0, 0] if flap <= back else [0, 0, back - flap]
    assert [one.rect.width for one in folded.layers] == [front, back, flap]


@given(MM, MM, MM, ROOM)
def test_the_flaps_of_a_slipcase_meet(width: int, height: int, depth: int, room: int) -> None:
    """With the spine turned up and the front over the back, flaps of both lie on one another.

    Places of corners are (across, up). The back lies on the table, and the case opens at 0.
    """
    line = read(f"slipcase for {width} x {height} x {depth}, room {room}")
    back, spine, front = columns(line)
    upper, inside, lower = rows(line)
    assert [inside, spine] == [height + room, depth + room]
    assert back == front == width
    # Turned up along the level scores of the back: they reach as high as the spine.
    of_the_back = {(x, stands) for x in (ZERO, back) for stands in (ZERO, upper)}
    # The front lies as high as the spine, and its flaps hang down.
    of_the_front = {(x, spine - hangs) for x in (back - front, back) for hangs in (ZERO, upper)}
    assert of_the_back == of_the_front
    assert upper == lower
    lying = faces(line)
    assert lying[Face.FRONT] == Rect(back + spine, upper, front, inside)
    assert lying[Face.BACK] == Rect(Fraction(0), upper, back, inside)
    assert lying[Face.SPINE] == Rect(back, upper, spine, inside)


@given(MM, MM, st.integers(0, 40), ROOM, st.integers(1, 30))
def test_a_cover_stands_out_and_is_turned_in(
    width: int, height: int, depth: int, room: int, edge: int
) -> None:
    """Edge, back, spine, front, edge; a spine only where there is depth."""
    thick = f" x {depth}" if depth else ""
    line = read(f"cover for {width} x {height}{thick}, room {room}, turn-in {edge}")
    wide = width + room
    assert columns(line) == [edge, wide, *([depth] if depth else []), wide, edge]
    assert rows(line) == [edge, height + 2 * room, edge]
    assert line.finished_size == size(wide, height + 2 * room)
    assert (line.height or 0) == depth
    assert list(accumulate(columns(line)))[-1] == line.size.width


def test_a_cover_is_twice_its_face_and_what_is_turned_in() -> None:
    """100 x 140 closed, 15 turned in: two faces, of both three edges; what is on its back lies mirrored."""
    line = read("cover for 97 x 134, turn-in 15")
    one = made(line, layer("B", 30, 20, "back, top left, right 5, down 5"))
    folded = fold_up(one, part_of(line))
    assert folded.face == Rect(*map(Fraction, (0, 0, 100, 140)))
    card = [layer.rect for layer in folded.layers if layer.part.letter == "A"]
    assert sum(rect.area for rect in card) == 2 * (100 * 140 + 2 * 100 * 15 + 15 * 140)
    (label,) = (layer.rect for layer in folded.layers if layer.part.letter == "B")
    assert label == Rect(*map(Fraction, (65, 5, 30, 20)))


# --- what is seen, and what is said ------------------------------------------------


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("sleeve for 60 x 90 x 8", ["front", "back", "wall", "wall"]),
        ("sleeve for 60 x 90", ["front", "back"]),
        ("slipcase for 60 x 90 x 8", ["front", "back", "wall"]),
        ("cover for 60 x 90 x 8", ["front", "inside", "back", "wall"]),
    ],
)
def test_what_can_be_looked_at(text: str, shown: list[str]) -> None:
    """Every face once, a cover opened as well."""
    one = made(read(text))
    assert [aspect.kind.value for aspect in aspects_of(one)] == shown
    looked_at = [leaf.panel.key for aspect in aspects_of(one) for leaf in aspect.nearest.leaves]
    assert sorted(looked_at) == sorted(panel.key for panel in one.panels if panel.face is not Face.ROUND)


def test_a_cover_open() -> None:
    """The inside of its front is the left-hand page; the spine lies between."""
    one = made(read("cover for 97 x 134 x 10"), layer("B", 20, 20, "inside right, left"))
    opened = next(aspect for aspect in aspects_of(one) if aspect.kind is AspectKind.INSIDE)
    assert opened.size == Size(Fraction(210), Fraction(140))
    assert [int(leaf.x) for leaf in opened.nearest.leaves] == [0, 110]


@pytest.mark.parametrize(
    "text",
    ["sleeve for 60 x 90", "sleeve for 60.5 x 90 x 8, flap 9", "gift slipcase for 60 x 90 x 8, room 2",
     "cover for 60 x 90 x 8, room 2, turn-in 12"],
)  # fmt: skip
def test_it_can_be_written_out(text: str) -> None:
    """What is left out is written beside it, and reads back as the same."""
    long = spelt_base(read(text), Unit.MM)
    assert read(long) == read(text)
    assert "room" in long


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("slipcase for 60 x 90",
         ("“60 x 90” does not say what goes in; write three measures, its width, its height and how thick it"
          " is, like slipcase for 60 x 90 x 8")),
        ("sleeve for 60 x 90 x 8 x 2",
         ("“60 x 90 x 8 x 2” does not say what goes in; write two or three measures, its width, its height"
          " and how thick it is, like sleeve for 60 x 90 x 8")),
        ("slipcase for 60 x 90 x 8, flap 9", "“flap 9” is not for a slipcase; write room 2"),
        ("sleeve for 60 x 90, side fold", "“side fold” is not for a sleeve; write room 2 or flap 2"),
        ("cover for 60 x 90, room 1, room 2", "“room 2” says room a second time; leave one out"),
    ],
)  # fmt: skip
def test_what_it_does_not_say(text: str, sentence: str) -> None:
    """A sentence with what to write."""
    with pytest.raises(MeasureError) as told:
        read(text)
    assert str(told.value) == sentence
