"""Pieces with their true outlines on the way to the screen: as paths, and what lies within them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise
from math import sqrt
from typing import Final

from batchleaf.core.geometry.seen import Seen
from batchleaf.measure.outlines import Loop, Outline, points_on, starts_of
from batchleaf.views.drawing.paper import Line
from batchleaf.views.drawing.shapes import Box, Cutout, Path

Point = tuple[float, float]
_STEERING: Final = 4 / 3 * (sqrt(2) - 1)
"""How far towards where its tangents meet the points lie that steer a quarter of an ellipse.

The curve is then off by less than three in ten thousand of its radius, however it is turned or slanted.
"""


_SLIVER: Final = 1e-9
"""Two cuts of one line that are no farther apart, as a share of it, are one but for the last bit."""


def as_drawn(point: Point) -> Point:
    """Where it lies in a front view."""
    return point


def piece_of(seen: Seen, role: str, fill: str) -> Box | Cutout:
    """A thing that is seen from the front, as a rectangle or with its own outline."""
    if seen.outline is None:
        rect = seen.rect
        return Box(role, float(rect.x), float(rect.y), float(rect.width), float(rect.height), fill)
    return cutout(seen.outline, role, fill, as_drawn)


def cutout(outline: Outline, role: str, fill: str, point: Callable[[Point], Point]) -> Cutout:
    """The whole of an outline, its holes with it; ``point`` says where on the drawing a point lies."""
    return Cutout(role, tuple(_path(loop, point) for loop in (outline.edge, *outline.holes)), fill)


def _path(loop: Loop, point: Callable[[Point], Point]) -> Path:
    start = _float(loop[-1].to)
    return Path(point(start), tuple(tuple(map(point, piece)) for _, piece in _pieces(loop)))


def _pieces(loop: Loop) -> Iterator[tuple[Point, tuple[Point, ...]]]:
    """Where each piece of a path begins, and its points."""
    for before, step in starts_of(loop):
        start, end = _float(before), _float(step.to)
        if step.corner is None:
            yield start, (end,)
        else:
            corner = _float(step.corner)
            yield start, (_towards(start, corner), _towards(end, corner), end)


def _towards(one: Point, other: Point) -> Point:
    return one[0] + (other[0] - one[0]) * _STEERING, one[1] + (other[1] - one[1]) * _STEERING


def _float(point: tuple[Fraction, Fraction]) -> Point:
    return float(point[0]), float(point[1])


def edges_of(outline: Outline, role: str, left_out: Sequence[Line]) -> Iterator[Cutout]:
    """The line of an outline without those straight pieces that are folds."""
    paths: list[Path] = []
    for start, piece in _pieces(outline.edge):
        line = (*start, *piece[-1])
        if len(piece) == 1 and (line in left_out or (*piece[-1], *start) in left_out):
            continue
        if paths and _end(paths[-1]) == start:
            paths[-1] = Path(paths[-1].start, (*paths[-1].pieces, piece), closed=False)
        else:
            paths.append(Path(start, (piece,), closed=False))
    if len(paths) == 1 and _end(paths[0]) == paths[0].start:
        paths = [Path(paths[0].start, paths[0].pieces)]
    yield Cutout(role, tuple(paths))


def _end(path: Path) -> Point:
    return path.pieces[-1][-1]


@lru_cache(maxsize=256)
def polygons_of(outline: Outline) -> tuple[tuple[Point, ...], ...]:
    """Its edge and its holes with straight lines between points of their curves."""
    # Remembered: a drawing is laid out at one scale after the other until it fits.
    return tuple(tuple(_float(at) for at in points_on(loop)) for loop in (outline.edge, *outline.holes))


def lines_within(lines: Iterable[Line], outline: Outline | None) -> Iterator[Line]:
    """What of each line lies on the paper; all of it, where that is a rectangle."""
    if outline is None:
        yield from lines
        return
    edges = [edge for one in polygons_of(outline) for edge in pairwise((one[-1], *one))]
    for line in lines:
        yield from _within(line, edges)


def _within(line: Line, edges: Sequence[tuple[Point, Point]]) -> Iterator[Line]:
    x1, y1, x2, y2 = line
    cuts = sorted({0.0, 1.0, *(at for one, other in edges if (at := _cut_at(line, one, other)) is not None)})
    for start, end in pairwise(cuts):
        if end - start < _SLIVER:
            continue
        middle = (start + end) / 2
        if is_on(x1 + (x2 - x1) * middle, y1 + (y2 - y1) * middle, edges):
            yield (
                x1 + (x2 - x1) * start, y1 + (y2 - y1) * start,
                x1 + (x2 - x1) * end, y1 + (y2 - y1) * end,
            )  # fmt: skip


def _cut_at(line: Line, one: Point, other: Point) -> float | None:
    """The share of a line at which it is crossed by another."""
    x1, y1, x2, y2 = line
    along, across = (x2 - x1, y2 - y1), (other[0] - one[0], other[1] - one[1])
    slant = along[0] * across[1] - along[1] * across[0]
    if not slant:
        return None
    away = one[0] - x1, one[1] - y1
    here = (away[0] * across[1] - away[1] * across[0]) / slant
    there = (away[0] * along[1] - away[1] * along[0]) / slant
    return here if 0 < here < 1 and 0 <= there <= 1 else None


def is_on(x: float, y: float, edges: Iterable[tuple[Point, Point]]) -> bool:
    """Whether a point lies on the paper within these edges."""
    crossed = sum(
        1
        for (x1, y1), (x2, y2) in edges
        if (y1 > y) != (y2 > y) and x < x1 + (x2 - x1) * (y - y1) / (y2 - y1)
    )
    return crossed % 2 == 1


def farthest(outline: Outline, right: int, lower: int) -> Point:
    """The point of the edge that lies farthest that way: of a circle at 45°."""
    return max(polygons_of(outline)[0], key=lambda at: at[0] * right + at[1] * lower)


def reach_at(outline: Outline, y: float) -> tuple[float, float] | None:
    """From where to where it reaches at a height, or nothing where it does not."""
    corners = polygons_of(outline)[0]
    xs = [
        x1 + (x2 - x1) * (y - y1) / (y2 - y1)
        for (x1, y1), (x2, y2) in pairwise((corners[-1], *corners))
        if (y1 > y) != (y2 > y)
    ]
    return (min(xs), max(xs)) if xs else None
