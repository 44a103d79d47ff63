"""The most makes of one group of stocks and parts, found and bounded."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from batchleaf.core.cutting.bound import MakesBound, makes_bound
from batchleaf.core.cutting.choose import Makes, Terms, most_from, share_covered
from batchleaf.core.cutting.closing import ATTEMPTS, add_closer
from batchleaf.core.cutting.dive import dive
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.patterns import Pool, Pricer, plain_pool, rounds


@dataclass(frozen=True, slots=True)
class Search:
    """What is known about one group; its pool grows as the search goes on."""

    terms: Terms
    pool: Pool
    pricer: Pricer
    bound: MakesBound
    effort: Effort


def begin(sheets: Sequence[Sheet], terms: Terms, effort: Effort) -> Search:
    """Patterns and a bound from prices alone: column generation until no pattern is better."""
    pool = plain_pool(sheets, terms.have, terms.parts)
    pricer = Pricer(sheets, terms.have, effort)
    asked = rounds(pool, pricer, lambda patterns: share_covered(patterns, terms).prices)
    bounds = (makes_bound(prices, tables, terms) for prices, tables in asked)
    return Search(terms, pool, pricer, min(bounds, key=lambda bound: bound.ratio), effort)


def finish(search: Search, cap: int) -> Makes:
    """The most makes found, not above ``cap``, and in ``at_most`` the bound shown for them."""
    terms, pool = search.terms, search.pool
    target = min(search.bound.at_most, cap)
    found = most_from(pool.patterns, terms, target)
    if found.makes < target and dive(pool, search.pricer, terms.times(target), share_covered):
        found = most_from(pool.patterns, terms, target)
    while found.makes < target and not search.effort.over:
        closer = _closer(search, found, target)
        if closer is None:
            break
        found, target = closer
    return replace(found, at_most=target)


def _closer(search: Search, found: Makes, target: int) -> tuple[Makes, int] | None:
    """More makes, or a lower target; None where neither comes of it."""
    terms, bound = search.terms, search.bound
    gaps = dict.fromkeys(bound.tables, bound.slack(target))
    caps = terms.times(target).caps(len(bound.prices))
    for attempt in ATTEMPTS:
        complete = add_closer(search.pool, search.pricer, bound.tables, gaps, caps, attempt)
        search.effort.step(3 * len(search.pool))
        better = most_from(search.pool.patterns, terms, target)
        if better.makes > found.makes:
            found = better
        if found.makes == target:
            return found, target
        if complete and better.at_most < target:
            return found, target - 1
        if complete or search.effort.over:
            break
    return None
