"""Colours in words: a family, and whether it is pale or dark; how near one is to another.

Where pale, dark and near begin is the house's own.
"""

from __future__ import annotations

from typing import Final

from batchleaf.facts import Supply
from batchleaf.measure.colour_difference import lab_of
from batchleaf.measure.colour_families import Family, family_of
from batchleaf.measure.colours import Colour
from batchleaf.views.words import listed

_DARK: Final = 35
"""Of 100 in lightness."""
_PALE, _FAINT = 65, 30
"""Pale is what is so light, and has so little chroma."""
HARDLY_APART, VERY_CLOSE = 2, 5
"""Up to these differences by CIEDE2000; what is further and still near is called close."""


def colour_in_words(text: str) -> str:
    """``pale green`` for ``#bdc8af``."""
    colour = Colour.of(text)
    family, lab = family_of(colour), lab_of(colour)
    if family in (Family.BLACK, Family.WHITE):
        return family.value
    if lab.lightness < _DARK:
        return f"dark {family}"
    return f"pale {family}" if lab.lightness >= _PALE and lab.chroma < _FAINT else family.value


def colours_in_words(supply: Supply) -> str:
    """``pale green, green and pale brown``; ``about dark blue`` where they were picked."""
    words = listed(list(dict.fromkeys(map(colour_in_words, supply.colours))))
    return f"about {words}" if supply.colours_are_about and words else words


def nearness_in_words(difference: float) -> str:
    """How near a colour is that is near."""
    if not difference:
        return "the same colour"
    if difference <= HARDLY_APART:
        return "hardly told apart"
    return "very close" if difference <= VERY_CLOSE else "close"
