"""Room on a drawing: how large its lettering gets, and where something stands already.

A narrow column shrinks a drawing and lets its lettering grow, so that figures keep
11 px on the screen. Room is measured for the largest lettering of the drawing's
width class; then nothing collides at any width in between.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from functools import cache
from math import inf
from typing import Final

from batchleaf.views.drawing.shapes import Box, Cutout, Drawing, Label, Polygon, Ring, Shape, Stroke

FIGURE_PX: Final = 13.0
"""Figures at full size, in px on the screen."""
CHARACTER: Final = 0.58
"""Width of a character in em: no face of the house's list sets figures wider."""
WIDE: Final = frozenset("mwMW")
WIDER: Final = 1.7
"""How many figures wide these letters are in the widest face of the list."""
GROWTH: Final = {"narrow": 1.0, "large": 1.8, "middle": 1.32, "strip": 2.5}
"""The largest growth of lettering in each width class, as in the style sheet; narrow is never shrunk."""
WIDEST_PX: Final = {"narrow": 288.0, "large": 588.0, "middle": 430.0, "strip": 800.0}
"""The widest drawing of each class that still has 11 px figures in a column of 288 px."""
RING: Final = {"narrow": 0.75, "large": 0.7, "middle": 0.75, "strip": 0.75}
"""Radius of a ring in em, at the largest growth."""
IN_A_CIRCLE: Final = 2
"""Characters that a round ring holds; a wider one grows with its text, as in the style sheet."""
RING_CHARACTER: Final = 0.56
RING_ENDS: Final = 0.6
"""Width of a wide ring in em: so much for each character, and for both its ends."""
SIZE_OF_ROLE: Final = {"letter": 1.3, "small": 1.0, "no": 0.96, "key": 1.23, "keys": 1.23}
"""Size in em of what is not a figure; the last role named in a label that is listed counts."""
_CAP_HEIGHT: Final = {"letter": 0.76, "small": 0.76}
"""A capital has no descender and fills less than its em."""
_CAP_WIDTH: Final = 1.3
"""Semibold capitals are wider than figures."""
_STARTS: Final = {"start": 0.0, "end": -1.0}
"""Where a text starts from its point, as a share of its width; all others are centred."""


@dataclass(frozen=True, slots=True)
class Extent:
    """A rectangle in mm that something covers."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Extent) -> bool:
        """True where the two share more than an edge."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def holds(self, other: Extent) -> bool:
        """True where ``other`` lies inside."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.top <= other.top
            and other.bottom <= self.bottom
        )

    @classmethod
    def around(cls, extents: Iterable[Extent]) -> Extent:
        """The smallest rectangle that holds them all."""
        every = list(extents)
        return cls(
            min(e.left for e in every),
            min(e.top for e in every),
            max(e.right for e in every),
            max(e.bottom for e in every),
        )


EVERYWHERE: Final = Extent(-inf, -inf, inf, inf)


@dataclass(frozen=True, slots=True)
class Lettering:
    """``scale`` px to the mm, in the width class ``width_class``."""

    scale: float
    width_class: str

    @property
    def em(self) -> float:
        """A figure's em in mm at its largest growth."""
        return FIGURE_PX * GROWTH[self.width_class] / self.scale

    @property
    def ring(self) -> float:
        """The largest radius of a ring, in mm."""
        return RING[self.width_class] * self.em

    def half_ring(self, characters: int) -> float:
        """Half the largest width of a ring around so many characters, in mm."""
        if characters <= IN_A_CIRCLE:
            return self.ring
        return (RING_CHARACTER * characters + RING_ENDS) * self.em / 2

    def width(self, text: str, size: float = 1.0) -> float:
        """The width of ``text`` in mm, taken generously."""
        characters = sum(WIDER if one in WIDE else 1.0 for one in text)
        return characters * CHARACTER * size * self.em

    def extent(self, shape: Shape) -> Extent:
        """What ``shape`` covers, in mm."""
        match shape:
            case Box():
                return Extent(shape.x, shape.y, shape.x + shape.width, shape.y + shape.height)
            case Polygon():
                return _around_points(shape.corners)
            case Cutout():
                return _around_points(
                    point
                    for path in shape.paths
                    for point in (path.start, *(at for piece in path.pieces for at in piece))
                )
            case Stroke():
                return _around_lines(shape)
            case Ring():
                along, across = self.half_ring(shape.characters), self.ring
                half, high = (along, across) if shape.upright else (across, along)
                return Extent(shape.x - half, shape.y - high, shape.x + half, shape.y + high)
            case Label():
                return self._around_label(shape)

    def _around_label(self, label: Label) -> Extent:
        """A text that is read from below lies a quarter turn back."""
        kind = _kind_of(label.role)
        capital = _CAP_WIDTH if kind.is_letter and len(label.text) == 1 else 1.0
        along = self.width(label.text, kind.size) * capital
        start, end = along * kind.start, along * (1 + kind.start)
        half = kind.height * self.em / 2
        if label.upright:
            return Extent(label.x + start, label.y - half, label.x + end, label.y + half)
        return Extent(label.x - half, label.y - end, label.x + half, label.y - start)


@dataclass(frozen=True, slots=True)
class _Kind:
    """How labels of one role are set, in em; ``start``: where the text starts, as a share of its width."""

    size: float
    height: float
    start: float
    is_letter: bool


@cache
def _kind_of(role: str) -> _Kind:
    roles = role.split()
    listed = [one for one in roles if one in SIZE_OF_ROLE]
    size = SIZE_OF_ROLE[listed[-1]] if listed else 1.0
    height = size * (_CAP_HEIGHT.get(listed[-1], 1.0) if listed else 1.0)
    start = next((_STARTS[one] for one in roles if one in _STARTS), -0.5)
    return _Kind(size, height, start, "letter" in roles)


def _around_points(points: Iterable[tuple[float, float]]) -> Extent:
    xs, ys = zip(*points, strict=True)
    return Extent(min(xs), min(ys), max(xs), max(ys))


def _around_lines(stroke: Stroke) -> Extent:
    xs = [x for x1, _, x2, _ in stroke.lines for x in (x1, x2)]
    ys = [y for _, y1, _, y2 in stroke.lines for y in (y1, y2)]
    return Extent(min(xs), min(ys), max(xs), max(ys))


@dataclass(slots=True)
class Canvas:
    """A drawing in the making: its shapes in the order of painting.

    ``rows`` limits how many rows of figures stand beyond a chain.
    """

    lettering: Lettering
    rows: int = 4
    shapes: list[Shape] = field(default_factory=list)
    _on_top: list[Shape] = field(default_factory=list)
    _covered: list[Extent] = field(default_factory=list)
    _taken: list[Extent] = field(default_factory=list)

    def add(self, *shapes: Shape) -> None:
        """Paint ``shapes`` over what is there."""
        self._paint(self.shapes, shapes, map(self.lettering.extent, shapes))

    def add_on_top(self, *shapes: Shape) -> None:
        """Paint ``shapes`` over what is there and over what is still to come."""
        self._paint(self._on_top, shapes, map(self.lettering.extent, shapes))

    def add_if_free(self, *shapes: Label | Ring, within: Extent = EVERYWHERE) -> bool:
        """Paint ``shapes`` where there is room for all, and none leaves ``within``; tells whether it did."""
        rooms = [self.lettering.extent(shape) for shape in shapes]
        free = all(within.holds(room) and self.leaves_free(room) for room in rooms)
        if free:
            self._paint(self.shapes, shapes, rooms)
        return free

    def _paint(self, where: list[Shape], shapes: Sequence[Shape], rooms: Iterable[Extent]) -> None:
        for shape, room in zip(shapes, rooms, strict=True):
            where.append(shape)
            self._covered.append(room)
            if isinstance(shape, Label | Ring):
                self._taken.append(room)

    def keep_clear(self, stroke: Stroke) -> None:
        """Let nothing that is still to come be written across the lines of ``stroke``."""
        self._taken += [_around_lines(Stroke(stroke.role, (line,))) for line in stroke.lines]

    def leaves_free(self, room: Extent) -> bool:
        """True where no label, ring or line to keep clear reaches into ``room``."""
        return not any(room.meets(taken) for taken in self._taken)

    @property
    def extent(self) -> Extent:
        """All that is painted, with a little air for the thickness of lines."""
        around = Extent.around(self._covered)
        air = 2 / self.lettering.scale
        return Extent(around.left - air, around.top - air, around.right + air, around.bottom + air)

    def drawing(self, id: str, title: str, description: str) -> Drawing:  # noqa: A002  as pages call it
        """What is painted, in its frame and with its words."""
        around = self.extent
        return Drawing(
            id=id,
            title=title,
            description=description,
            x=around.left,
            y=around.top,
            width=around.right - around.left,
            height=around.bottom - around.top,
            scale=self.lettering.scale,
            width_class=self.lettering.width_class,
            shapes=(*self.shapes, *self._on_top),
        )
