"""The shapes that drawings are made of.

Coordinates are millimetres as floats: this is the way to the screen. ``role``
names what a shape is (``outline``, ``cut``, ``waste`` …); the style sheet says
how that looks. ``fill`` and ``colour`` are colours from a record, or empty.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle."""

    role: str
    x: float
    y: float
    width: float
    height: float
    fill: str = ""


@dataclass(frozen=True, slots=True)
class Polygon:
    """A piece seen obliquely: its corners in order."""

    role: str
    corners: tuple[tuple[float, float], ...]
    fill: str = ""


@dataclass(frozen=True, slots=True)
class Path:
    """One line of straight and curved pieces: from ``start`` on, each to the last of its points.

    A piece of three points is a curve (cubic, the first two steer it), one of one point a straight line.
    """

    start: tuple[float, float]
    pieces: tuple[tuple[tuple[float, float], ...], ...]
    closed: bool = True


@dataclass(frozen=True, slots=True)
class Cutout:
    """A piece with its true outline: the first path is its edge, the others are holes in it."""

    role: str
    paths: tuple[Path, ...]
    fill: str = ""


@dataclass(frozen=True, slots=True)
class Stroke:
    """One or more straight lines, each ``(x1, y1, x2, y2)``, drawn as one path."""

    role: str
    lines: tuple[tuple[float, float, float, float], ...]
    colour: str = ""


@dataclass(frozen=True, slots=True)
class Ring:
    """A circle whose radius the style sheet sets, so that figures in it stay readable.

    For more than two ``characters`` it is drawn out along its text, to hold them all.
    """

    role: str
    x: float
    y: float
    characters: int = 1
    upright: bool = True


@dataclass(frozen=True, slots=True)
class Label:
    """Text centred on a point; ``upright`` False reads from below (a quarter turn)."""

    role: str
    x: float
    y: float
    text: str
    upright: bool = True


Shape = Box | Polygon | Cutout | Stroke | Ring | Label


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing with its frame in mm, its scale (px to the mm) and its words.

    ``id`` is unique on its page. ``width_class`` is one of ``large``, ``middle``,
    ``narrow``, ``strip``: how lettering grows when a narrow column shrinks the drawing;
    ``unlettered`` where there is none, and nothing shrinks. ``other``: the same in the other
    unit of length, where its figures take other places.
    """

    id: str
    title: str
    description: str
    x: float
    y: float
    width: float
    height: float
    scale: float
    width_class: str
    shapes: tuple[Shape, ...]
    other: Drawing | None = None
