"""Colours as six figures, and how far one stands out from another.

Luminance and contrast are those of WCAG 2.2 (W3C Recommendation, 2023-10-05), "relative
luminance" and "contrast ratio" in its glossary.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final, Self

from batchleaf.measure.errors import MeasureError

READABLE: Final = 4.5
"""The least contrast of text in its usual size (WCAG 2.2, success criterion 1.4.3, level AA)."""
READABLE_LARGE: Final = 3.0
"""The least contrast of large text (the same): 18 point and more, or 14 point and bold."""
_STEPS: Final = 100


@dataclass(frozen=True, slots=True)
class Colour:
    """A colour of sRGB; each share from 0 to 255."""

    red: int
    green: int
    blue: int

    @classmethod
    def of(cls, text: str) -> Self:
        """``#c3d6cf``. Raises :class:`MeasureError`."""
        if not re.fullmatch(r"#[0-9a-fA-F]{6}", text):
            raise MeasureError(f"“{text}” is not a colour; write # and six figures, like #c3d6cf, in quotes")
        return cls(*bytes.fromhex(text[1:]))

    def __str__(self) -> str:
        return f"#{self.red:02x}{self.green:02x}{self.blue:02x}"

    @property
    def luminance(self) -> float:
        """From 0, black, to 1, white."""
        red, green, blue = self.light
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    @property
    def light(self) -> tuple[float, float, float]:
        """Red, green and blue light, each from 0 to 1, with the gamma of sRGB taken out."""
        return _linear(self.red), _linear(self.green), _linear(self.blue)

    def contrast(self, other: Colour) -> float:
        """From 1, the same, to 21, black on white; which of the two is the ground does not matter."""
        darker, lighter = sorted((self.luminance, other.luminance))
        return (lighter + 0.05) / (darker + 0.05)

    def mixed(self, other: Colour, share: float) -> Colour:
        """With ``share`` of another colour, from 0, none, to 1, nothing else."""
        pairs = zip((self.red, self.green, self.blue), (other.red, other.green, other.blue), strict=True)
        return Colour(*(round(mine + (its - mine) * share) for mine, its in pairs))

    def until(self, contrast: float, ground: Colour, towards: Colour) -> Colour:
        """The colour, mixed with ``towards`` as little as brings it to ``contrast`` on ``ground``.

        Where even ``towards`` itself does not reach it, that one.
        """
        mixtures = (self.mixed(towards, step / _STEPS) for step in range(_STEPS + 1))
        return next((one for one in mixtures if one.contrast(ground) >= contrast), towards)


BLACK: Final = Colour(0, 0, 0)
WHITE: Final = Colour(255, 255, 255)


def _linear(share: int) -> float:
    """The light of one share, with the gamma of sRGB taken out."""
    part = share / 255
    # 0.04045 is the standard's own limit (IEC 61966-2-1); for eight bits it parts no two values.
    return part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4
