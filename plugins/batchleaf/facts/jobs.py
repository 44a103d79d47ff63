"""A cutting job: which pieces are wanted from which sheets, and what is asked about them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from batchleaf.measure.lengths import Size, Unit


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


@dataclass(frozen=True, slots=True)
class MakesQuestion:
    """How many makes do the sheets at hand give? Each stock of ``job`` has its number."""

    job: Job


@dataclass(frozen=True, slots=True)
class CostQuestion:
    """What is the least cost of sheets for so many ``makes``?"""

    job: Job
    makes: int


@dataclass(frozen=True, slots=True)
class FillQuestion:
    """Which parts make the most of one sheet of ``stock``? The worth of an offer counts ``worth_unit``."""

    stock: Stock
    offers: tuple[Offer, ...]
    worth_unit: Fraction
    kerf: Fraction = Fraction(0)


JobQuestion = MakesQuestion | CostQuestion | FillQuestion


@dataclass(frozen=True, slots=True)
class AskedJob:
    """A question, and the unit in which it was asked and is to be answered."""

    question: JobQuestion
    unit: Unit
