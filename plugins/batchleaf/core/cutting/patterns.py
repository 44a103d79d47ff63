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
from batchleaf.core.cutting.grid import Grid, grid_of, work_ahead
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row, parts_of
from batchleaf.core.cutting.thin_grid import thin_grid_of
from batchleaf.core.cutting.values import Values, values_on

PRICE_STEPS: Final = 1 << 30
"""Prices are whole multiples of this fraction of the dearest part's price."""


CUTS_A_STEP: Final = 20_000
STEPS_A_TABLE: Final = 500
"""A table that would take more is made on a thin grid."""


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
        before = len(self)
        if piece is not None:
            self.take(stock, piece)
        return len(self) > before

    def take(self, stock: int, piece: Arrangement) -> Pattern:
        """The pattern that gives what ``piece`` gives; it is ``piece`` where there was none."""
        found = parts_of(piece)
        counts = tuple(found[part] for part in range(self._parts))
        return self._known.setdefault((stock, counts), Pattern(stock, counts, piece))


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
        grid = self._grid(self._sheets[stock])
        self.effort.step(1 + grid.work // CUTS_A_STEP)
        return values_on(grid, prices)

    def _grid(self, sheet: Sheet) -> Grid:
        """The whole grid of ``sheet``, or a thin one where a single pass would take too much."""
        steps = work_ahead(sheet) // CUTS_A_STEP
        if steps <= STEPS_A_TABLE and self.effort.affords(steps):
            return grid_of(sheet)
        return thin_grid_of(sheet)

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
