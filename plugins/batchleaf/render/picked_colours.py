"""The colours that a photo of a supply shows: a proposal, since light and camera colour them too."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from PIL import Image

from batchleaf.measure.colour_difference import difference
from batchleaf.measure.colours import Colour
from batchleaf.render.photos import bytes_of, opened_picture

MOST: Final = 3
_MIDDLE: Final = 0.6
"""So much of its width and height is looked at, since at the edges lies the table."""
_ACROSS: Final = 64
"""Pixels to a side; a pattern finer than that is seen as one colour, as from afar."""
_CLASSES: Final = 12
_APART: Final = 10.0
"""Colours that differ less by CIEDE2000 are one."""
_LEAST: Final = 0.1
"""The least share of the middle that a colour has to have."""


def picked_colours(path: Path) -> tuple[Colour, ...]:
    """Up to three colours of the middle of a picture, the most frequent first.

    Raises :class:`batchleaf.render.photos.UnreadableError`.
    """
    picture = _middle(opened_picture(bytes_of(path), _ACROSS))
    found: dict[Colour, int] = {}
    for colour, count in _classes(picture):
        alike = next((one for one in found if difference(one, colour) < _APART), colour)
        found[alike] = found.get(alike, 0) + count
    often = sorted(found.items(), key=lambda one: (-one[1], str(one[0])))
    first, *others = [
        colour for colour, count in often if colour == often[0][0] or count >= _LEAST * _ACROSS**2
    ]
    return (first, *others[: MOST - 1])


def _middle(picture: Image.Image) -> Image.Image:
    width, height = picture.size
    left, top = width * (1 - _MIDDLE) / 2, height * (1 - _MIDDLE) / 2
    box = (left, top, width - left, height - top)
    return picture.resize((_ACROSS, _ACROSS), Image.Resampling.BOX, box=box)


def _classes(picture: Image.Image) -> list[tuple[Colour, int]]:
    """Its colours in a few classes, each by its mean, the most frequent first."""
    classed = picture.quantize(_CLASSES, Image.Quantize.MEDIANCUT, dither=Image.Dither.NONE)
    shares = classed.getpalette() or []
    counted = classed.getcolors() or []
    return [
        (Colour(*shares[3 * number : 3 * number + 3]), count)
        for count, number in sorted(counted, key=lambda one: (-one[0], one[1]))
        if isinstance(number, int)
    ]
