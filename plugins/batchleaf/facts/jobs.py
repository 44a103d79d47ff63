"""A cutting job: which pieces are wanted from which sheets, and what is asked about them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class Stock:
    """One kind of sheet or scrap. ``have`` None: no limit. ``cost`` in any one unit.

    ``name`` is what sentences call it ("chalk card"); it may be empty.
    """

    id: str
    size: Size
    have: int | None = None
    cost: Fraction = Fraction(1)
    scrap: bool = False
    name: str = ""


@dataclass(frozen=True, slots=True)
class PartKind:
    """A rectangle wanted ``each`` times a make; ``sources`` are stock ids (empty: any).

    ``name`` is what sentences call it besides its id ("base"); it may be empty.
    """

    id: str
    size: Size
    each: int = 1
    turns: bool = True
    sources: tuple[str, ...] = ()
    name: str = ""


@dataclass(frozen=True, slots=True)
class Job:
    """Lengths in mm. ``kerf`` is lost at each cut."""

    stocks: tuple[Stock, ...]
    parts: tuple[PartKind, ...]
    kerf: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Offer:
    """A part that is worth ``worth`` (a whole number) up to ``most`` times (None: always)."""

    part: PartKind
    worth: int
    most: int | None = None
