"""Flat pieces: an outline in a plane, of one paper, perhaps stamped."""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, pi, sin
from typing import Final

import numpy as np
from camera import Field, Frame, Vector, lying
from colour import linear, rgb
from drawing import CELLS_PER_MM
from grain import noise, sample
from papers import PAPERS, Paper
from picture import Picture

TABLE: Final = lying(0, 0)


@dataclass(frozen=True, slots=True)
class Outline:
    """A convex outline, clockwise to the eye, in mm; ``holes`` are circles (x, y, radius)."""

    corners: tuple[tuple[float, float], ...]
    holes: tuple[tuple[float, float, float], ...] = ()

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


def rectangle(width: float, height: float) -> Outline:
    """Upper left corner at zero."""
    return Outline(((0, 0), (width, 0), (width, height), (0, height)))


def clipped(width: float, height: float, clip: float, hole: tuple[float, float, float]) -> Outline:
    """A tag: the two upper corners cut off, a hole for the string."""
    corners = ((clip, 0), (width - clip, 0), (width, clip), (width, height), (0, height), (0, clip))
    return Outline(corners, (hole,))


def disc(radius: float) -> Outline:
    """Middle at zero."""
    turns = (2 * pi * i / 48 for i in range(48))
    return Outline(tuple((radius * cos(t), radius * sin(t)) for t in turns))


@dataclass(frozen=True, slots=True)
class Stamp:
    """A motif in ink; ``cover`` is where ink is, 0 to 1, ``CELLS_PER_MM`` cells to the mm."""

    cover: Field
    ink: str
    x: float
    y: float

    def pressed(self, colour: Field, x: Field, y: Field) -> Field:
        """The paper's colour with the motif on it; ink lies thinner where the paper is deeper."""
        high, wide = (n / CELLS_PER_MM for n in self.cover.shape)
        u, v = x - np.float32(self.x), y - np.float32(self.y)
        on = (u > 0) & (v > 0) & (u < wide - 0.1) & (v < high - 0.1)
        ink = np.where(on, sample(self.cover, u, v, CELLS_PER_MM), 0)
        ink = ink * np.clip(0.88 + 0.1 * sample(noise(0.5, 9), x, y, 6), 0.4, 1)
        inked: Field = colour + (linear(rgb(self.ink)) - colour) * ink[..., None].astype(np.float32)
        return inked


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece in its place; its shadow falls on the plane ``onto``."""

    frame: Frame
    outline: Outline
    paper: str
    onto: Frame = TABLE
    shift: tuple[float, float] = (0.0, 0.0)
    stamps: tuple[Stamp, ...] = ()
    dim: float = 1.0
    """Below 1 where other paper keeps the light away."""
    shadow: float = 1.0
    thick: float = 0.35
    """The width of its cut edge as it catches the light, in mm."""


def put(picture: Picture, piece: Piece) -> None:
    """Its shadow, then itself."""
    corners = piece.frame.points(piece.outline.corners)
    if piece.shadow:
        picture.cast(corners, piece.onto, piece.shadow)
    paint(picture, piece)


def paint(picture: Picture, piece: Piece) -> None:
    """The piece without its shadow."""
    corners = piece.frame.points(piece.outline.corners)
    patch = picture.patch(picture.camera.seen(corners), 2)
    if patch.empty:
        return
    x, y = on_plane(picture.camera.homography(piece.frame), *patch.grid())
    depth, facing = piece.outline.within(x, y)
    pixel = 1 / picture.camera.scale_at(corners.mean(axis=0))
    cover = np.clip(depth / np.float32(pixel) + np.float32(0.5), 0, 1)
    hit = cover > 0
    colour = np.zeros((*x.shape, 3), dtype=np.float32)
    colour[hit] = _lit(picture, piece, x[hit], y[hit], depth[hit], facing[hit])
    picture.lay(patch, colour, cover)


def on_plane(homography: Vector, x: Field, y: Field) -> tuple[Field, Field]:
    """Where the rays through pixels meet a plane, in its own mm."""
    back = np.linalg.inv(homography)
    rays = [(row[0] * x + row[1] * y + row[2]) for row in back]
    return (rays[0] / rays[2]).astype(np.float32), (rays[1] / rays[2]).astype(np.float32)


def _lit(picture: Picture, piece: Piece, x: Field, y: Field, depth: Field, facing: Field) -> Field:
    paper: Paper = PAPERS[piece.paper]
    colour = paper.albedo(x, y, piece.shift)
    for stamp in piece.stamps:
        colour = stamp.pressed(colour, x, y)
    rim = np.clip(1 - depth / np.float32(piece.thick), 0, 1)
    # A sheet is never quite flat: a slow swell of a few hundredths over a hand's breadth.
    swell = sample(noise(2.0, 15), x + piece.shift[0], y + piece.shift[1], 1.6) * np.float32(0.012)
    light = np.float32(picture.sun.on(piece.frame.normal) * piece.dim)
    lit: Field = colour * (light * (1 + np.float32(0.2) * rim * facing + swell))[..., None]
    return lit
