"""The most makes of one group of stocks and parts, found and bounded."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import islice
from typing import Final

from batchleaf.core.cutting.bound import MakesBound, makes_bound
from batchleaf.core.cutting.choose import Makes, Terms, most_from, share_covered
from batchleaf.core.cutting.closing import ATTEMPTS, add_closer
from batchleaf.core.cutting.dive import dive
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.in_turn import FEW_KINDS, in_turn
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.patterns import Pool, Pricer, plain_pool, rounds
from batchleaf.core.cutting.shelves import most_by_rows

PASSES: Final = 8
"""How often all sheets are filled in turn for one number of makes."""


@dataclass(frozen=True, slots=True)
class Search:
    """What is known about one group; its pool grows as the search goes on."""

    sheets: Sequence[Sheet]
    terms: Terms
    pool: Pool
    pricer: Pricer
    bound: MakesBound
    known: Makes
    """What rows give: never less than this is found."""
    effort: Effort


def begin(sheets: Sequence[Sheet], terms: Terms, effort: Effort) -> Search:
    """Patterns and a bound: rows, then column generation until no pattern is better."""
    pool = plain_pool(sheets, terms.have, terms.parts)
    known = most_by_rows(sheets, terms, pool, effort)
    pricer = Pricer(sheets, terms.have, effort)
    asked = rounds(pool, pricer, lambda patterns: share_covered(patterns, terms).prices)
    bounds = (makes_bound(prices, tables, terms) for prices, tables in asked)
    bound = min(bounds, key=lambda bound: bound.ratio)
    bound = replace(bound, at_most=min(bound.at_most, known.at_most))
    return Search(sheets, terms, pool, pricer, bound, known, effort)


def finish(search: Search, cap: int) -> Makes:
    """The most makes found, not above ``cap``, and in ``at_most`` the bound shown for them.

    That bound is the group's own: ``cap`` says what others can do, and shows nothing here.
    """
    terms, pool = search.terms, search.pool
    target = min(search.bound.at_most, cap)
    found = _most(search, search.known, target)
    if found.makes < target and dive(pool, search.pricer, terms.times(target), share_covered):
        found = _most(search, found, target)
    if found.makes < target and not search.effort.over and len(terms.parts) > FEW_KINDS:
        found = _filled_in_turn(search, found, target)
    while found.makes < target and not search.effort.over:
        closer = _closer(search, found, target)
        if closer is None:
            break
        found, target = closer
    shown = target if target < min(search.bound.at_most, cap) else search.bound.at_most
    return replace(found, makes=min(found.makes, target), at_most=shown)


def _most(search: Search, found: Makes, target: int) -> Makes:
    """The most makes from all patterns known by now, or what was ``found`` before."""
    seconds = search.effort.seconds_left
    if seconds == 0:
        return found
    now = most_from(search.pool.patterns, search.terms, target, seconds=seconds)
    return max(now, found, key=lambda way: way.makes)


def _filled_in_turn(search: Search, found: Makes, target: int) -> Makes:
    """One make more after another, as long as some filling of all sheets gives them."""
    by_size = {stock: search.sheets[stock].width * search.sheets[stock].height for stock in search.terms.have}
    while found.makes < target:
        wanted = replace(search.terms.times(found.makes + 1), cost=by_size)
        passes = islice(in_turn(search.sheets, wanted, search.pool, search.effort), PASSES)
        chosen = next((chosen for chosen in passes if chosen), None)
        if chosen is None:
            break
        found = replace(found, makes=found.makes + 1, chosen=chosen)
    return _most(search, found, target)


def _closer(search: Search, found: Makes, target: int) -> tuple[Makes, int] | None:
    """More makes, or a lower target; None where neither comes of it."""
    terms, bound = search.terms, search.bound
    gaps = dict.fromkeys(bound.tables, bound.slack(target))
    caps = terms.times(target).caps(len(bound.prices))
    for attempt in ATTEMPTS:
        complete = add_closer(search.pool, search.pricer, bound.tables, gaps, caps, attempt)
        search.effort.step(3 * len(search.pool))
        seconds = search.effort.seconds_left
        if seconds == 0:
            break
        better = most_from(search.pool.patterns, terms, target, seconds=seconds)
        if better.makes > found.makes:
            found = better
        if found.makes == target:
            return found, target
        if complete and better.at_most < target:
            return found, target - 1
        if complete or search.effort.over:
            break
    return None
