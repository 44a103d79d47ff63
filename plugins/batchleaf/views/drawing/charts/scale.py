"""A rule for a chart: from nothing, in round steps, over the highest value."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import count
from typing import Final

from batchleaf.measure.display import show_aligned

_PLACES: Final = 12
"""More decimals than any step has."""
_FINE: Final = {1: 5, 2: 4, 5: 5}
"""Into how many parts ticks divide a step of 1, 2 or 5 times a power of ten."""


@dataclass(frozen=True, slots=True)
class Scale:
    """A rule as long as ``top``: a figure at each ``step``, and ``parts`` ticks from one to the next."""

    top: Fraction
    step: Fraction
    parts: int

    def figures(self) -> list[tuple[Fraction, str]]:
        """What is written at which value, with as many decimals everywhere."""
        values = [self.step * i for i in range(int(self.top / self.step) + 1)]
        return list(zip(values, show_aligned(values, _PLACES), strict=True))

    def ticks(self) -> list[Fraction]:
        """The values that have a tick and no figure."""
        part = self.step / self.parts
        values = [part * i for i in range(int(self.top / part) + 1)]
        return [value for value in values if (value / self.step).denominator != 1]


def scale_for(highest: Fraction, most: int, *, whole: bool = False) -> Scale:
    """The rule with the finest step of 1, 2 or 5 times a power of ten that has at most ``most`` steps.

    It ends with the first tick that ``highest`` does not pass. ``whole``: of what is
    counted there is no half.
    """
    steps = (one for one in _steps(highest / most) if not whole or one[1] >= 1)
    lead, step = next((lead, step) for lead, step in steps if highest <= most * step)
    parts = _FINE[lead]
    if whole:
        parts = next(one for one in (parts, 2, 1) if (step / one).denominator == 1)
    part = step / parts
    return Scale(top=max(-(-highest // part) * part, step), step=step, parts=parts)


def _steps(least: Fraction) -> Iterator[tuple[int, Fraction]]:
    """Round steps from about ``least`` on."""
    start = 0
    while least and Fraction(10) ** start > least:
        start -= 1
    for power in count(start):
        for lead in (1, 2, 5):
            yield lead, lead * Fraction(10) ** power
