"""Noise that repeats without a seam, and the tooth of paper made from it."""

from __future__ import annotations

from functools import cache
from typing import Final

import numpy as np
from camera import Field, Numbers
from PIL import Image, ImageDraw, ImageFilter

SIZE: Final = 1024


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
    u, v = (np.asarray(part * cells_per_mm, dtype=np.float32) for part in (x, y))
    left, top = np.floor(u), np.floor(v)
    fu, fv = (u - left), (v - top)
    i0, j0 = left.astype(np.int32) % wide, top.astype(np.int32) % high
    i1, j1 = (i0 + 1) % wide, (j0 + 1) % high
    if tile.ndim == 3:
        fu, fv = fu[..., None], fv[..., None]
    upper = tile[j0, i0] * (1 - fu) + tile[j0, i1] * fu
    lower = tile[j1, i0] * (1 - fu) + tile[j1, i1] * fu
    mixed: Field = upper * (1 - fv) + lower * fv
    return mixed


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
