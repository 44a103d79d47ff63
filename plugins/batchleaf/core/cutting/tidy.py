"""Among choices of equal cost, the one that is easiest at the table.

Fewest different plans first, then fewest settings. Sheets that could all be cut
alike seldom come out of a search for value, so such plans are looked for on purpose.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from typing import Final

from batchleaf.core.cutting.choose import Chosen, Terms, cost_of, fewest_plans
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.near_best import near_best
from batchleaf.core.cutting.patterns import Pattern, Pool
from batchleaf.core.cutting.strips import stops_of
from batchleaf.core.cutting.values import Values

BEAM: Final = 40
STEPS: Final = 3_000

Within = Callable[[Iterable[Pattern]], list[Pattern]]


def tidied(
    chosen: Chosen, pool: Pool, tables: Mapping[int, Values], within: Within, wanted: Terms, effort: Effort
) -> Chosen:
    """A choice that costs no more than ``chosen`` and is easier to cut, or ``chosen`` itself.

    ``within`` picks the patterns that such a choice can have at all. A search that counts
    steps is tidied also after its end; a deadline may leave ``chosen`` as it is.
    """
    _add_even(chosen, pool, tables, wanted, effort)
    seconds = effort.for_tidying(STEPS).seconds_left
    if seconds == 0:
        return chosen
    patterns = within(pool.patterns)
    stops = [stops_of(pattern.piece) for pattern in patterns]
    easier = fewest_plans(patterns, wanted, cost_of(chosen, wanted), stops, seconds=seconds)
    if easier is None or _trouble(easier) >= _trouble(chosen):
        return chosen
    return easier


def _trouble(chosen: Chosen) -> tuple[int, int]:
    return (len(chosen), sum(stops_of(pattern.piece) for pattern, _ in chosen))


def _add_even(
    chosen: Chosen, pool: Pool, tables: Mapping[int, Values], wanted: Terms, effort: Effort
) -> None:
    """For each stock one pattern by which all its sheets could be cut alike, if there is one."""
    for stock, table in tables.items():
        sheets = sum(times for pattern, times in chosen if pattern.stock == stock)
        if sheets < 2:
            continue
        share = _even_share(chosen, stock, sheets, wanted)
        caps = [share[part] for part in range(len(table.of_part))]
        worth = sum(price * many for price, many in zip(table.of_part, caps, strict=True))
        if 0 < worth <= table.whole_sheet:
            aside = effort.for_tidying(STEPS)
            near = near_best(table, table.whole_sheet - worth, caps, aside, beam=BEAM)
            for piece in near.pieces:
                pool.add(stock, piece)


def _even_share(chosen: Chosen, stock: int, sheets: int, wanted: Terms) -> Counter[int]:
    """What each sheet of ``stock`` has to give if all give the same; spares are not counted."""
    here: Counter[int] = Counter()
    elsewhere: Counter[int] = Counter()
    for pattern, times in chosen:
        for part in wanted.parts:
            (here if pattern.stock == stock else elsewhere)[part] += pattern.counts[part] * times
    needed = {part: min(here[part], wanted.each[part] - elsewhere[part]) for part in wanted.parts}
    return Counter({part: -(-many // sheets) for part, many in needed.items() if many > 0})
