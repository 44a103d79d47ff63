"""Sizes that a base may name instead of its measures, and the envelopes that go with them."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from batchleaf.facts.envelopes import named
from batchleaf.measure.lengths import MM_PER_INCH, Size


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


ENVELOPES: Final[dict[str, str]] = {
    "a4": "C4",
    "a5": "C5",
    "a6": "C6",
    "a7": "C7",
    "dl": "DL",
    "half-letter": "A9",
    "quarter-letter": "A2",
    "slim": "slimline",
    "five-inch-square": "square",
}
"""The usual envelope of a standard size.

Which American envelope goes with which card is common practice, from memory. A size that
is missing has no envelope that everybody means.
"""


def envelope_of(finished: Size) -> str:
    """The usual envelope for a piece of this size, or nothing."""
    names = (name for name, size in NAMED.items() if size.upright == finished.upright)
    return next((named(ENVELOPES[name]).told for name in names if name in ENVELOPES), "")
