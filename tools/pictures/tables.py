"""What the batches lie on."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np
from camera import Field, lying
from colour import linear, rgb
from grain import fibres, noise, relief, sample
from picture import FINER, Patch, Picture
from pieces import on_plane

BAND: Final = 256
"""Rows worked on at once, so that a large picture fits into little memory."""


def spread(picture: Picture, table: str, turn: float = 0.0) -> None:
    """Fills the picture with a table top; ``turn`` in degrees."""
    wide, high = picture.camera.pixels
    homography = picture.camera.homography(lying(0, 0, turn))
    for top in range(0, high, BAND * FINER):
        patch = Patch(0, top, wide, min(high, top + BAND * FINER))
        x, y = on_plane(homography, *patch.grid())
        rows, columns = patch.slices
        picture.pixels[rows, columns] = TABLES[table](x, y)


def _toned(colour: str, tone: Field) -> Field:
    toned: Field = linear(rgb(colour)) * (1 + tone)[..., None].astype(np.float32)
    return toned


@dataclass(frozen=True, slots=True)
class Boards:
    """Boards with their grain along x: their colour, their width in mm, how strong the grain shows."""

    colour: str
    width: float
    grain: float
    seed: int
    seam: float = 0.7

    def __call__(self, x: Field, y: Field) -> Field:
        """Old boards, oiled."""
        board = np.floor((y + 62) / self.width)
        inside = (y + 62) - board * self.width
        px, py = x + board * 411, y + board * 97
        wander = sample(noise(1.6, self.seed), px / 22, py / 5, 2.0)
        rings = np.sin(py * 0.42 + 2.6 * wander) + 0.5 * np.sin(py * 1.13 + 4.1 * wander)
        streak = sample(noise(0.7, self.seed + 1), px / 26, py, 3.2)
        pores = np.clip(sample(noise(0.4, self.seed + 2), px / 13, py, 5.5) - 1.1, 0, None)
        tint = 0.05 * np.sin(board * 2.4)
        seam = np.exp(-(((np.minimum(inside, self.width - inside)) / 0.8) ** 2))
        lip = np.exp(-(((inside - 1.6) / 0.9) ** 2))
        tone = self.grain * (0.07 * rings + 0.055 * streak - 0.13 * pores)
        return _toned(self.colour, (tone + tint - self.seam * seam + 0.1 * lip).astype(np.float32))


@dataclass(frozen=True, slots=True)
class Painted:
    """Narrow boards, painted long ago: brush strokes, and worn through here and there."""

    colour: str
    seed: int

    def __call__(self, x: Field, y: Field) -> Field:
        """Boards along x."""
        ground = Boards(self.colour, 84, 0.24, self.seed, 0.55)(x, y)
        strokes = sample(noise(0.8, self.seed + 3), x / 30, y, 2.6) * np.float32(0.022)
        worn = np.clip(sample(noise(1.2, self.seed + 4), x / 6, y, 2.0) - 2.0, 0, 0.35)[..., None]
        bare = linear(rgb("#8d7b63"))
        made: Field = (ground * (1 + strokes)[..., None] * (1 - worn) + bare * worn).astype(np.float32)
        return made


def wool(x: Field, y: Field) -> Field:
    """A plain woollen cloth in twill, soft."""
    wobble = sample(noise(1.4, 91), x, y, 1.2) * np.float32(0.3)
    twill = np.sin((x + y + wobble) * 3.7) * 0.5 + 0.5 * np.sin((x - y) * 7.1)
    hair = sample(fibres(2600, 3.4, 92), x, y, 12)
    drape = sample(noise(2.0, 93), x, y, 0.8)
    tone = 0.07 * twill + 0.11 * hair + 0.035 * relief(x, y, 3.2, 94) + 0.06 * drape
    return _toned("#8d6f5f", tone.astype(np.float32))


@dataclass(frozen=True, slots=True)
class Cloth:
    """A cloth of about 9 threads to the cm; perhaps with a woven stripe."""

    colour: str
    stripe: str = ""

    def __call__(self, x: Field, y: Field) -> Field:
        """Stripes along x."""
        slub = sample(noise(0.9, 31), x / 14, y, 1.3)
        slub_across = sample(noise(0.9, 32), x, y / 14, 1.3)
        wobble = sample(noise(1.4, 33), x, y, 1.2) * np.float32(0.25)
        warp, weft = np.sin((x + wobble) * 5.7), np.sin((y + wobble) * 5.7)
        weave = np.maximum(warp * np.sign(weft), -0.2) * 0.5 + 0.5 * warp * weft
        drape = sample(noise(2.0, 34), x, y, 0.9)
        tone = (0.055 * weave + 0.022 * slub + 0.018 * slub_across + 0.035 * drape).astype(np.float32)
        cloth = _toned(self.colour, tone)
        if not self.stripe:
            return cloth
        along = np.abs((y + 20) % 96 - 48)
        stripe = (along < 3.6) | (np.abs(along - 6.2) < 0.7)
        return np.where(stripe[..., None], _toned(self.stripe, tone), cloth)


def slate(x: Field, y: Field) -> Field:
    """A roof slate, riven, dusty."""
    cloud = sample(noise(1.5, 41), x, y, 1.4)
    riven = relief(x * 0.8 + y * 0.2, y * 0.45, 2.2, 42)
    steps = np.clip(sample(noise(1.9, 43), x / 3, y, 1.1) * 3 % 1 - 0.93, 0, None)
    dust = np.clip(sample(noise(0.5, 44), x, y, 6) - 1.9, 0, 1)
    tone = 0.07 * cloud + 0.055 * riven - 1.2 * steps + 0.16 * dust
    return _toned("#444b51", tone.astype(np.float32))


def felt(x: Field, y: Field) -> Field:
    """A grey-green desk felt."""
    cloud = sample(noise(1.3, 51), x, y, 2.0)
    hair = sample(fibres(3000, 4.0, 8), x, y, 12)
    tone = 0.03 * cloud + 0.045 * relief(x, y, 4.0, 52) + 0.05 * hair
    return _toned("#77836f", tone.astype(np.float32))


def plaster(x: Field, y: Field) -> Field:
    """A limewashed board, pale and uneven."""
    cloud = sample(noise(1.5, 61), x, y, 1.0)
    trowel = relief(x + 0.4 * y, y - 0.4 * x, 0.55, 62)
    worn = np.clip(sample(noise(1.2, 64), x, y, 2.1) - 1.2, 0, 1)
    tone = 0.045 * cloud + 0.02 * trowel + 0.022 * relief(x, y, 2.6, 63) - 0.07 * worn
    return _toned("#cbc7bd", tone.astype(np.float32))


TABLES: Final[dict[str, Callable[[Field, Field], Field]]] = {
    "oak": Boards("#9c7a58", 150, 1.0, 21),
    "ash": Boards("#c3aa88", 118, 0.75, 24, 0.5),
    "walnut": Boards("#65493a", 190, 1.15, 27),
    "sage": Painted("#76876f", 81),
    "harbour": Painted("#66788a", 101),
    "wool": wool,
    "linen": Cloth("#c5bfb2", "#7d8b98"),
    "sailcloth": Cloth("#7f8d97"),
    "slate": slate,
    "felt": felt,
    "plaster": plaster,
}
