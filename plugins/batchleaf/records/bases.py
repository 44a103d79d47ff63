"""Standard card sizes that a base may name instead of its measures.

A named size is the finished one; the fold says how large the blank is.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from batchleaf.facts import Fold
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
    "letter": _inches("17/2", "11"),
    "half-letter": _inches("11/2", "17/2"),
    "quarter-letter": _inches("17/4", "11/2"),
    "slim": _inches("7/2", "17/2"),
}
"""Upright sizes: the A series of ISO 216; letter 8 1/2 x 11 in and its halves; slim by common practice."""


def blank_of(finished: Size, fold: Fold) -> Size:
    """The sheet that folds to ``finished``. A top fold lies along the longer side."""
    match fold:
        case Fold.SIDE:
            return Size(finished.width * 2, finished.height)
        case Fold.TOP:
            lying = finished.turned
            return Size(lying.width, lying.height * 2)
    return finished
