"""Sizes that a base may name instead of its measures, and the envelopes that go with them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import MM_PER_INCH, Size, Unit


def _mm(width: int, height: int) -> Size:
    return Size(Fraction(width), Fraction(height))


def _inches(width: str, height: str) -> Size:
    return Size(Fraction(width) * MM_PER_INCH, Fraction(height) * MM_PER_INCH)


NAMED: Final[dict[str, Size]] = {
    "a4": _mm(210, 297),
    "a5": _mm(148, 210),
    "a6": _mm(105, 148),
    "a7": _mm(74, 105),
    "dl": _mm(99, 210),
    "square": _mm(135, 135),
    "letter": _inches("17/2", "11"),
    "half-letter": _inches("11/2", "17/2"),
    "quarter-letter": _inches("17/4", "11/2"),
    "slim": _inches("7/2", "17/2"),
    "five-inch-square": _inches("5", "5"),
}
"""Upright finished sizes. The A series is that of ISO 216, and dl a third of A4; letter is 8 1/2 x 11 in.

The squares and slim are common practice, from memory.
"""

OWN: Final[dict[str, Size]] = {
    "bookmark": _mm(50, 150),
    "tag": _inches("19/8", "19/4"),
}
"""Things that have a size where none is written, both common practice, from memory.

A tag is the trade's number 5 shipping tag, 2 3/8 x 4 3/4 in.
"""


@dataclass(frozen=True, slots=True)
class Envelope:
    """An envelope on sale everywhere; its size is told in ``unit``."""

    name: str
    size: Size
    unit: Unit

    @property
    def told(self) -> str:
        """``C6 envelope, 114 × 162 mm``."""
        return f"{self.name} envelope, {show_size(self.size, self.unit)}\u00a0{self.unit.value}"


ENVELOPES: Final[dict[str, Envelope]] = {
    "a4": Envelope("C4", _mm(229, 324), Unit.MM),
    "a5": Envelope("C5", _mm(162, 229), Unit.MM),
    "a6": Envelope("C6", _mm(114, 162), Unit.MM),
    "a7": Envelope("C7", _mm(81, 114), Unit.MM),
    "dl": Envelope("DL", _mm(110, 220), Unit.MM),
    "half-letter": Envelope("A9", _inches("23/4", "35/4"), Unit.INCH),
    "quarter-letter": Envelope("A2", _inches("35/8", "23/4"), Unit.INCH),
    "slim": Envelope("slimline", _inches("31/8", "71/8"), Unit.INCH),
    "five-inch-square": Envelope("square", _inches("21/4", "21/4"), Unit.INCH),
}
"""The usual envelope of a standard size: C4 to C7 and DL as in ISO 269, A2, A9 and slimline as in trade.

The square one and which American envelope goes with which card are common
practice, from memory. A size that is missing has no envelope that everybody means.
"""


def envelope_of(finished: Size) -> str:
    """The usual envelope for a piece of this size, or nothing."""
    names = (name for name, size in NAMED.items() if size.upright == finished.upright)
    return next((ENVELOPES[name].told for name in names if name in ENVELOPES), "")
