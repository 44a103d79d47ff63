"""Which total costs there can be at all."""

from __future__ import annotations

from math import gcd
from typing import Final

from batchleaf.core.cutting.choose import Terms

LARGEST: Final = 4_000_000
"""Above this only the common divisor of the costs is used."""


class Totals:
    """Sums of sheet costs, each stock as often as it is there, up to ``most``."""

    def __init__(self, terms: Terms, most: int) -> None:
        self._step = gcd(*terms.cost.values()) or 1
        self._reached: int | None = None
        if most // self._step <= LARGEST:
            self._reached = _reached(terms, most // self._step, self._step)

    def at_least(self, cost: int) -> int:
        """The smallest total that is not below ``cost``."""
        steps = -(-cost // self._step)
        if self._reached is not None and self._reached >> steps:
            above = self._reached >> steps
            steps += (above & -above).bit_length() - 1
        return steps * self._step


def _reached(terms: Terms, most: int, step: int) -> int:
    """A number whose bit n is set where n steps can be paid."""
    mask = (1 << (most + 1)) - 1
    reached = 1
    for stock, have in terms.have.items():
        cost = terms.cost[stock] // step
        if cost:
            left = most // cost if have is None else min(have, most // cost)
            many = 1
            while left:
                # Shifts by 1, 2, 4 … sheets, the last one cut short, give every number of them.
                taken = min(many, left)
                reached |= (reached << (cost * taken)) & mask
                left -= taken
                many *= 2
    return reached
