"""How far two colours look apart: CIELAB, and the colour difference CIEDE2000.

From sRGB to tristimulus values by IEC 61966-2-1:1999, from there to CIELAB by ISO/CIE 11664-4; the
difference by CIE 142-2001, in the form of G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000
Color-Difference Formula", Color Research & Application 30 (2005) 21-30, whose numbers of equations
stand beside the lines. Its weights k are 1.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import atan2, cos, degrees, exp, hypot, radians, remainder, sin, sqrt
from typing import Final

from batchleaf.measure.colours import Colour

DECIMALS: Final = 4
"""So many are told of a difference, as the paper tells them: what is sorted by it depends on no machine."""
_XYZ: Final = ((0.4124, 0.3576, 0.1805), (0.2126, 0.7152, 0.0722), (0.0193, 0.1192, 0.9505))
_WHITE: Final = tuple(sum(row) for row in _XYZ)
"""White of D65, as these rows make it, so that a grey has no hue."""
_KNEE: Final = 6 / 29
"""Below its third power the cube root of CIELAB is a straight line."""
_FAR_BLUE: Final = 25.0**7


@dataclass(frozen=True, slots=True)
class Lab:
    """A colour of CIELAB under D65; ``lightness`` from 0, black, to 100, white."""

    lightness: float
    a: float
    """Red above 0, green below."""
    b: float
    """Yellow above 0, blue below."""

    @property
    def chroma(self) -> float:
        """How far it is from grey."""
        return hypot(self.a, self.b)

    @property
    def hue(self) -> float:
        """In degrees from 0 to 360: red near 40, yellow near 100, green near 140, blue near 290."""
        return _angle(self.a, self.b)


@lru_cache(maxsize=4096)
def lab_of(colour: Colour) -> Lab:
    """A colour of sRGB in CIELAB."""
    shares = (
        sum(factor * part for factor, part in zip(row, colour.light, strict=True)) / white
        for row, white in zip(_XYZ, _WHITE, strict=True)
    )
    x, y, z = map(_root, shares)
    return Lab(116 * y - 16, 500 * (x - y), 200 * (y - z))


def _root(share: float) -> float:
    return share ** (1 / 3) if share > _KNEE**3 else share / (3 * _KNEE**2) + 4 / 29


def difference(one: Colour, other: Colour) -> float:
    """CIEDE2000 to four decimals: 0 for the same colour, about 1 where an eye begins to see a difference."""
    return round(ciede2000(lab_of(one), lab_of(other)), DECIMALS)


def ciede2000(one: Lab, other: Lab) -> float:
    """The difference ΔE00 of two colours of CIELAB."""
    steeper = 1.5 - 0.5 * _share_of_chroma((one.chroma + other.chroma) / 2)  # (2) to (5)
    a1, a2 = one.a * steeper, other.a * steeper
    chroma1, chroma2 = hypot(a1, one.b), hypot(a2, other.b)  # (6)
    hue1, hue2 = _angle(a1, one.b), _angle(a2, other.b)  # (7)
    has_hue = chroma1 * chroma2 != 0
    turn = remainder(hue2 - hue1, 360) if has_hue else 0.0  # (10)
    by_hue = 2 * sqrt(chroma1 * chroma2) * sin(radians(turn / 2))  # (11)
    lightness, chroma = (one.lightness + other.lightness) / 2, (chroma1 + chroma2) / 2  # (12), (13)
    hue = _mean_angle(hue1, hue2) if has_hue else hue1 + hue2  # (14)

    off_middle = (lightness - 50) ** 2
    of_lightness = (other.lightness - one.lightness) / (
        1 + 0.015 * off_middle / sqrt(20 + off_middle)
    )  # (18)
    of_chroma = (chroma2 - chroma1) / (1 + 0.045 * chroma)  # (19)
    of_hue = by_hue / (1 + 0.015 * chroma * _uneven(hue))  # (20)
    rotation = -sin(radians(60 * exp(-(((hue - 275) / 25) ** 2)))) * 2 * _share_of_chroma(chroma)  # (21)
    return sqrt(of_lightness**2 + of_chroma**2 + of_hue**2 + rotation * of_chroma * of_hue)  # (22)


def _share_of_chroma(chroma: float) -> float:
    """From 0 for a grey to nearly 1 for a strong colour; in (4) and (17)."""
    return sqrt(chroma**7 / (chroma**7 + _FAR_BLUE))


def _angle(a: float, b: float) -> float:
    return degrees(atan2(b, a)) % 360


def _mean_angle(one: float, other: float) -> float:
    """Halfway between two angles, on the shorter way round; (14)."""
    mean = (one + other) / 2
    if abs(one - other) <= 180:
        return mean
    return mean + 180 if mean < 180 else mean - 180


def _uneven(hue: float) -> float:
    """The factor T: how finely an eye tells hues apart there; (15)."""
    return (
        1
        - 0.17 * cos(radians(hue - 30))
        + 0.24 * cos(radians(2 * hue))
        + 0.32 * cos(radians(3 * hue + 6))
        - 0.20 * cos(radians(4 * hue - 63))
    )
