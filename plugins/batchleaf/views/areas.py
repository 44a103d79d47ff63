"""Areas of much paper: in square metres or square feet, of little in what is smaller."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.measure.display import show_number
from batchleaf.measure.lengths import INCHES, MM_PER_INCH, Unit
from batchleaf.measure.money import rounded, share


@dataclass(frozen=True, slots=True)
class AreaUnit:
    """``in_mm2``: how many square millimetres it has; shown with ``places`` decimals."""

    name: str
    in_mm2: Fraction
    places: int

    def shown(self, parts: Sequence[Fraction]) -> tuple[str, ...]:
        """The parts and, last, their sum, rounded so that the column adds up."""
        scale = 10**self.places
        whole = rounded(sum(parts, Fraction(0)) / self.in_mm2 * scale)
        return tuple(self._show(Fraction(one, scale)) for one in (*share(whole, parts), whole))

    def _show(self, number: Fraction) -> str:
        whole, _, decimals = show_number(number, self.places).partition(".")
        return f"{whole}.{decimals:0<{self.places}}" if self.places else whole


_METRIC: Final = (AreaUnit("m²", Fraction(1_000_000), 2), AreaUnit("cm²", Fraction(100), 0))
_INCHES: Final = (AreaUnit("ft²", (12 * MM_PER_INCH) ** 2, 2), AreaUnit("in²", MM_PER_INCH**2, 0))
_SMALL_BELOW: Final = 1000
"""So many of the small unit can be read; from there on the large one is told."""


def area_unit(unit: Unit, area: Fraction) -> AreaUnit:
    """The unit for sums up to ``area`` (mm²), of those that go with a maker's unit of length."""
    large, small = _INCHES if unit in INCHES else _METRIC
    return small if area < _SMALL_BELOW * small.in_mm2 else large
