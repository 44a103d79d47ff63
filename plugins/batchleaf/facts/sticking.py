"""How parts are stuck on, and how much of an adhesive that takes.

A part counts with its whole rectangle here, whatever shape is cut from it.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from math import ceil

from batchleaf.measure.lengths import Size


class Sides(StrEnum):
    """The sides of a part along which a strip lies. Of a square each is as long as any other."""

    TWO_LONG = "two long sides"
    ONE_LONG = "one long side"
    TWO_SHORT = "two short sides"
    ONE_SHORT = "one short side"
    ALL = "all sides"

    def along(self, part: Size) -> Fraction:
        """How long they are together, in mm; it is the same however the part is turned."""
        shorter, longer = part.upright.width, part.upright.height
        match self:
            case Sides.TWO_LONG:
                return 2 * longer
            case Sides.ONE_LONG:
                return longer
            case Sides.TWO_SHORT:
                return 2 * shorter
            case Sides.ONE_SHORT:
                return shorter
            case Sides.ALL:
                return 2 * (longer + shorter)


@dataclass(frozen=True, slots=True)
class Strips:
    """Strips along sides of a part, of a supply kept by length; ``in_mm``: how long one of its unit is."""

    sides: Sides
    in_mm: Fraction

    def for_one(self, part: Size) -> Fraction:
        """How much sticks one part, in the supply's own unit, exactly."""
        return self.sides.along(part) / self.in_mm


@dataclass(frozen=True, slots=True)
class Dots:
    """So many of a counted supply for each ``area`` of a part, and at least so many."""

    count: int
    area: Size
    least: int = 1

    def for_one(self, part: Size) -> Fraction:
        """How many stick one part: a begun dot is a whole one."""
        return Fraction(max(ceil(part.area * self.count / self.area.area), self.least))


@dataclass(frozen=True, slots=True)
class Coat:
    """So much of a supply kept by volume or mass for each ``area`` of a part."""

    amount: Fraction
    area: Size

    def for_one(self, part: Size) -> Fraction:
        """How much sticks one part, in the supply's own unit, exactly."""
        return self.amount * part.area / self.area.area


Sticks = Strips | Dots | Coat
"""How much of a supply sticks one part."""


@dataclass(frozen=True, slots=True)
class Stuck:
    """What a part is stuck with, and how much one takes, in the supply's own unit.

    ``amount`` None: the batch says of the supply as a whole how much it takes.
    """

    supply: str
    amount: Fraction | None
