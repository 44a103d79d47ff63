"""Short ways of writing jobs in tests: sizes in mm, ``8.5 x 11`` in inches as text."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size, Unit, parse_size


def mm(width: int | Fraction, height: int | Fraction) -> Size:
    """A size in mm."""
    return Size(Fraction(width), Fraction(height))


def inches(text: str) -> Size:
    """A size such as ``8 1/2 x 11``, in mm."""
    return parse_size(text, Unit.INCH)


def part(name: str, size: Size, each: int = 1, *, turns: bool = True) -> PartKind:
    """A part that may come from any stock."""
    return PartKind(name, size, each, turns)


def one_stock(size: Size, have: int, *parts: PartKind, kerf: Fraction = Fraction(0)) -> Job:
    """A job with one kind of sheet."""
    return Job((Stock("card", size, have),), parts, kerf)
