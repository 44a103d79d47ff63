"""Drawing in mm on a tile that joins up with itself, and the few strokes everything is drawn from."""

from __future__ import annotations

from math import cos, pi, radians, sin
from typing import Final, TypeAlias

import numpy as np
from camera import Field
from PIL import Image, ImageDraw

CELLS_PER_MM: Final = 12
FINER: Final = 3

Point: TypeAlias = tuple[float, float]


class Tile:
    """A square that is drawn three times finer than it is kept."""

    def __init__(self, side: float, ground: str) -> None:
        """``side`` in mm; ``ground`` is the colour it starts with."""
        self.side = side
        self._scale = CELLS_PER_MM * FINER
        self._image = Image.new("RGB", (round(side * self._scale),) * 2, ground)
        self._pen = ImageDraw.Draw(self._image)

    def area(self, points: list[Point], colour: str) -> None:
        """A filled shape."""
        for moved in self._round(points):
            self._pen.polygon(moved, fill=colour)

    def line(self, points: list[Point], width: float, colour: str) -> None:
        """A stroke with round ends; ``width`` in mm."""
        thick = max(1, round(width * self._scale))
        for moved in self._round(points):
            self._pen.line(moved, fill=colour, width=thick, joint="curve")
        for end in (points[0], points[-1]):
            self.dot(end, width / 2, colour)

    def dot(self, at: Point, radius: float, colour: str) -> None:
        """A filled circle."""
        r = radius * self._scale
        for ((x, y),) in self._round([at]):
            self._pen.ellipse((x - r, y - r, x + r, y + r), fill=colour)

    def kept(self) -> Field:
        """The colours as written (not linear), 0 to 1."""
        small = self._image.reduce(FINER)
        return np.asarray(small, dtype=np.float32) / np.float32(255)

    def _round(self, points: list[Point]) -> list[list[Point]]:
        whole = self._image.width
        shifts = (-whole, 0, whole)
        return [
            [(x * self._scale + i, y * self._scale + j) for x, y in points]
            for i in shifts
            for j in shifts
            if self._touches(points, i / self._scale, j / self._scale)
        ]

    def _touches(self, points: list[Point], i: float, j: float) -> bool:
        xs, ys = [x + i for x, _ in points], [y + j for _, y in points]
        near = 6.0
        return (
            max(xs) > -near and min(xs) < self.side + near and max(ys) > -near and min(ys) < self.side + near
        )


def step(at: Point, degrees: float, length: float) -> Point:
    """A point some way off; 0 degrees is to the right, 90 down."""
    return at[0] + length * cos(radians(degrees)), at[1] + length * sin(radians(degrees))


def arc(at: Point, degrees: float, length: float, bend: float, count: int = 12) -> list[Point]:
    """A path of some length that turns by ``bend`` degrees on its way."""
    path = [at]
    for i in range(count):
        path.append(step(path[-1], degrees + bend * (i + 0.5) / count, length / count))
    return path


def leaf(at: Point, degrees: float, length: float, width: float, teeth: int = 0) -> list[Point]:
    """The outline of a leaf from its stalk to its tip; with ``teeth`` its edge is sawn."""
    ts = np.linspace(0, 1, 2 * teeth + 1 if teeth else 15)
    swell = np.sin(pi * ts**0.8) * width / 2
    if teeth:
        swell[1::2] *= 0.8
    side = [(float(t * length), float(s)) for t, s in zip(ts, swell, strict=True)]
    outline = side + [(t, -s) for t, s in reversed(side)]
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return [(at[0] + c * x - s * y, at[1] + s * x + c * y) for x, y in outline]


def scattered(side: float, apart: float, seed: int, tries: int = 4000) -> list[Point]:
    """Points thrown on a tile, none nearer than ``apart`` to another, across the seams too."""
    dice = np.random.default_rng(seed)
    kept: list[Point] = []
    for x, y in dice.uniform(0, side, (tries, 2)):
        if all(_between(side, (x, y), other) >= apart for other in kept):
            kept.append((float(x), float(y)))
    return kept


def _between(side: float, one: Point, other: Point) -> float:
    dx, dy = abs(one[0] - other[0]), abs(one[1] - other[1])
    return float(np.hypot(min(dx, side - dx), min(dy, side - dy)))
