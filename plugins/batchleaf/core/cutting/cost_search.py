"""The least cost of one group of stocks and parts, found and bounded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from typing import Final

from batchleaf.core.cutting.choose import Chosen, Terms, cheapest, cost_in_fractions, cost_of
from batchleaf.core.cutting.closing import ATTEMPTS, add_closer
from batchleaf.core.cutting.cost_bound import CostBound, cost_bound
from batchleaf.core.cutting.dive import dive
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.in_turn import FEW_KINDS, in_turn
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.patterns import Pattern, Pool, Pricer, plain_pool, rounds
from batchleaf.core.cutting.search import begin, finish
from batchleaf.core.cutting.shelves import cheapest_by_rows
from batchleaf.core.cutting.totals import Totals

FIRST_PASSES: Final = 2
MORE_PASSES: Final = 8
LAST_PASSES: Final = 40
"""How often all sheets are filled in turn: before and after known patterns are combined, and at last."""


@dataclass(frozen=True, slots=True)
class Enough:
    """Whether the stocks suffice: ``chosen`` from ``pool`` does, None where no way was found.

    ``never``: there is none.
    """

    pool: Pool
    chosen: Chosen | None
    never: bool = False


@dataclass(frozen=True, slots=True)
class Cost:
    """What was found, and what no way goes below; whole steps of cost."""

    chosen: Chosen
    cost: int
    at_least: int
    bound: CostBound

    @property
    def proved(self) -> bool:
        """True where the bound is met."""
        return self.cost == self.at_least


@dataclass(frozen=True, slots=True)
class _Search:
    terms: Terms
    pool: Pool
    pricer: Pricer
    bound: CostBound
    fillings: Iterator[Chosen | None]
    effort: Effort


def patterns_for(sheets: Sequence[Sheet], wanted: Terms, effort: Effort) -> Enough:
    """Patterns of which some choice gives all that is ``wanted``."""
    pool = plain_pool(sheets, wanted.have, wanted.parts)
    endless = [pattern for pattern in pool.patterns if wanted.have[pattern.stock] is None]
    if all(any(pattern.counts[part] for pattern in endless) for part in wanted.parts):
        return Enough(pool, tuple(_alone(endless, part, wanted.each[part]) for part in wanted.parts))
    in_rows = cheapest_by_rows(sheets, wanted, pool)
    if in_rows is not None:
        return Enough(pool, in_rows)
    plenty = sum(wanted.each.values())
    counted = replace(
        wanted, have={stock: plenty if have is None else have for stock, have in wanted.have.items()}
    )
    search = begin(sheets, counted, effort)
    found = finish(search, 1)
    return Enough(search.pool, found.chosen if found.makes else None, never=not found.at_most)


def _alone(patterns: Sequence[Pattern], part: int, many: int) -> tuple[Pattern, int]:
    """``many`` of one part from sheets that give nothing else."""
    best = max(patterns, key=lambda pattern: pattern.counts[part])
    return best, -(-many // best.counts[part])


def least_cost_of_group(
    sheets: Sequence[Sheet], wanted: Terms, pool: Pool, known: Chosen, effort: Effort
) -> Cost:
    """The least cost of all that is ``wanted``; ``known`` from ``pool`` is one way to get it."""
    pricer = Pricer(sheets, wanted.have, effort)
    fillings = in_turn(sheets, wanted, pool, effort)
    if len(wanted.parts) > FEW_KINDS:
        ways = (cheapest_by_rows(sheets, wanted, pool), *_whole(fillings, FIRST_PASSES))
        known = min([known, *filter(None, ways)], key=lambda chosen: cost_of(chosen, wanted))
    asked = rounds(pool, pricer, lambda patterns: cost_in_fractions(patterns, wanted).prices)
    bounds = (cost_bound(prices, tables, wanted) for prices, tables in asked)
    bound = max(bounds, key=lambda bound: bound.ratio)
    return _finish(_Search(wanted, pool, pricer, bound, fillings, effort), known)


def _whole(fillings: Iterator[Chosen | None], passes: int) -> Iterator[Chosen]:
    """Those of the next so many that give all that is wanted."""
    return (chosen for chosen in islice(fillings, passes) if chosen)


def _finish(search: _Search, known: Chosen) -> Cost:
    best = Cost(known, cost_of(known, search.terms), 0, search.bound)
    totals = Totals(search.terms, best.cost)
    best = replace(best, at_least=totals.at_least(search.bound.at_least))
    if not best.proved:
        best, _ = _better(search, best)
    best = _filled_in_turn(search, best, MORE_PASSES)
    if not best.proved and dive(search.pool, search.pricer, search.terms, cost_in_fractions):
        best, _ = _better(search, best)
    while not best.proved and not search.effort.over:
        best, settled = _closer(search, best)
        if not settled:
            break
        best = replace(best, at_least=totals.at_least(min(best.cost, best.at_least + 1)))
    return _filled_in_turn(search, best, LAST_PASSES)


def _filled_in_turn(search: _Search, best: Cost, passes: int) -> Cost:
    """The cheapest of so many fillings of all sheets, ended where the bound is met."""
    if best.proved or search.effort.over or len(search.terms.parts) <= FEW_KINDS:
        return best
    for chosen in _whole(search.fillings, passes):
        if cost_of(chosen, search.terms) < best.cost:
            best = replace(best, chosen=chosen, cost=cost_of(chosen, search.terms))
            if best.proved:
                break
    return best


def _closer(search: _Search, best: Cost) -> tuple[Cost, bool]:
    """Something cheaper, and whether it is settled that nothing costs as little as the bound."""
    terms, bound = search.terms, search.bound
    gaps = {stock: bound.gap(terms, best.at_least, stock) for stock in bound.tables}
    caps = terms.caps(bound.parts)
    for attempt in ATTEMPTS:
        complete = add_closer(search.pool, search.pricer, bound.tables, gaps, caps, attempt)
        best, at_least = _better(search, best)
        if best.proved:
            return best, False
        if complete or search.effort.over:
            return best, complete and at_least > best.at_least
    return best, False


def _better(search: _Search, best: Cost) -> tuple[Cost, float]:
    """The cheapest choice now, and what the solver finds nothing below among the known patterns."""
    useful = search.bound.within(search.pool.patterns, search.terms, best.cost - 1)
    search.effort.step(3 * len(useful))
    seconds = search.effort.seconds_left
    if seconds == 0:
        return best, 0
    found = cheapest(useful, search.terms, below=best.cost, seconds=seconds)
    if found.chosen is None:
        return best, found.at_least
    return replace(best, chosen=found.chosen, cost=cost_of(found.chosen, search.terms)), found.at_least
