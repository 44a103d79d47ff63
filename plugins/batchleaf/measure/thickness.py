"""How thick something is: ``0.3 mm``, ``12 pt``, ``0.012 in``. Exact, in mm."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import MM_PER_INCH, one_spelling, parse_number
from batchleaf.measure.slips import refuse_slips

MM_PER_POINT: Final = MM_PER_INCH / 1000
"""A point of thickness is a thousandth of an inch (the paper trade's own; not the point of type)."""
_IN_MM: Final = {
    "mm": Fraction(1), "cm": Fraction(10), "in": MM_PER_INCH, "inch": MM_PER_INCH, "inches": MM_PER_INCH,
    '"': MM_PER_INCH, "”": MM_PER_INCH, "″": MM_PER_INCH,
    "pt": MM_PER_POINT, "point": MM_PER_POINT, "points": MM_PER_POINT,
    "mil": MM_PER_POINT, "mils": MM_PER_POINT,
    "µm": Fraction(1, 1000), "μm": Fraction(1, 1000), "um": Fraction(1, 1000),
    "micron": Fraction(1, 1000), "microns": Fraction(1, 1000),
}  # fmt: skip
THINNEST: Final = Fraction(1, 100)
THICKEST: Final = Fraction(100)
"""From tissue to what no envelope takes, in mm."""


def parse_thickness(text: str) -> Fraction:
    """``0.3 mm`` or ``12 pt`` in mm. Raises :class:`MeasureError`, also where no unit is written."""
    refuse_slips(text, "0.3 mm")
    found = re.fullmatch(r"(?P<number>[0-9.][0-9.,/ -]*?)\s*(?P<unit>[^0-9\s./,-]+)?\.?", one_spelling(text))
    if found is None:
        raise MeasureError(f"“{text.strip()}” is no thickness; write for example 0.3 mm, or 12 pt")
    number, unit = parse_number(found["number"]), (found["unit"] or "").lower()
    if not unit:
        raise MeasureError(
            f"“{text.strip()}” does not say in what; write for example 0.3 mm, or 12 pt for points"
        )
    if unit not in _IN_MM:
        raise MeasureError(f"“{unit}” is no unit of thickness; write mm, pt (points) or in")
    thickness = number * _IN_MM[unit]
    if not THINNEST <= thickness <= THICKEST:
        raise MeasureError(
            f"“{text.strip()}” is no thickness for a craft table; it lies between {float(THINNEST):g} and"
            f" {THICKEST} mm"
        )
    return thickness
