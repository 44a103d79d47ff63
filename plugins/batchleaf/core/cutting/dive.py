"""New patterns for the last few sheets.

The program in fractions likes patterns that suit many sheets; a whole plan also
needs some that suit the remainder. So some sheets of the fractional answer are
fixed, the rest is asked anew with fresh prices, and so on until all is covered.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial
from itertools import islice
from typing import Final

from batchleaf.core.cutting.choose import Share, Terms
from batchleaf.core.cutting.patterns import Pattern, Pool, Pricer, rounds

ROUNDS: Final = 12
"""New prices that are tried for one remainder."""
_ALMOST: Final = 1e-6

InFractions = Callable[[Sequence[Pattern], Terms], Share]


def dive(pool: Pool, pricer: Pricer, wanted: Terms, ask: InFractions) -> bool:
    """Add patterns to ``pool`` on the way to what is ``wanted``; whether there were new ones."""
    before = len(pool)
    rest = wanted
    while rest.parts and pricer.has_time:
        for _ in islice(rounds(pool, pricer, partial(_prices, ask, rest)), ROUNDS):
            pass
        fixed = _fixed(ask(pool.patterns, rest).times)
        if not fixed:
            break
        rest = _less(rest, fixed, pool)
    return len(pool) > before


def _fixed(times: Sequence[float]) -> dict[int, int]:
    """Sheets by pattern: the whole parts of ``times``, or one sheet of the largest fraction."""
    fixed = {at: int(many + _ALMOST) for at, many in enumerate(times) if many + _ALMOST >= 1}
    if fixed or not any(many > _ALMOST for many in times):
        return fixed
    return {max(range(len(times)), key=times.__getitem__): 1}


def _prices(ask: InFractions, rest: Terms, patterns: Sequence[Pattern]) -> Sequence[float]:
    return ask(patterns, rest).prices


def _less(rest: Terms, fixed: dict[int, int], pool: Pool) -> Terms:
    """What is still wanted, and what is still there, after the ``fixed`` sheets."""
    have, wanted = dict(rest.have), dict(rest.each)
    for at, times in fixed.items():
        pattern = pool.patterns[at]
        left = have[pattern.stock]
        have[pattern.stock] = None if left is None else left - times
        for part in wanted:
            wanted[part] -= pattern.counts[part] * times
    wanted = {part: many for part, many in wanted.items() if many > 0}
    return replace(rest, parts=tuple(wanted), each=wanted, have=have)
