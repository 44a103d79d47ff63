"""The shape that a part is cut or punched to, out of its rectangle, in the trade's words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.measure.lengths import Size
from batchleaf.measure.outlines import Loop, Outline, Point, Step, ellipse
from batchleaf.measure.rects import Rect


class Corner(StrEnum):
    """A corner of a part as it is seen from its front."""

    TOP_LEFT = "top left"
    TOP_RIGHT = "top right"
    BOTTOM_RIGHT = "bottom right"
    BOTTOM_LEFT = "bottom left"


class Edge(StrEnum):
    """An edge of a part as it is seen from its front."""

    TOP = "top"
    RIGHT = "right"
    BOTTOM = "bottom"
    LEFT = "left"

    @property
    def is_level(self) -> bool:
        """True for the two that run from left to right."""
        return self in (Edge.TOP, Edge.BOTTOM)

    @property
    def ends(self) -> tuple[Corner, Corner]:
        """Its two corners, clockwise."""
        return _ENDS[self]


_ENDS: Final = {
    Edge.TOP: (Corner.TOP_LEFT, Corner.TOP_RIGHT),
    Edge.RIGHT: (Corner.TOP_RIGHT, Corner.BOTTOM_RIGHT),
    Edge.BOTTOM: (Corner.BOTTOM_RIGHT, Corner.BOTTOM_LEFT),
    Edge.LEFT: (Corner.BOTTOM_LEFT, Corner.TOP_LEFT),
}


class Whole(StrEnum):
    """What fills the size of a part."""

    CIRCLE = "circle"
    OVAL = "oval"


class CornerKind(StrEnum):
    """What is done to a corner."""

    ROUNDED = "rounded"
    """With this radius."""
    CLIPPED = "clipped"
    """Cut off at 45°, so far from the corner on both edges."""


class EdgeKind(StrEnum):
    """What is done to an edge; the size of the part is measured to what stands out farthest."""

    POINTED = "pointed"
    """The middle stands out by so much, as of a pennant."""
    NOTCHED = "notched"
    """The middle is cut in by so much, as of a swallowtail."""
    SCALLOPED = "scalloped"
    """Half circles of this width stand out side by side: as many as fit, stretched evenly."""


HOLE: Final = "hole"
WORDS: Final = (*Whole, *CornerKind, *EdgeKind, HOLE)
"""The words that a shape begins with."""


@dataclass(frozen=True, slots=True)
class CornerCut:
    """Corners that are rounded, or clipped, by ``by`` mm."""

    kind: CornerKind
    by: Fraction
    corners: tuple[Corner, ...]


@dataclass(frozen=True, slots=True)
class EdgeCut:
    """Edges that are cut; ``by``: how deep a point or notch is, or how wide a scallop, in mm."""

    kind: EdgeKind
    by: Fraction
    edges: tuple[Edge, ...]


@dataclass(frozen=True, slots=True)
class Hole:
    """A punched hole; its place is that of a part of that size, see :class:`~batchleaf.facts.spots.Spot`."""

    diameter: Fraction
    across: Fraction
    down: Fraction
    right: Fraction = Fraction(0)
    lower: Fraction = Fraction(0)

    def on(self, size: Size) -> Rect:
        """The square around it, on a part of this size."""
        x = (size.width - self.diameter) * self.across + self.right
        y = (size.height - self.diameter) * self.down + self.lower
        return Rect(x, y, self.diameter, self.diameter)


@dataclass(frozen=True, slots=True)
class Shape:
    """What is cut from the rectangle of a part; nothing: it stays one."""

    whole: Whole | None = None
    corners: tuple[CornerCut, ...] = ()
    edges: tuple[EdgeCut, ...] = ()
    holes: tuple[Hole, ...] = ()

    @property
    def is_rectangle(self) -> bool:
        """Whether nothing is cut off, and no hole is in it."""
        return self == RECTANGLE

    def outline(self, size: Size) -> Outline:
        """On a part of this size, that it fits on."""
        whole = Rect(Fraction(0), Fraction(0), size.width, size.height)
        return Outline(ellipse(whole) if self.whole else _edge_of(self, size), self._punched(size))

    def without_scallops(self, size: Size) -> Outline:
        """What is left of it where each row of scallops is cut off along a straight line."""
        kept = tuple(cut for cut in self.edges if cut.kind is not EdgeKind.SCALLOPED)
        left, top, right, bottom = (
            self.inset(edge) if self._is_scalloped(edge) else Fraction(0)
            for edge in (Edge.LEFT, Edge.TOP, Edge.RIGHT, Edge.BOTTOM)
        )
        inner = Size(size.width - left - right, size.height - top - bottom)
        edge = replace(self, edges=kept, holes=()).outline(inner).moved(left, top).edge
        return Outline(edge, self._punched(size))

    def _punched(self, size: Size) -> tuple[Loop, ...]:
        return tuple(ellipse(hole.on(size)) for hole in self.holes)

    def _is_scalloped(self, edge: Edge) -> bool:
        cut = self.along(edge)
        return cut is not None and cut.kind is EdgeKind.SCALLOPED

    def at_corner(self, corner: Corner) -> CornerCut | None:
        """What is done to a corner."""
        return next((cut for cut in self.corners if corner in cut.corners), None)

    def along(self, edge: Edge) -> EdgeCut | None:
        """What is done to an edge."""
        return next((cut for cut in self.edges if edge in cut.edges), None)

    def scallops(self, edge: Edge, size: Size) -> int:
        """How many half circles stand side by side along an edge: those that fit; 0 where none does."""
        cut = self.along(edge)
        if cut is None or not self._is_scalloped(edge):
            return 0
        beside = sum(self.inset(other) for other in Edge if other.is_level is not edge.is_level)
        return max(int((_length(edge, size) - beside) // cut.by), 0)

    def inset(self, edge: Edge) -> Fraction:
        """How far the corners of an edge lie inside the size, since its middle or its scallops stand out."""
        cut = self.along(edge)
        if cut is None or cut.kind is EdgeKind.NOTCHED:
            return Fraction(0)
        return cut.by if cut.kind is EdgeKind.POINTED else cut.by / 2


RECTANGLE: Final = Shape()


def _length(edge: Edge, size: Size) -> Fraction:
    return size.width if edge.is_level else size.height


def _edge_of(shape: Shape, size: Size) -> Loop:
    """Clockwise from the top left corner; steps that go nowhere are left out."""
    left, top = shape.inset(Edge.LEFT), shape.inset(Edge.TOP)
    right = size.width - shape.inset(Edge.RIGHT)
    bottom = size.height - shape.inset(Edge.BOTTOM)
    at = {
        Corner.TOP_LEFT: (left, top),
        Corner.TOP_RIGHT: (right, top),
        Corner.BOTTOM_RIGHT: (right, bottom),
        Corner.BOTTOM_LEFT: (left, bottom),
    }
    steps: list[Step] = []
    for edge in Edge:
        first, last = edge.ends
        start, end = at[first], at[last]
        way = _way(start, end)
        steps += _turn(shape, first, start, way)
        steps += _along(shape, edge, size, _moved(start, way, _cut_off(shape, first)), end)
        steps.append(Step(_moved(end, way, -_cut_off(shape, last))))
    return _that_lead_on(steps)


def _that_lead_on(steps: list[Step]) -> Loop:
    before = steps[-1].to
    kept = []
    for step in steps:
        if step.to != before:
            kept.append(step)
        before = step.to
    return tuple(kept)


def _cut_off(shape: Shape, corner: Corner) -> Fraction:
    cut = shape.at_corner(corner)
    return cut.by if cut else Fraction(0)


def _turn(shape: Shape, corner: Corner, at: Point, way: tuple[int, int]) -> Iterator[Step]:
    """Round a corner, or across it, to where the edge after it begins."""
    cut = shape.at_corner(corner)
    if cut is not None:
        yield Step(_moved(at, way, cut.by), at if cut.kind is CornerKind.ROUNDED else None)


def _along(shape: Shape, edge: Edge, size: Size, start: Point, end: Point) -> Iterator[Step]:
    """What stands out of an edge, or is cut into it, from its beginning to its end."""
    cut = shape.along(edge)
    if cut is None:
        return
    way = _way(start, end)
    out = (way[1], -way[0])
    if cut.kind is EdgeKind.SCALLOPED:
        yield from _scallops(
            start, end, _moved((Fraction(0), Fraction(0)), out, cut.by / 2), shape.scallops(edge, size)
        )
        return
    yield Step(
        _moved(_between(start, end, Fraction(1, 2)), out, cut.by if cut.kind is EdgeKind.POINTED else -cut.by)
    )


def _scallops(start: Point, end: Point, out: Point, count: int) -> Iterator[Step]:
    """``out``: from the edge to where they are deepest."""
    for number in range(count):
        before, middle, after = (_between(start, end, Fraction(2 * number + n, 2 * count)) for n in range(3))
        yield Step(_plus(middle, out), _plus(before, out))
        yield Step(after, _plus(after, out))


def _between(start: Point, end: Point, share: Fraction) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def _plus(at: Point, way: Point) -> Point:
    return at[0] + way[0], at[1] + way[1]


def _way(start: Point, end: Point) -> tuple[int, int]:
    """One mm from start towards end, along one axis."""
    return _sign(end[0] - start[0]), _sign(end[1] - start[1])


def _sign(length: Fraction) -> int:
    return (length > 0) - (length < 0)


def _moved(at: Point, way: tuple[int, int], by: Fraction) -> Point:
    return at[0] + way[0] * by, at[1] + way[1] * by
