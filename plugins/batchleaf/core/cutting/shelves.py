"""Sheet after sheet filled in rows: a way to cut a batch that is there at once.

A row filling is seldom the best, but it is a true plan. Where there are many kinds
of parts it says at once what goes together, which prices alone find out slowly.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from batchleaf.core.cutting.choose import Chosen, Makes, Terms
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.patterns import Pattern, Pool
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.shelf_rows import MANNERS, Manner, Row, as_arrangement, count_of, rows_on


@dataclass(frozen=True, slots=True)
class _Alike:
    """``times`` sheets of one stock with the same rows."""

    stock: int
    rows: tuple[Row, ...]
    along: Axis
    times: int


_Filling = tuple[_Alike, ...]


def most_by_rows(sheets: Sequence[Sheet], terms: Terms, pool: Pool, effort: Effort) -> Makes:
    """The makes that row filling finds: 1, 2, 4 … of them, then what lies between; at most by area.

    Every filled sheet of a demand that was met joins ``pool``. One make is asked
    for even where the effort is over: it is what keeps an answer from being empty.
    """
    cap = _cap(sheets, terms)
    best = Makes(0, (), cap)
    step, growing = 1, True
    while step and (effort.step() or not best.makes):
        makes = best.makes + step
        filling = next(_fillings(sheets, terms.times(makes)), None) if makes <= cap else None
        growing = growing and filling is not None
        if filling:
            best = Makes(makes, _kept(pool, filling), cap)
        step = best.makes if growing else step // 2
    return best


def cheapest_by_rows(sheets: Sequence[Sheet], wanted: Terms, pool: Pool) -> Chosen | None:
    """The cheapest row filling that gives all that is ``wanted``; its sheets join ``pool``."""
    cheapest = min(_fillings(sheets, wanted), key=lambda filling: _cost(filling, wanted), default=None)
    return None if cheapest is None else _kept(pool, cheapest)


def _cost(filling: _Filling, wanted: Terms) -> int:
    return sum(wanted.cost[alike.stock] * alike.times for alike in filling)


def _cap(sheets: Sequence[Sheet], terms: Terms) -> int:
    """No more makes than there is paper for. All stocks have a limit here."""
    there = sum(
        (have or 0) * sheets[stock].width * sheets[stock].height for stock, have in terms.have.items()
    )
    least: dict[int, int] = {}
    for stock in terms.have:
        for shape in sheets[stock].shapes:
            least[shape.part] = shape.width * shape.height
    return there // sum(least[part] * terms.each[part] for part in terms.parts)


def _fillings(sheets: Sequence[Sheet], wanted: Terms) -> Iterator[_Filling]:
    """Every row filling that gives all that is wanted."""
    for manner, order in product(MANNERS, _orders(sheets, wanted)):
        filling = _filling(sheets, wanted, order, manner)
        if filling is not None:
            yield filling


def _orders(sheets: Sequence[Sheet], wanted: Terms) -> tuple[tuple[int, ...], ...]:
    """What costs least for its size first, and the other way: large sheets first."""

    def size(stock: int) -> int:
        return sheets[stock].width * sheets[stock].height

    by_cost = sorted(wanted.have, key=lambda stock: (wanted.cost[stock] / size(stock), size(stock), stock))
    by_size = sorted(wanted.have, key=lambda stock: (-size(stock), stock))
    return tuple(dict.fromkeys((tuple(by_cost), tuple(by_size))))


def _filling(sheets: Sequence[Sheet], wanted: Terms, order: Sequence[int], manner: Manner) -> _Filling | None:
    """Sheets in their order until nothing is wanted; None where they do not reach."""
    rest = {part: wanted.each[part] for part in wanted.parts}
    filled: list[_Alike] = []
    for stock in order:
        left = wanted.have[stock]
        while rest and left != 0:
            rows = rows_on(sheets[stock], rest, manner)
            if not rows:
                break
            counts = _counts(rows)
            times = max(1, min(rest[part] // many for part, many in counts.items()))
            if left is not None:
                times = min(times, left)
                left -= times
            rest = {p: need for p, n in rest.items() if (need := n - times * counts.get(p, 0)) > 0}
            filled.append(_Alike(stock, rows, manner.along, times))
    return None if rest else tuple(filled)


def _counts(rows: Sequence[Row]) -> dict[int, int]:
    counts: dict[int, int] = {}
    for row in rows:
        for part, many in count_of(row.blocks).items():
            counts[part] = counts.get(part, 0) + many * row.times
    return counts


def _kept(pool: Pool, filling: _Filling) -> Chosen:
    """``filling`` as patterns, which also join ``pool``."""
    chosen: list[tuple[Pattern, int]] = []
    for alike in filling:
        piece = as_arrangement(alike.rows, alike.along)
        if piece is not None:
            chosen.append((pool.take(alike.stock, piece), alike.times))
    return tuple(chosen)
