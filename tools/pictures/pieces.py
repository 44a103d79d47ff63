"""Flat pieces: an outline in a plane, of one paper, perhaps stamped."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from camera import Field, Frame, Vector, lying
from colour import linear, rgb
from grain import noise, sample
from outlines import Outline
from papers import Paper
from picture import Patch, Picture

TABLE: Final = lying(0, 0)


@dataclass(frozen=True, slots=True)
class Stamp:
    """A motif in ink, its upper left corner at (x, y); ``cover`` is where ink is, 0 to 1."""

    cover: Field
    ink: str
    x: float
    y: float
    cells_per_mm: float

    def strength(self, x: Field, y: Field) -> Field:
        """How much ink is at points of the piece, in its mm; it lies thinner where the paper is deeper."""
        high, wide = (n / self.cells_per_mm for n in self.cover.shape)
        u, v = x - np.float32(self.x), y - np.float32(self.y)
        on = (u > 0) & (v > 0) & (u < wide - 0.1) & (v < high - 0.1)
        ink = np.where(on, sample(self.cover, u, v, self.cells_per_mm), 0)
        return np.asarray(
            ink * np.clip(0.9 + 0.08 * sample(noise(0.5, 9), x, y, 6), 0.4, 1), dtype=np.float32
        )

    def pressed(self, colour: Field, x: Field, y: Field) -> Field:
        """The paper's colour with the motif on it."""
        ink = self.strength(x, y)
        inked: Field = colour + (linear(rgb(self.ink)) - colour) * ink[..., None].astype(np.float32)
        return inked


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece in its place; its shadow falls on the plane ``onto``."""

    frame: Frame
    outline: Outline
    paper: Paper
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
    shadow_of(picture, piece)
    paint(picture, piece)


def shadow_of(picture: Picture, piece: Piece) -> None:
    """The shadow alone; what is seen through lets most of the light pass."""
    strength = piece.shadow * (1 - 0.72 * piece.paper.clear)
    if strength:
        picture.cast(piece.frame.points(piece.outline.corners), piece.onto, strength)


def paint(picture: Picture, piece: Piece) -> None:
    """The piece without its shadow."""
    corners = piece.frame.points(piece.outline.corners)
    patch = picture.patch(picture.camera.seen(corners), 2)
    if patch.empty:
        return
    x, y, depth, facing = _over(picture, piece, patch)
    pixel = 1 / picture.camera.scale_at(corners.mean(axis=0))
    cover = np.clip(depth / np.float32(pixel) + np.float32(0.5), 0, 1)
    hit = cover > 0
    colour = np.zeros((*x.shape, 3), dtype=np.float32)
    spots = x[hit], y[hit], depth[hit], facing[hit]
    colour[hit] = _lit(picture, piece, *spots)
    if piece.paper.clear:
        cover[hit] *= _solid(piece, spots[0], spots[1], spots[2])
    picture.lay(patch, colour, cover)


def shade_upon(picture: Picture, corners: Vector, piece: Piece, strength: float = 1.0) -> None:
    """The shadow of some flat thing on a piece that is already there, and nowhere beside it."""

    def cover(patch: Patch) -> Field:
        depth = _over(picture, piece, patch)[2]
        return np.asarray(np.clip(depth * 4 + np.float32(0.5), 0, 1), dtype=np.float32)

    picture.cast(corners, piece.frame, strength, cover)


def _over(picture: Picture, piece: Piece, patch: Patch) -> tuple[Field, Field, Field, Field]:
    """Where a patch's pixels are on the piece's plane, how deep in its outline, and its nearest edge."""
    x, y = on_plane(picture.camera.homography(piece.frame), *patch.grid())
    return (x, y, *piece.outline.within(x, y))


def on_plane(homography: Vector, x: Field, y: Field) -> tuple[Field, Field]:
    """Where the rays through pixels meet a plane, in its own mm."""
    # In the numbers of the pixels: half the memory, and a hundredth of a mm is not seen.
    back = np.linalg.inv(homography).astype(np.float32)
    along, down, far = ((row[0] * x + row[1] * y + row[2]) for row in back)
    return along / far, down / far


def _lit(picture: Picture, piece: Piece, x: Field, y: Field, depth: Field, facing: Field) -> Field:
    colour = piece.paper.albedo(x, y, piece.shift)
    for stamp in piece.stamps:
        colour = stamp.pressed(colour, x, y)
    rim = np.clip(1 - depth / np.float32(piece.thick), 0, 1)
    # A sheet is never quite flat: a slow swell of a few hundredths over a hand's breadth.
    swell = sample(noise(2.0, 15), x + piece.shift[0], y + piece.shift[1], 1.6) * np.float32(0.012)
    light = np.float32(picture.sun.on(piece.frame.normal) * piece.dim)
    edge = 0.2 * facing if not piece.paper.clear else 0.12 + 0.12 * facing
    lit: Field = colour * (light * (1 + np.float32(1) * rim * edge + swell))[..., None]
    return lit


def _solid(piece: Piece, x: Field, y: Field, depth: Field) -> Field:
    """How much of a clear sheet itself is seen: its cut edge, and the window in broad slanting glints."""
    clear = piece.paper.clear
    slant = 0.83 * x + 0.56 * y + 3.0 * sample(noise(2.0, 15), x + piece.shift[0], y, 1.2)
    ripple = np.sin(slant * (2 * np.pi / 118) + piece.shift[0] * 0.09)
    glint = 0.42 * np.clip((ripple - 0.55) / 0.45, 0, 1) ** 1.5
    edge = 0.75 * np.clip(1 - depth / 0.55, 0, 1)
    bare = (1 - clear) * 1.25
    solid: Field = np.clip(bare + clear**3 * (glint + edge), 0, 1).astype(np.float32)
    for stamp in piece.stamps:
        solid = np.maximum(solid, stamp.strength(x, y))
    return solid
