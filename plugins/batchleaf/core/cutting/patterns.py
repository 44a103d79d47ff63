"""Ways of cutting one sheet, and how new ones are found.

Column generation after Gilmore and Gomory (Operations Research 9 (1961) 849-859):
the linear program over the patterns known so far gives each part a price; the
best pattern under these prices joins, until none is better than what is known.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row, parts_of
from batchleaf.core.cutting.values import Values, best_values

PRICE_STEPS: Final = 1 << 30
"""Prices are whole multiples of this fraction of the dearest part's price."""


CUTS_A_STEP: Final = 20_000


@dataclass(frozen=True, slots=True)
class Pattern:
    """``stock`` counts in the job's stocks; ``counts`` by part of the job."""

    stock: int
    counts: tuple[int, ...]
    piece: Arrangement = field(compare=False)

    def worth(self, prices: Sequence[int]) -> int:
        """What its parts are worth together."""
        return sum(price * count for price, count in zip(prices, self.counts, strict=True))


class Pool:
    """All patterns found so far, in the order in which they were found."""

    def __init__(self, parts: int) -> None:
        self._parts = parts
        self._known: dict[tuple[int, tuple[int, ...]], Pattern] = {}

    def __len__(self) -> int:
        return len(self._known)

    @property
    def patterns(self) -> tuple[Pattern, ...]:
        """Every pattern, each once."""
        return tuple(self._known.values())

    def add(self, stock: int, piece: Arrangement | None) -> bool:
        """Keep ``piece`` as a way of cutting ``stock``; whether it is new."""
        if piece is None:
            return False
        found = parts_of(piece)
        counts = tuple(found[part] for part in range(self._parts))
        if (stock, counts) in self._known:
            return False
        self._known[stock, counts] = Pattern(stock, counts, piece)
        return True


def plain_grid(sheet: Sheet, part: int) -> Arrangement | None:
    """As many of one part as rows and columns lying one way give."""
    lying = [shape for shape in sheet.shapes if shape.part == part]
    if not lying:
        return None
    shape = max(lying, key=lambda s: (sheet.width // s.width) * (sheet.height // s.height))
    row = in_a_row(Axis.X, [Leaf(shape)] * (sheet.width // shape.width))
    return in_a_row(Axis.Y, [row] * (sheet.height // shape.height)) if row else None


def whole_prices(prices: Iterable[float]) -> tuple[int, ...]:
    """``prices`` as integers, none 0, so that worthless parts still fill what is free."""
    known = [max(0.0, price) for price in prices]
    top = max(known, default=0.0)
    if top <= 0:
        return (1,) * len(known)
    return tuple(max(1, int(price / top * PRICE_STEPS)) for price in known)


class Pricer:
    """The best pattern of every stock under given prices; equal sheets share one table."""

    def __init__(self, sheets: Sequence[Sheet], stocks: Iterable[int], effort: Effort) -> None:
        self._sheets = sheets
        self.effort = effort
        self.stocks = tuple(stocks)

    @property
    def has_time(self) -> bool:
        """Whether the caller wants more."""
        return not self.effort.over

    def values(self, prices: Sequence[int]) -> dict[int, Values]:
        """A table for each stock."""
        tables: dict[Sheet, Values] = {}
        for stock in self.stocks:
            sheet = self._sheets[stock]
            if sheet not in tables:
                tables[sheet] = self.table(stock, prices)
        return {stock: tables[self._sheets[stock]] for stock in self.stocks}

    def table(self, stock: int, prices: Sequence[int]) -> Values:
        """A table for one stock."""
        table = best_values(self._sheets[stock], prices)
        self.effort.step(1 + table.grid.work // CUTS_A_STEP)
        return table

    def improve(self, pool: Pool, tables: dict[int, Values]) -> bool:
        """Add every best pattern that is worth more than all known ones; whether there was one."""
        better = False
        for stock, table in tables.items():
            known = max(
                (pattern.worth(table.of_part) for pattern in pool.patterns if pattern.stock == stock),
                default=0,
            )
            if table.whole_sheet > known:
                better |= pool.add(stock, table.arrangement())
        return better


Ask = Callable[[tuple[Pattern, ...]], Sequence[float]]
"""Patterns to prices, by part of the job."""


def rounds(pool: Pool, pricer: Pricer, ask: Ask) -> Iterator[tuple[tuple[int, ...], dict[int, Values]]]:
    """Prices and tables, again and again, until no pattern is better than those of ``pool``."""
    while True:
        prices = whole_prices(ask(pool.patterns))
        tables = pricer.values(prices)
        better = pricer.improve(pool, tables)
        yield prices, tables
        if not better or not pricer.has_time:
            return


def plain_pool(sheets: Sequence[Sheet], stocks: Iterable[int], parts: Iterable[int]) -> Pool:
    """A start: plain grids of every part on every stock."""
    pool = Pool(1 + max(shape.part for sheet in sheets for shape in sheet.shapes))
    wanted = tuple(parts)
    for stock in stocks:
        for part in wanted:
            pool.add(stock, plain_grid(sheets[stock], part))
    return pool
