"""The weight of paper: grammage, or pounds with their basis.

The pounds of a paper are those of 500 sheets of its basic size, and that size
goes with the kind of paper: 80 lb cover is 216 g/m², 80 lb text 118. Pounds
without a basis mean nothing.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import MM_PER_INCH, parse_number

GRAMS_PER_POUND: Final = Fraction(45_359_237, 100_000)
"""Exactly (international pound, 1 July 1959; NIST SP 447, appendix 5)."""
SHEETS: Final = 500
_TEXT: Final = (Fraction(25), Fraction(38))
BASIC_SIZES: Final[dict[str, tuple[Fraction, Fraction]]] = {
    "cover": (Fraction(20), Fraction(26)),
    "text": _TEXT,
    "book": _TEXT,
    "offset": _TEXT,
    "index": (Fraction(51, 2), Fraction(61, 2)),
    "bristol": (Fraction(45, 2), Fraction(57, 2)),
    "bond": (Fraction(17), Fraction(22)),
    "tag": (Fraction(24), Fraction(36)),
}
"""Basis → its basic size in inches."""
LIGHTEST: Final = 5
HEAVIEST: Final = 5000
"""From tissue to board three millimetres thick, in g/m²; by common practice."""

_POUNDS: Final = re.compile(r"(?P<number>.*?)\s*(?:lbs?|pounds?|#)\.?\s*(?P<basis>.*)", re.IGNORECASE)
_GRAMS: Final = re.compile(r"(?P<number>.*?)\s*(?:g\s*/\s*m(?:²|2|\^2)|gsm|g)?", re.IGNORECASE)


def grammage_of(pounds: Fraction, basis: str) -> Fraction:
    """``pounds`` of ``basis`` in g/m², exactly: pounds × 453.59237 g ÷ (500 × basic size)."""
    width, height = (side * MM_PER_INCH / 1000 for side in BASIC_SIZES[basis])
    return pounds * GRAMS_PER_POUND / (SHEETS * width * height)


def parse_grammage(text: str) -> Fraction:
    """``216 g/m²``, ``216 gsm``, ``216`` or ``80 lb cover`` in g/m². Raises :class:`MeasureError`."""
    pounds = _POUNDS.fullmatch(text.strip())
    weight = _from_pounds(text, pounds) if pounds else _from_grams(text)
    if not LIGHTEST <= weight <= HEAVIEST:
        raise MeasureError(
            f"“{text.strip()}” is no weight of paper; it lies between {LIGHTEST} and {HEAVIEST} g/m²"
        )
    return weight


def in_pounds(text: str) -> bool:
    """Whether a weight is written in pounds."""
    return _POUNDS.fullmatch(text.strip()) is not None


def _from_grams(text: str) -> Fraction:
    found = _GRAMS.fullmatch(text.strip())
    try:
        return parse_number(found["number"] if found else text)
    except MeasureError:
        raise MeasureError(
            f"“{text.strip()}” is no weight of paper; write for example 216 g/m², or 80 lb cover"
        ) from None


def _from_pounds(text: str, found: re.Match[str]) -> Fraction:
    basis, number = found["basis"].strip().lower(), found["number"].strip()
    if not number:
        raise MeasureError(f"“{text.strip()}” does not say how many pounds; write for example 80 lb cover")
    if not basis:
        raise MeasureError(
            f"“{text.strip()}” has no basis: cover, text or index? write for example {number} lb cover"
        )
    if basis not in BASIC_SIZES:
        raise MeasureError(f"“{basis}” is no basis of pounds; write cover, text, index, bristol, bond or tag")
    return grammage_of(parse_number(number), basis)
