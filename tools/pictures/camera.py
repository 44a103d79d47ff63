"""Where the eye stands, and planes in front of it.

The table lies in z = 0: x runs to the right, y towards the person who looks,
z up. All in mm. A plane and the picture are tied by a homography (Hartley and
Zisserman, Multiple View Geometry, chapter 8), so a sheet may lie, lean or stand.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Vector: TypeAlias = NDArray[np.float64]
Field: TypeAlias = NDArray[np.float32]
Numbers: TypeAlias = NDArray[np.float32] | NDArray[np.float64]


def vector(x: float, y: float, z: float = 0.0) -> Vector:
    """A point or a direction."""
    return np.array((x, y, z), dtype=np.float64)


@dataclass(frozen=True, slots=True)
class Frame:
    """A plane with its own measures: ``along`` and ``down`` are unit vectors in it."""

    origin: Vector
    along: Vector
    down: Vector

    @property
    def normal(self) -> Vector:
        """The side that is looked at: up for a sheet that lies on the table."""
        return np.cross(self.along, self.down)

    def point(self, x: float, y: float) -> Vector:
        """Where the plane's (x, y) is in the room."""
        return self.origin + x * self.along + y * self.down

    def points(self, corners: tuple[tuple[float, float], ...]) -> Vector:
        """Many points at once, one a row."""
        return np.array([self.point(x, y) for x, y in corners])

    def moved(self, x: float, y: float, lift: float = 0.0) -> Frame:
        """The same plane from another zero point, ``lift`` above it."""
        return Frame(self.point(x, y) + lift * self.normal, self.along, self.down)

    def turned(self, degrees: float) -> Frame:
        """Turned about its zero point, clockwise to the eye."""
        c, s = cos(radians(degrees)), sin(radians(degrees))
        return Frame(self.origin, c * self.along + s * self.down, c * self.down - s * self.along)

    def opened(self, degrees: float) -> Frame:
        """Swung up about its left edge, as a cover is."""
        c, s = cos(radians(degrees)), sin(radians(degrees))
        return Frame(self.origin, c * self.along + s * self.normal, self.down)

    def flipped(self, width: float) -> Frame:
        """The other side of a sheet so wide."""
        return Frame(self.point(width, 0), -self.along, self.down)

    def tilted(self, degrees: float) -> Frame:
        """Its far edge raised: turned about the line through its zero point."""
        c, s = cos(radians(degrees)), sin(radians(degrees))
        return Frame(self.origin, self.along, c * self.down - s * self.normal)


def lying(x: float, y: float, degrees: float = 0.0, lift: float = 0.0) -> Frame:
    """A plane on the table."""
    return Frame(vector(x, y, lift), vector(1, 0), vector(0, 1)).turned(degrees)


def standing(x: float, y: float, height: float, degrees: float = 0.0) -> Frame:
    """A plane that stands on the table, zero at its upper left; ``degrees`` turns it about that edge."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    return Frame(vector(x, y, height), vector(c, s), vector(0, 0, -1))


@dataclass(frozen=True, slots=True)
class Camera:
    """Looks at ``target``; ``pitch`` 0 is straight down, 90 along the table."""

    pixels: tuple[int, int]
    width: float
    """How much of the table's width is seen at the target, in mm."""
    pitch: float = 0.0
    distance: float = 900.0
    target: tuple[float, float] = (0.0, 0.0)

    @property
    def axes(self) -> Vector:
        """Right, down and forward of the eye, one a row."""
        c, s = cos(radians(self.pitch)), sin(radians(self.pitch))
        return np.array(((1, 0, 0), (0, c, -s), (0, -s, -c)), dtype=np.float64)

    @property
    def eye(self) -> Vector:
        """Where the eye is."""
        eye: Vector = vector(*self.target) - self.distance * self.axes[2]
        return eye

    @property
    def lens(self) -> Vector:
        """From directions to pixels."""
        w, h = self.pixels
        focal = w * self.distance / self.width
        return np.array(((focal, 0, w / 2), (0, focal, h / 2), (0, 0, 1)), dtype=np.float64)

    def seen(self, points: Vector) -> Vector:
        """Where points of the room (one a row) fall on the picture, in pixels."""
        rays = (points - self.eye) @ self.axes.T @ self.lens.T
        return rays[:, :2] / rays[:, 2:]

    def homography(self, frame: Frame) -> Vector:
        """Takes (x, y, 1) of a plane to pixels."""
        return self.lens @ self.axes @ np.column_stack((frame.along, frame.down, frame.origin - self.eye))

    def scale_at(self, point: Vector) -> float:
        """Pixels to a mm across the view, at a point of the room."""
        depth = float(self.axes[2] @ (point - self.eye))
        return float(self.lens[0, 0]) / depth
