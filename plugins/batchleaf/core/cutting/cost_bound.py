"""The least that a batch can cost, in integers and fractions alone.

Give each part a whole price, and let a unit of cost be worth T. A sheet that costs
c holds parts for F. If F <= c·T for every stock without limit, then parts worth D
in all need

    cost · T  >=  D - Σ have · max(0, F - c·T)     (over the stocks with a limit).

This holds for any prices and any such T; the best T makes one F equal its c·T.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil

from batchleaf.core.cutting.choose import Terms
from batchleaf.core.cutting.patterns import Pattern
from batchleaf.core.cutting.values import Values


@dataclass(frozen=True, slots=True)
class CostBound:
    """No way costs less than ``ratio``; ``worth_of_cost`` is T above (None: there is none)."""

    ratio: Fraction
    wanted: int
    worth_of_cost: Fraction | None
    tables: Mapping[int, Values]

    @property
    def parts(self) -> int:
        """How many parts have a price."""
        return max(len(table.of_part) for table in self.tables.values())

    @property
    def at_least(self) -> int:
        """In whole steps of cost."""
        return ceil(self.ratio)

    def gap(self, terms: Terms, cost: int, stock: int) -> int:
        """How far a sheet of ``stock`` may fall short of its best in a plan for ``cost``."""
        best = self.tables[stock].at_most
        if self.worth_of_cost is None:
            return best
        slack = cost * self.worth_of_cost - self.wanted + _gain(self.tables, terms, self.worth_of_cost)
        lost_anyway = max(Fraction(0), terms.cost[stock] * self.worth_of_cost - best)
        return (slack - lost_anyway).__floor__()

    def within(self, patterns: Iterable[Pattern], terms: Terms, cost: int) -> list[Pattern]:
        """The ``patterns`` for which there is room in a choice of that ``cost``."""
        gaps = {stock: self.gap(terms, cost, stock) for stock in self.tables}
        return [
            pattern
            for pattern in patterns
            if self.tables[pattern.stock].at_most - pattern.worth(self.tables[pattern.stock].of_part)
            <= gaps[pattern.stock]
        ]


def cost_bound(prices: Sequence[int], tables: Mapping[int, Values], terms: Terms) -> CostBound:
    """The best bound under these prices; ``terms.each`` is all that is wanted."""
    wanted = sum(prices[part] * terms.each[part] for part in terms.parts)
    bounds = [
        CostBound((wanted - _gain(tables, terms, worth)) / worth, wanted, worth, tables)
        for worth in _worths(tables, terms)
    ]
    if not bounds:
        return CostBound(Fraction(0), wanted, None, tables)
    best = max(bounds, key=lambda bound: bound.ratio)
    # Prices of a search that was ended early may say less than what is plain: no cost lies below nothing.
    return replace(best, ratio=max(best.ratio, Fraction(0)))


def _worths(tables: Mapping[int, Values], terms: Terms) -> Iterable[Fraction]:
    """Every T that may be the best one; none where sheets without limit and without cost hold anything."""
    free = [stock for stock in tables if terms.have[stock] is None and not terms.cost[stock]]
    if any(tables[stock].at_most for stock in free):
        return ()
    ratios = {
        stock: Fraction(table.at_most, terms.cost[stock])
        for stock, table in tables.items()
        if terms.cost[stock]
    }
    least = max((ratio for stock, ratio in ratios.items() if terms.have[stock] is None), default=Fraction(0))
    return {ratio for ratio in ratios.values() if ratio >= least and ratio > 0}


def _gain(tables: Mapping[int, Values], terms: Terms, worth: Fraction) -> Fraction:
    """What the stocks with a limit hold beyond their cost."""
    return sum(
        (
            (terms.have[stock] or 0) * max(Fraction(0), table.at_most - terms.cost[stock] * worth)
            for stock, table in tables.items()
        ),
        Fraction(0),
    )
