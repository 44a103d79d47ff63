"""Outlines of pieces: convex, in mm, the upper left corner of their measures at zero."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, pi, sin

import numpy as np
from camera import Field

from batchleaf.facts import Part
from batchleaf.measure.outlines import points_on

Hole = tuple[float, float, float]
"""The middle of a round hole and its radius."""


@dataclass(frozen=True, slots=True)
class Outline:
    """A convex outline, clockwise to the eye."""

    corners: tuple[tuple[float, float], ...]
    holes: tuple[Hole, ...] = ()

    def within(self, x: Field, y: Field) -> tuple[Field, Field]:
        """How deep points are inside, and how much the nearest edge looks at the upper left (−1 to 1)."""
        depth = np.full_like(x, np.inf)
        facing = np.zeros_like(x)
        for (ax, ay), (bx, by) in zip(self.corners, (*self.corners[1:], self.corners[0]), strict=True):
            length = float(np.hypot(bx - ax, by - ay))
            nx, ny = (by - ay) / length, -(bx - ax) / length
            inside = np.float32(-nx) * (x - np.float32(ax)) + np.float32(-ny) * (y - np.float32(ay))
            nearer = inside < depth
            depth = np.where(nearer, inside, depth)
            facing = np.where(nearer, np.float32(-(nx + ny) / 2**0.5), facing)
        for hx, hy, radius in self.holes:
            depth = np.minimum(depth, np.hypot(x - np.float32(hx), y - np.float32(hy)) - np.float32(radius))
        return depth, facing

    def pierced(self, *holes: Hole) -> Outline:
        """The same with these holes and no others."""
        return replace(self, holes=holes)


def rectangle(width: float, height: float, holes: tuple[Hole, ...] = ()) -> Outline:
    return Outline(((0, 0), (width, 0), (width, height), (0, height)), holes)


def shaped(part: Part, width: float, height: float) -> Outline:
    """As its record says; only convex shapes are painted."""
    if part.shape.is_rectangle:
        return rectangle(width, height)
    outline = part.shape.outline(part.folded_size)
    corners = tuple((float(x), float(y)) for x, y in points_on(outline.edge))
    squares = [hole.on(part.folded_size) for hole in part.shape.holes]
    return Outline(
        corners,
        tuple(
            (float(one.x + one.width / 2), float(one.y + one.width / 2), float(one.width) / 2)
            for one in squares
        ),
    )


def rounded(
    width: float, height: float, radius: float, holes: tuple[Hole, ...] = (), foot: float = 0
) -> Outline:
    """The upper corners rounded by a punch; with ``foot`` the lower ones as well, by that radius."""
    corners = [*_corner(radius, radius, radius, 180), *_corner(width - radius, radius, radius, 270)]
    if foot:
        corners += _corner(width - foot, height - foot, foot, 0)
        corners += _corner(foot, height - foot, foot, 90)
    else:
        corners += [(width, height), (0, height)]
    return Outline(tuple(corners), holes)


def _corner(x: float, y: float, radius: float, start: float) -> list[tuple[float, float]]:
    turns = [(start + 15 * i) * pi / 180 for i in range(7)]
    return [(x + radius * cos(t), y + radius * sin(t)) for t in turns]


def disc(width: float, height: float, rim: float = 0) -> Outline:
    """A circle, or an oval, inside a rim that the punch leaves."""
    turns = (2 * pi * i / 48 for i in range(48))
    across, down = width / 2 - rim, height / 2 - rim
    return Outline(tuple((width / 2 + across * cos(t), height / 2 + down * sin(t)) for t in turns))


def triangle(width: float, height: float) -> Outline:
    """Point down: a pennant, the flap of an envelope."""
    return Outline(((0, 0), (width, 0), (width / 2, height)))
