"""The family that a colour belongs to, in a word that everybody uses.

The eleven words are the basic colour terms of English (B. Berlin and P. Kay, "Basic Color Terms",
1969), with violet for purple. No standard says where one ends and the next begins: the boundaries
are the house's own, by lightness, chroma and hue of CIELAB, and set by the eye on papers, on the
names of CSS Color Module Level 4, and on nothing else.
"""

from __future__ import annotations

from enum import StrEnum
from typing import Final

from batchleaf.measure.colour_difference import Lab, lab_of
from batchleaf.measure.colours import Colour


class Family(StrEnum):
    """In the order in which colours are laid: by hue, then those without one."""

    RED = "red"
    ORANGE = "orange"
    BROWN = "brown"
    YELLOW = "yellow"
    GREEN = "green"
    BLUE = "blue"
    VIOLET = "violet"
    PINK = "pink"
    GREY = "grey"
    BLACK = "black"
    WHITE = "white"

    @property
    def has_hue(self) -> bool:
        """Whether it is more than light or dark."""
        return self not in (Family.GREY, Family.BLACK, Family.WHITE)


_NIGHT: Final = 8
"""Below that lightness all is black."""
_BLACK_BELOW, _WHITE_FROM = 20, 88
_TINTED, _TINTED_CREAM = 7, 9
"""The chroma from which a hue is told; cream and sand are taken for white and grey a little longer."""


def family_of(colour: Colour) -> Family:
    """The family of any colour of sRGB."""
    lab = lab_of(colour)
    if lab.lightness < _NIGHT:
        return Family.BLACK
    is_cream = 60 <= lab.hue < 120
    if lab.chroma < (_TINTED_CREAM if is_cream else _TINTED):
        return _without_hue(lab.lightness)
    return _warm(lab) if lab.hue < 110 else _cool(lab)


def _without_hue(lightness: float) -> Family:
    if lightness >= _WHITE_FROM:
        return Family.WHITE
    return Family.BLACK if lightness < _BLACK_BELOW else Family.GREY


def _warm(lab: Lab) -> Family:
    """From rose to yellow: light reds are pink, dark or dull oranges brown, dark yellows olive."""
    if lab.hue < 15:
        return Family.PINK if lab.lightness >= 50 else Family.RED
    if lab.hue < 44:
        dark = Family.RED if lab.chroma >= 25 else Family.BROWN
        return Family.PINK if lab.lightness >= 63 else dark
    if lab.hue < 100 and _is_brown(lab):
        return Family.BROWN
    if lab.hue < 78:
        return Family.ORANGE
    return Family.YELLOW if lab.hue < 100 or lab.lightness >= 65 else Family.GREEN


def _is_brown(lab: Lab) -> bool:
    """Dark as bark, or dull as kraft and sand."""
    return (lab.lightness < 62 and lab.chroma < 75) or (lab.lightness < 85 and lab.chroma < 35)


def _cool(lab: Lab) -> Family:
    """From green round to magenta."""
    if lab.hue < 190:
        return Family.GREEN
    # Blue of one hue to the eye leans towards violet in CIELAB, the more so the stronger it is.
    if lab.hue < min(310.0, 288 + lab.chroma / 4):
        return Family.BLUE
    if lab.hue < 335:
        return Family.VIOLET
    dark = Family.VIOLET if lab.hue < 355 else Family.RED
    return Family.PINK if lab.lightness >= 50 else dark
