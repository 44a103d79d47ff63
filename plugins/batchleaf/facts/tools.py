"""Tools with their limits; stamps and dies as sets of images."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.terms import NO_TERMS, Terms
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
    images: tuple[Image, ...] = ()
    terms: Terms = NO_TERMS
    link: str = ""
    about: str = ""
    place: Place = field(default=NOWHERE, compare=False)
