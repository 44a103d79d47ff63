"""Colours as they are written, and as light adds up."""

from __future__ import annotations

import numpy as np
from camera import Field


def rgb(colour: str) -> Field:
    """``#rrggbb`` as three parts of one."""
    return np.array([int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)], dtype=np.float32)


def linear(written: Field) -> Field:
    """From sRGB to linear light (IEC 61966-2-1)."""
    low = written / np.float32(12.92)
    high = ((written + np.float32(0.055)) / np.float32(1.055)) ** np.float32(2.4)
    return np.where(written <= 0.04045, low, high).astype(np.float32)


def written(light: Field) -> Field:
    """From linear light to sRGB (IEC 61966-2-1)."""
    light = np.clip(light, 0, 1)
    high = np.float32(1.055) * light ** np.float32(1 / 2.4) - np.float32(0.055)
    return np.where(light <= 0.0031308, light * np.float32(12.92), high).astype(np.float32)


def between(one: str, other: str, share: float) -> str:
    """A colour some way from one to the other, as ``#rrggbb``."""
    mixed = rgb(one) * (1 - share) + rgb(other) * share
    return "#" + "".join(f"{round(float(part) * 255):02x}" for part in mixed)
