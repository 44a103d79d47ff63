"""The least cost of one group of stocks and parts, found and bounded."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from batchleaf.core.cutting.choose import Chosen, Terms, cheapest, cost_in_fractions, cost_of
from batchleaf.core.cutting.cost_bound import CostBound, cost_bound
from batchleaf.core.cutting.dive import dive
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.near_best import near_best
from batchleaf.core.cutting.patterns import Pool, Pricer, plain_pool, rounds
from batchleaf.core.cutting.search import BEAMS, begin, finish
from batchleaf.core.cutting.totals import Totals


@dataclass(frozen=True, slots=True)
class Enough:
    """Whether the stocks suffice: ``pool`` None where no way was found.

    ``never``: there is none.
    """

    pool: Pool | None
    never: bool = False


@dataclass(frozen=True, slots=True)
class Cost:
    """What was found, and what no way goes below; whole steps of cost."""

    chosen: Chosen
    cost: int
    at_least: int


@dataclass(frozen=True, slots=True)
class _Search:
    terms: Terms
    pool: Pool
    pricer: Pricer
    bound: CostBound
    effort: Effort


def patterns_for(sheets: Sequence[Sheet], wanted: Terms, effort: Effort) -> Enough:
    """Patterns of which some choice gives all that is ``wanted``."""
    pool = plain_pool(sheets, wanted.have, wanted.parts)
    endless = [pattern for pattern in pool.patterns if wanted.have[pattern.stock] is None]
    if all(any(pattern.counts[part] for pattern in endless) for part in wanted.parts):
        return Enough(pool)
    plenty = sum(wanted.each.values())
    counted = replace(
        wanted, have={stock: plenty if have is None else have for stock, have in wanted.have.items()}
    )
    search = begin(sheets, counted, effort)
    makes, bound = finish(search, 1)
    return Enough(search.pool if makes else None, never=not bound)


def least_cost_of_group(sheets: Sequence[Sheet], wanted: Terms, pool: Pool, effort: Effort) -> Cost:
    """``pool`` holds some choice that gives all that is ``wanted``."""
    pricer = Pricer(sheets, wanted.have, effort)
    asked = rounds(pool, pricer, lambda patterns: cost_in_fractions(patterns, wanted).prices)
    bounds = (cost_bound(prices, tables, wanted) for prices, tables in asked)
    search = _Search(wanted, pool, pricer, max(bounds, key=lambda bound: bound.ratio), effort)
    return _finish(search)


def _finish(search: _Search) -> Cost:
    best = _choice(search)
    cost = cost_of(best, search.terms)
    totals = Totals(search.terms, cost)
    target = totals.at_least(search.bound.at_least)
    if cost > target and dive(search.pool, search.pricer, search.terms, cost_in_fractions):
        best = _choice(search)
        cost = cost_of(best, search.terms)
    while cost > target and not search.effort.over:
        if not _closer(search, target):
            break
        best = _choice(search)
        cost = cost_of(best, search.terms)
        if cost > target:
            target = totals.at_least(target + 1)
    return Cost(best, cost, target)


def _choice(search: _Search) -> Chosen:
    chosen = cheapest(search.pool.patterns, search.terms, 1).chosen
    if chosen is None:
        raise AssertionError("patterns that covered what is wanted no longer do")
    return chosen


def _closer(search: _Search, target: int) -> bool:
    """Patterns for a plan at ``target``; False where it stays open whether there is one."""
    for beam in BEAMS:
        complete = _add_near_best(search, target, beam)
        found = cheapest(search.pool.patterns, search.terms, 1)
        if found.chosen is not None and cost_of(found.chosen, search.terms) <= target:
            return True
        if complete:
            return found.at_least > target
        if search.effort.over:
            return False
    return False


def _add_near_best(search: _Search, target: int, beam: int) -> bool:
    """Add what a plan for ``target`` can be made of; whether that is all of it."""
    complete = True
    caps = search.terms.caps(len(next(iter(search.bound.tables.values())).of_part))
    for stock, table in search.bound.tables.items():
        gap = search.bound.gap(search.terms, target, stock)
        if gap < 0:
            continue
        near = near_best(table, gap, caps, search.effort, beam=beam)
        complete &= near.complete
        for piece in near.pieces:
            search.pool.add(stock, piece)
    return complete
