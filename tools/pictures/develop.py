"""From linear light to a photograph: the fall of the light, focus, tone, size."""

from __future__ import annotations

import io
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np
from camera import Field
from colour import written
from picture import FINER
from PIL import Image, ImageFilter

WARM: Final = np.array((1.0, 0.972, 0.925), dtype=np.float32)
QUALITIES: Final = (68, 66, 64, 62, 60, 58, 56)
COOL: Final = np.array((0.93, 0.97, 1.0), dtype=np.float32)


@dataclass(frozen=True, slots=True)
class Focus:
    """Sharp at ``row`` (a share of the height), soft above and below.

    ``blur`` is that at the top, in pixels of a picture 2000 wide.
    """

    row: float = 0.55
    depth: float = 0.22
    blur: float = 0.0


@dataclass(frozen=True, slots=True)
class Exposure:
    """How the light falls over the picture."""

    bright: float = 0.97
    fall: float = 0.42
    """How much darker the lower right corner is than the upper left."""
    corners: float = 0.22
    focus: Focus = Focus()


def develop(light: Field, exposure: Exposure) -> Image.Image:
    """The kept picture."""
    kept = _reduced(light)
    kept = _focused(kept, exposure.focus)
    kept = kept * _fall(kept.shape[0], kept.shape[1], exposure)
    return Image.fromarray((written(_toned(kept)) * 255 + np.float32(0.5)).astype(np.uint8))


def save(image: Image.Image, path: Path, limit: int) -> int:
    """Writes a JPEG without metadata, at the best quality that keeps it under ``limit`` bytes; its size."""
    path.parent.mkdir(parents=True, exist_ok=True)
    # What is finer than a pixel costs much in a JPEG and is seen by nobody.
    calm = image.filter(ImageFilter.GaussianBlur(0.4))
    for quality in QUALITIES:
        kept = io.BytesIO()
        calm.save(kept, "JPEG", quality=quality, optimize=True, progressive=True, subsampling="4:2:0")
        if kept.tell() <= limit:
            break
    path.write_bytes(kept.getvalue())
    return kept.tell()


def _reduced(light: Field) -> Field:
    high, wide = light.shape[0] // FINER, light.shape[1] // FINER
    blocks = light[: high * FINER, : wide * FINER].reshape(high, FINER, wide, FINER, 3)
    reduced: Field = blocks.mean(axis=(1, 3))
    return reduced


def _focused(kept: Field, focus: Focus) -> Field:
    if not focus.blur:
        return kept
    rows = np.linspace(0, 1, kept.shape[0], dtype=np.float32)
    off = np.clip((np.abs(rows - focus.row) - focus.depth) / max(focus.row, 1 - focus.row), 0, 1)
    blur = focus.blur * kept.shape[1] / 2000
    levels = [kept, _blurred(kept, blur * 0.35), _blurred(kept, blur)]
    at = np.clip(off * 2.4, 0, 1) * (len(levels) - 1)
    mixed = np.zeros_like(kept)
    for i, level in enumerate(levels):
        mixed += level * np.clip(1 - np.abs(at - i), 0, 1)[:, None, None]
    return mixed


def _blurred(kept: Field, radius: float) -> Field:
    """Two box blurs, one after the other: round enough for a background."""
    once = _boxed(_boxed(kept, round(radius), 0), round(radius), 1)
    return _boxed(_boxed(once, round(radius * 0.7), 0), round(radius * 0.7), 1)


def _boxed(kept: Field, reach: int, axis: int) -> Field:
    pads = [(0, 0)] * 3
    pads[axis] = (reach + 1, reach)
    total = np.cumsum(np.pad(kept, pads, mode="edge"), axis=axis, dtype=np.float64)
    wide = 2 * reach + 1
    upper = np.take(total, range(wide, total.shape[axis]), axis=axis)
    lower = np.take(total, range(total.shape[axis] - wide), axis=axis)
    return ((upper - lower) / wide).astype(np.float32)


def _fall(high: int, wide: int, exposure: Exposure) -> Field:
    x, y = np.meshgrid(np.linspace(0, 1, wide, dtype=np.float32), np.linspace(0, 1, high, dtype=np.float32))
    far = np.hypot(x - 0.16, (y - 0.08) * 0.8) / np.float32(1.12)
    near = np.exp(-((far / 0.62) ** 2))[..., None]
    edge = np.clip(np.hypot(x - 0.48, y - 0.48) * 1.35, 0, 1) ** 3
    level = exposure.bright * (1 + 0.1 - exposure.fall * far**1.3) * (1 - exposure.corners * edge)
    fall: Field = level[..., None] * (COOL + (WARM - COOL) * (0.35 + 0.65 * near))
    return fall.astype(np.float32)


def _toned(light: Field) -> Field:
    """Slightly muted, with a gentle shoulder: white paper keeps its tooth in the brightest corner."""
    grey = light @ np.array((0.2126, 0.7152, 0.0722), dtype=np.float32)
    light = light + (grey[..., None] - light) * np.float32(0.1)
    knee = np.float32(0.62)
    over = np.maximum(light - knee, 0)
    room = np.float32(1.02) - knee
    return np.where(light > knee, knee + room * (1 - np.exp(-over / room)), light).astype(np.float32)
