"""What something weighs: ``0.4 g``, ``3.5 oz``. Exact, in grams."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.grammage import GRAMS_PER_POUND
from batchleaf.measure.lengths import one_spelling, parse_number
from batchleaf.measure.slips import refuse_slips

GRAMS_PER_OUNCE: Final = GRAMS_PER_POUND / 16
"""28.349523125 g exactly: a sixteenth of the international pound (NIST SP 447, appendix 5)."""
_IN_GRAMS: Final = {
    "mg": Fraction(1, 1000), "g": Fraction(1), "gram": Fraction(1), "grams": Fraction(1),
    "kg": Fraction(1000),
    "oz": GRAMS_PER_OUNCE, "ounce": GRAMS_PER_OUNCE, "ounces": GRAMS_PER_OUNCE,
    "lb": GRAMS_PER_POUND, "lbs": GRAMS_PER_POUND,
}  # fmt: skip
HEAVIEST: Final = Fraction(100_000)
"""Nobody lifts more than that onto a craft table, in grams."""


def parse_mass(text: str) -> Fraction:
    """``0.4 g`` or ``3.5 oz`` in grams. Raises :class:`MeasureError`, also where no unit is written."""
    refuse_slips(text, "0.4 g")
    found = re.fullmatch(r"(?P<number>[0-9.][0-9.,/ -]*?)\s*(?P<unit>[^\W\d_]+)?\.?", one_spelling(text))
    if found is None:
        raise MeasureError(f"“{text.strip()}” is no weight; write for example 0.4 g, or 3.5 oz")
    number, unit = parse_number(found["number"]), (found["unit"] or "").lower()
    if not unit:
        raise MeasureError(f"“{text.strip()}” does not say in what; write for example {text.strip()} g")
    if unit not in _IN_GRAMS:
        raise MeasureError(f"“{unit}” is no unit of weight; write g or oz")
    mass = number * _IN_GRAMS[unit]
    if not 0 < mass <= HEAVIEST:
        raise MeasureError(f"“{text.strip()}” is no weight for a craft table; it is above 0 and below 100 kg")
    return mass
