"""Noise that repeats without a seam, and the tooth of paper made from it."""

from __future__ import annotations

from functools import cache
from typing import Final, TypeAlias

import numpy as np
from camera import Field, Numbers
from numpy.typing import NDArray
from PIL import Image, ImageDraw, ImageFilter

SIZE: Final = 1024
Whole: TypeAlias = NDArray[np.int32]


@cache
def noise(slope: float, seed: int, finest: float = 2.0) -> Field:
    """A square of filtered white noise, mean 0 and deviation 1, that joins up with itself.

    ``slope`` is the power by which amplitude falls with frequency: 0 is sand,
    1 clouds, 2 hills. Nothing is finer than ``finest`` cells.
    """
    white = np.random.default_rng(seed).standard_normal((SIZE, SIZE))
    fy, fx = np.fft.fftfreq(SIZE)[:, None], np.fft.rfftfreq(SIZE)[None, :]
    frequency = np.hypot(fy, fx)
    frequency[0, 0] = np.inf
    spectrum = np.fft.rfft2(white) * frequency**-slope * np.exp(-((frequency * finest) ** 2))
    made = np.fft.irfft2(spectrum, s=(SIZE, SIZE))
    return np.asarray((made - made.mean()) / made.std(), dtype=np.float32)


def sample(tile: Field, x: Numbers, y: Numbers, cells_per_mm: float) -> Field:
    """A tile's values at points given in mm, between its cells by straight lines, wrapped round."""
    high, wide = tile.shape[:2]
    left, right, across = _cells(x, cells_per_mm, wide)
    top, bottom, down = _cells(y, cells_per_mm, high)
    if tile.ndim == 3:
        across, down = across[..., None], down[..., None]
    flat = tile.reshape(high * wide, *tile.shape[2:])
    upper = _between(flat, top * np.int32(wide), left, right, across)
    upper += (_between(flat, bottom * np.int32(wide), left, right, across) - upper) * down
    return upper


def _cells(at: Numbers, cells_per_mm: float, count: int) -> tuple[Whole, Whole, Field]:
    """The cells before and behind each point along one axis, and how far it is between them."""
    place = np.asarray(at, dtype=np.float32) * np.float32(cells_per_mm)
    floor = np.floor(place)
    before = floor.astype(np.int32)
    # Most tiles have a power of two cells, for which a mask is much faster than a division.
    before = before & np.int32(count - 1) if count & (count - 1) == 0 else before % np.int32(count)
    behind = before + np.int32(1)
    behind[behind == count] = 0
    return before, behind, place - floor


def _between(flat: Field, rows: Whole, left: Whole, right: Whole, across: Field) -> Field:
    first = flat.take(rows + left, axis=0)
    first += (flat.take(rows + right, axis=0) - first) * across
    return first


def relief(x: Numbers, y: Numbers, cells_per_mm: float, seed: int = 3) -> Field:
    """How much a rough surface turns to a light at the upper left: about 0, a few tenths either way."""
    tile = noise(0.6, seed)
    lit = np.roll(tile, (1, 1), (0, 1)) - np.roll(tile, (-1, -1), (0, 1))
    return sample(lit * np.float32(0.3), x, y, cells_per_mm)


@cache
def fibres(count: int, longest: float, seed: int) -> Field:
    """A 64 mm tile of short loose fibres: 0 is none, 1 a fibre; 12 cells to the mm."""
    side = 768 * 2
    sheet = Image.new("L", (side, side), 0)
    pen = ImageDraw.Draw(sheet)
    dice = np.random.default_rng(seed)
    for _ in range(count):
        _fibre(pen, dice, side, longest * 24)
    soft = sheet.filter(ImageFilter.GaussianBlur(1.2)).resize((side // 2, side // 2), Image.Resampling.BOX)
    return np.asarray(soft, dtype=np.float32) / np.float32(255)


def _fibre(pen: ImageDraw.ImageDraw, dice: np.random.Generator, side: int, longest: float) -> None:
    start = dice.uniform(0, side, 2)
    heading, bend = dice.uniform(0, 2 * np.pi), dice.uniform(-1.4, 1.4)
    steps = np.linspace(0, 1, 9)
    turns = heading + bend * steps
    reach = longest * dice.uniform(0.25, 1) / len(steps)
    path = start + np.cumsum(np.column_stack((np.cos(turns), np.sin(turns))) * reach, axis=0)
    shade = int(dice.uniform(90, 255))
    for shift in ((0, 0), (-side, 0), (0, -side)):
        pen.line([tuple(p) for p in path + shift], fill=shade, width=int(dice.integers(2, 4)))
