"""Tools with their limits; stamps and dies as sets of images."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.terms import NO_TERMS, Terms, Tie
from batchleaf.measure.lengths import Size, Unit


@dataclass(frozen=True, slots=True)
class StackLimit:
    """So many sheets at once, of paper up to a grammage (g/m²); ``None``: of any."""

    sheets: int
    up_to: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Image:
    """One image of a set of stamps or dies, numbered from 1."""

    number: int
    size: Size | None
    words: str


@dataclass(frozen=True, slots=True)
class Tool:
    """Anything used and kept, with its limits in mm."""

    slug: str
    name: str
    kind: str
    length_unit: Unit
    longest_cut: Fraction | None = None
    narrowest_strip: Fraction | None = None
    kerf: Fraction = Fraction(0)
    """What its blade takes away at each cut."""
    stack: tuple[StackLimit, ...] = ()
    grooves: tuple[Fraction, ...] = ()
    """Distance from one groove of a score board to the next; several where it has several sets."""
    plate: Size | None = None
    """The largest that goes into it, in mm."""
    stroke: int | None = None
    """How long one stroke with it takes, in seconds, where the maker has looked at the clock."""
    images: tuple[Image, ...] = ()
    terms: Terms = NO_TERMS
    link: str = ""
    tie: Tie = Tie.NONE
    about: str = ""
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    def takes_at_once(self, grammage: Fraction | None) -> int:
        """How many sheets of that weight it takes; one where nothing is said, or the paper is too heavy.

        A paper of unknown weight is taken for the heaviest that the tool takes.
        """
        if grammage is None:
            return self.stack[-1].sheets if self.stack else 1
        fitting = (one.sheets for one in self.stack if one.up_to is None or grammage <= one.up_to)
        return next(fitting, 1)

    @property
    def heaviest(self) -> Fraction | None:
        """The heaviest paper that it takes, in g/m², where it says so."""
        return self.stack[-1].up_to if self.stack else None
