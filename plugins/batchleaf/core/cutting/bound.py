"""Bounds that no rounding can break.

Give each part a whole price. A sheet holds parts for at most F in all, so M makes,
worth Σ each·price apiece, need M · Σ each·price <= Σ have·F. This holds for any
prices at all; those of the linear program make it tight. All in integers.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cutting.choose import Terms
from batchleaf.core.cutting.patterns import Pattern
from batchleaf.core.cutting.values import Values


@dataclass(frozen=True, slots=True)
class MakesBound:
    """At most ``at_most`` makes; ``prices`` and ``tables`` are what shows it.

    All sheets at hand are worth ``of_sheets`` at most, one make is worth ``of_make``.
    """

    at_most: int
    of_sheets: int
    of_make: int
    prices: tuple[int, ...]
    tables: Mapping[int, Values]

    @property
    def ratio(self) -> Fraction:
        """The bound before it is rounded down to whole makes."""
        return Fraction(self.of_sheets, self.of_make)

    def slack(self, makes: int) -> int:
        """How far below the best all sheets together may stay if there are to be ``makes``."""
        return self.of_sheets - makes * self.of_make

    def within(self, patterns: Iterable[Pattern], makes: int) -> list[Pattern]:
        """The ``patterns`` that may be used where there are to be ``makes``."""
        slack = self.slack(makes)
        return [
            pattern
            for pattern in patterns
            if self.tables[pattern.stock].at_most - pattern.worth(self.prices) <= slack
        ]


def makes_bound(prices: Sequence[int], tables: Mapping[int, Values], terms: Terms) -> MakesBound:
    """The bound under these prices."""
    sheets, make = worth_of_sheets(tables, terms), worth_of_make(prices, terms)
    return MakesBound(sheets // make, sheets, make, tuple(prices), tables)


def worth_of_make(prices: Sequence[int], terms: Terms) -> int:
    """What one make is worth."""
    return sum(prices[part] * terms.each[part] for part in terms.parts)


def worth_of_sheets(tables: Mapping[int, Values], terms: Terms) -> int:
    """The most that all sheets at hand are worth. Raises ValueError where a stock has no limit."""
    total = 0
    for stock, table in tables.items():
        have = terms.have[stock]
        if have is None:
            raise ValueError("the most makes from sheets without limit have no bound")
        total += have * table.at_most
    return total
