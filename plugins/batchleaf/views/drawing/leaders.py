"""The letters of parts beside what is drawn, each with a thin line to its part.

A letter stands on the side that its part is nearer to, and its line ends on the part's
edge, at a height where nothing lies over it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.core.geometry.seen import Seen
from batchleaf.measure.lengths import Size
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.cutouts import reach_at
from batchleaf.views.drawing.shapes import Label, Stroke
from batchleaf.views.drawing.sides import Side
from batchleaf.views.drawing.spread import spread

_TRIES: Final = tuple(Fraction(n, 16) for n in (8, 6, 10, 4, 12, 3, 13, 2, 14, 1, 15))
"""Shares of a part's height at which a line may end, the best first."""
_INSET: Final = Fraction(1, 5)
"""A line ends so far inside its part, in mm, where nothing must lie over it."""
_LEVEL: Final = 0.5
"""How far beside the figure a line stays level, in em."""
_OUT: Final = 1.3
"""How far out it ends, in em."""
_TEXT: Final = 1.5
"""How far out its letter begins, in em."""
_PITCH: Final = 1.3
"""Distance of letters, in em."""


@dataclass(frozen=True, slots=True)
class _Called:
    """A part by its letter, from a point of its edge; ``reach``: how far that lies inside the figure."""

    letter: str
    side: Side
    x: float
    y: float
    reach: Fraction


def draw_leaders(canvas: Canvas, seen: Sequence[Seen], size: Size, sides: Sequence[Side]) -> None:
    """One letter for each part of which something is seen; the shortest edges choose first."""
    free: dict[str, list[_Called]] = {}
    for way in _ways(seen, size, sides):
        free.setdefault(way.letter, []).append(way)
    found: list[_Called] = []
    for ways in sorted(free.values(), key=_freedom):
        nearest = min(way.reach for way in ways)
        near = [way for way in ways if way.reach == nearest]
        apart = (way for way in near if not any(_close(way, one, canvas) for one in found))
        found.append(next(apart, near[0]))
    for side in sides:
        beside = sorted((one for one in found if one.side is side), key=lambda one: (one.y, one.reach))
        _draw_side(canvas, beside, size, side)


def _freedom(ways: Sequence[_Called]) -> float:
    return max(way.y for way in ways) - min(way.y for way in ways)


def _close(one: _Called, other: _Called, canvas: Canvas) -> bool:
    return one.side is other.side and abs(one.y - other.y) < _PITCH * canvas.lettering.em


def _ways(seen: Sequence[Seen], size: Size, sides: Sequence[Side]) -> Iterator[_Called]:
    """Every point of an edge that a line may end on, the best of each copy first."""
    for number, one in enumerate(seen):
        if one.index is None:
            continue
        over = [other.rect for other in seen[number + 1 :] if other.index is not None]
        for side in sides:
            for y in (one.rect.y + one.rect.height * share for share in _TRIES):
                x = _edge_at(one, y, side)
                inside = x - _INSET if side is Side.RIGHT else x + _INSET
                reach = size.width - x if side is Side.RIGHT else x
                if not any(r.x < inside < r.right and r.y < y < r.bottom for r in over):
                    yield _Called(one.part.letter, side, float(x), float(y), reach)


def _edge_at(one: Seen, y: Fraction, side: Side) -> Fraction:
    """Where the paper ends on one side at a height."""
    ends = None if one.outline is None else reach_at(one.outline, float(y))
    if ends is None:
        return one.rect.right if side is Side.RIGHT else one.rect.x
    return Fraction(ends[1] if side is Side.RIGHT else ends[0])


def _draw_side(canvas: Canvas, called: Sequence[_Called], size: Size, side: Side) -> None:
    if not called:
        return
    em, height = canvas.lettering.em, float(size.height)
    steps = [_PITCH * em for _ in pairwise(called)]
    places = spread([one.y for one in called], steps, 0.5 * em, height - 0.5 * em)
    edge, sign = (float(size.width), 1) if side is Side.RIGHT else (0.0, -1)
    role = "letter small start" if side is Side.RIGHT else "letter small end"
    for one, place in zip(called, places, strict=True):
        bend, end = edge + sign * _LEVEL * em, edge + sign * _OUT * em
        lines = ((one.x, one.y, bend, one.y), (bend, one.y, end, place))
        canvas.add(Stroke("leader halo", lines), Stroke("leader", lines))
        canvas.add(Label(role, edge + sign * _TEXT * em, place, one.letter))
