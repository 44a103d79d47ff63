"""Envelopes on sale everywhere, by name and size."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.measure.display import NBSP, show_size
from batchleaf.measure.lengths import MM_PER_INCH, Size, Unit


@dataclass(frozen=True, slots=True)
class Envelope:
    """An envelope; its size is told in ``unit``. ``supply``: the maker's own, by its short name."""

    name: str
    size: Size
    unit: Unit
    supply: str = ""

    @property
    def measures(self) -> str:
        """``114 × 162 mm``."""
        return f"{show_size(self.size, self.unit)}{NBSP}{self.unit.value}"

    @property
    def told(self) -> str:
        """``C6 envelope, 114 × 162 mm``."""
        return f"{self.name} envelope, {self.measures}"


def _mm(name: str, width: int, height: int) -> Envelope:
    return Envelope(name, Size(Fraction(width), Fraction(height)), Unit.MM)


def _inches(name: str, width: str, height: str) -> Envelope:
    return Envelope(name, Size(Fraction(width) * MM_PER_INCH, Fraction(height) * MM_PER_INCH), Unit.INCH)


METRIC: Final = (
    _mm("C7", 81, 114),
    _mm("C7/C6", 81, 162),
    _mm("C6", 114, 162),
    _mm("B6", 125, 176),
    _mm("DL", 110, 220),
    _mm("C6/C5", 114, 229),
    _mm("C5", 162, 229),
    _mm("B5", 176, 250),
    _mm("C4", 229, 324),
    _mm("B4", 250, 353),
    _mm("square 155", 155, 155),
    _mm("square 160", 160, 160),
)
"""ISO 269: C4 to C7 and DL as in reportlab and Debian's paperconf, the others as in printed tables of the
standard. The square ones are common practice, from memory."""
AMERICAN: Final = (
    _inches("A1", "29/8", "41/8"),
    _inches("A2", "35/8", "23/4"),
    _inches("A6", "19/4", "13/2"),
    _inches("A7", "21/4", "29/4"),
    _inches("A8", "11/2", "65/8"),
    _inches("A9", "23/4", "35/4"),
    _inches("A10", "6", "19/2"),
    _inches("#10", "33/8", "19/2"),
    _inches("slimline", "31/8", "71/8"),
    _inches("square", "21/4", "21/4"),
    _inches("large square", "13/2", "13/2"),
)
"""As in trade. The square ones are common practice, from memory."""


def on_sale(unit: Unit) -> tuple[Envelope, ...]:
    """Those that are sold where lengths are told in ``unit``."""
    return AMERICAN if unit is Unit.INCH else METRIC


def named(name: str) -> Envelope:
    """The envelope on sale with this name. Raises :class:`KeyError`."""
    return _NAMED[name]


_NAMED: Final = {one.name: one for one in (*METRIC, *AMERICAN)}
