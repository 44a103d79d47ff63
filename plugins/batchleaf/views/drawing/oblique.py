"""An oblique view: a face lies on its back, its top edge to the upper right, heights straight up."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.paper import Line

Point = tuple[float, float]

ALONG: Final = (0.82, 0.24)
"""Where one mm to the right goes on the drawing."""
DOWN: Final = (-0.5, 0.4)
"""Where one mm towards the foot goes."""


@dataclass(frozen=True, slots=True)
class Plane:
    """A level ``height`` mm above the table; ``left`` and ``top``: where its own zero lies."""

    height: float
    left: float = 0.0
    top: float = 0.0

    def point(self, x: float, y: float) -> Point:
        """A point of the face on the drawing."""
        x, y = x + self.left, y + self.top
        return x * ALONG[0] + y * DOWN[0], x * ALONG[1] + y * DOWN[1] - self.height

    def corners(self, rect: Rect) -> tuple[Point, Point, Point, Point]:
        """Those of a rectangle: top left, top right, bottom right, bottom left."""
        x, y, right, bottom = map(float, (rect.x, rect.y, rect.right, rect.bottom))
        return self.point(x, y), self.point(right, y), self.point(right, bottom), self.point(x, bottom)

    def line(self, x1: float, y1: float, x2: float, y2: float) -> Line:
        """A straight line stays one."""
        return (*self.point(x1, y1), *self.point(x2, y2))

    def lines(self, lines: Iterable[Line]) -> tuple[Line, ...]:
        """Each of them."""
        return tuple(self.line(*line) for line in lines)


def depth_of(width: float, height: float) -> float:
    """How much a face of that size takes from the top to the foot of the drawing."""
    return width * ALONG[1] + height * DOWN[1]
