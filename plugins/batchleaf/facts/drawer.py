"""What lies in the drawer: supplies, and what came and was counted."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.facts.parts import ShownSide
from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.sticking import Sticks
from batchleaf.facts.terms import NO_TERMS, Terms, Tie
from batchleaf.measure.lengths import Size, Unit


class Grain(StrEnum):
    """How the fibres of a sheet lie."""

    LONG = "long"
    SHORT = "short"
    UNKNOWN = "unknown"


class Direction(StrEnum):
    """How the pattern of a side lies."""

    ONE_WAY = "one-way"
    """It has an up."""
    TWO_WAY = "two-way"
    """It looks the same upside down, not turned by a quarter: stripes."""
    ANY_WAY = "any-way"
    """It may be turned as one likes."""


PLAIN: Final = ("plain", "blank", "white", "unprinted", "one colour")
"""Words of a side that has no pattern."""


@dataclass(frozen=True, slots=True)
class PaperSide:
    """One side of a paper in words, and how its pattern lies."""

    look: str = ""
    direction: Direction = Direction.ANY_WAY


@dataclass(frozen=True, slots=True)
class Trim:
    """What is cut off each edge of a sheet before it can be used: a branding strip, a torn edge."""

    left: Fraction = Fraction(0)
    right: Fraction = Fraction(0)
    top: Fraction = Fraction(0)
    bottom: Fraction = Fraction(0)


class Basis(StrEnum):
    """How the maker knows what something cost."""

    STATED = "stated"
    GUESSED = "guessed"
    GIFT = "gift"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Opening:
    """What was there before the first record; ``value`` None: nobody knows what it cost."""

    date: dt.date
    quantity: Fraction
    value: int | None
    basis: Basis = Basis.STATED
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Scrap:
    """Odd pieces of one size that were in the drawer before the first record."""

    size: Size
    count: int
    value: int | None
    date: dt.date
    basis: Basis = Basis.STATED
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Supply:
    """Anything used up. ``size`` makes it a paper (or card, film) that is cut.

    A pad holds several papers (``designs``), each ``copies`` times. Each of them is
    a supply of its own as well, with the slug of its ``pad`` and its ``number``;
    sheets are bought, counted and priced with the pad.
    """

    slug: str
    name: str
    kind: str
    unit: str
    units: str
    length_unit: Unit
    size: Size | None
    grain: Grain = Grain.UNKNOWN
    front: PaperSide = PaperSide()
    back: PaperSide = PaperSide()
    core: str = ""
    see_through: bool = False
    """What lies behind it shows."""
    trim: Trim = Trim()
    colours: tuple[str, ...] = ()
    colours_are_about: bool = False
    """They were picked from a photo, or by eye."""
    collection: str = ""
    """The range that it was made for, in the maker's word."""
    grammage: Fraction | None = None
    pounds: str = ""
    """The weight as written, where that is in pounds: ``80 lb cover``."""
    thickness: Fraction | None = None
    """Of one sheet, or one piece, in mm."""
    weighs: Fraction | None = None
    """What one of its unit weighs, in grams."""
    envelope: Size | None = None
    """Where it is an envelope: its size, from outside."""
    pack: int = 0
    """How many a pack holds; 0: it is not bought in packs."""
    sticks: Sticks | None = None
    """How much of it sticks one part, where it is an adhesive that says so."""
    designs: int = 0
    copies: int = 0
    pad: str = ""
    number: int = 0
    mark: Fraction | None = None
    """With less than this on hand it is to be bought again; ``None``: never."""
    opening: Opening | None = None
    scraps: tuple[Scrap, ...] = ()
    terms: Terms = NO_TERMS
    link: str = ""
    tie: Tie = Tie.NONE
    about: str = ""
    named: bool = True
    """False: readers are not to know which it is. It goes by its kind, and has no page."""
    by_level: bool = False
    """Nobody measures what an open one still holds: it is full, half, low or empty."""
    supposed: bool = False
    """A batch names it and the drawer does not, so that its name and unit are all that is known."""
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def piece(self, size: Size) -> Size:
        """One name for pieces that are the same: shorter side first, unless a pattern has a direction."""
        return size.upright if self.turns else size

    @property
    def turns(self) -> bool:
        """Whether a piece is the same either way round."""
        return self.front.direction is self.back.direction is Direction.ANY_WAY

    @property
    def grain_runs_down(self) -> bool | None:
        """Whether the fibres run along the second measure of a sheet; of a square, long is down."""
        if self.grain is Grain.UNKNOWN or self.size is None:
            return None
        return (self.grain is Grain.LONG) == (self.size.height >= self.size.width)

    @property
    def colour(self) -> str:
        """The colour it is drawn in, or nothing."""
        return self.colours[0] if self.colours else ""

    @property
    def sheet(self) -> Size:
        """The size of a sheet as bought, for a supply that is cut: a cut line names no other."""
        if self.size is None:
            raise ValueError(f"{self.slug} has no sheet size")
        return self.size

    @property
    def usable(self) -> Size:
        """What is left of a sheet after trimming."""
        trim = self.trim
        return Size(self.sheet.width - trim.left - trim.right, self.sheet.height - trim.top - trim.bottom)

    @property
    def pad_sheets(self) -> int:
        """How many sheets a whole pad has; 0 for what is no pad."""
        return self.designs * self.copies

    def side(self, shown: ShownSide) -> PaperSide:
        """The side that a part shows."""
        return self.front if shown is ShownSide.FRONT else self.back

    def has_pattern(self, shown: ShownSide) -> bool:
        """Whether a side is printed; where its look is not told, kind and colours tell it of the front."""
        look = self.side(shown).look.lower()
        if look:
            return not any(word in look for word in PLAIN)
        return shown is ShownSide.FRONT and ("pattern" in self.kind or len(self.colours) > 1)

    def name_of_unit(self, quantity: Fraction) -> str:
        """The noun that goes with ``quantity``: 1 sheet, 4 sheets."""
        return self.unit if quantity == 1 else self.units


@dataclass(frozen=True, slots=True)
class Purchase:
    """One line of one order; ``value`` includes its share of the delivery."""

    date: dt.date
    supply: str
    quantity: Fraction
    value: int | None
    supplier: str
    basis: Basis = Basis.STATED
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Count:
    """What was found in the drawer at the end of a day; ``about``: only roughly.

    ``piece``: what was counted are odd pieces of that size, as :meth:`Supply.piece` names it.
    """

    date: dt.date
    supply: str
    quantity: Fraction
    about: bool = False
    piece: Size | None = None
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Gone:
    """What left the drawer for something else than a batch; ``why`` in the maker's word."""

    date: dt.date
    supply: str
    piece: Size | None
    quantity: Fraction
    why: str
    place: Place = field(default=NOWHERE, compare=False, repr=False)
