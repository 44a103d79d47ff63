"""Patterns that close the gap between what was found and what may be possible.

Four attempts, each wider and dearer than the one before. Where a sheet may fall
short of its best only by a little, an attempt looks at all that is within, and
then nothing better is left out. Elsewhere it looks near the best pattern under
prices that are lowered until that pattern has no more of any part than is wanted.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.near_best import near_best
from batchleaf.core.cutting.patterns import Pool, Pricer
from batchleaf.core.cutting.strips import parts_of
from batchleaf.core.cutting.values import Values


@dataclass(frozen=True, slots=True)
class Attempt:
    """Look within ``share`` of the best value; keep ``beam`` contents of each piece."""

    share: Fraction
    beam: int

    @property
    def exact(self) -> bool:
        """Whether it is of use only if nothing is left out."""
        return self.share >= 1


ATTEMPTS: Final = (
    Attempt(Fraction(5, 100), 15),
    Attempt(Fraction(8, 100), 40),
    Attempt(Fraction(15, 100), 150),
    Attempt(Fraction(1), 1_500),
)
MODEST_ROUNDS: Final = 10


def add_closer(
    pool: Pool,
    pricer: Pricer,
    tables: Mapping[int, Values],
    gaps: Mapping[int, int],
    caps: Sequence[int],
    attempt: Attempt,
) -> bool:
    """Add patterns; True where every pattern within the ``gaps`` is now in ``pool``.

    ``gaps`` by stock: how far a sheet may fall short of its best (below 0: it is not used).
    """
    complete = True
    for stock, gap in gaps.items():
        if gap < 0:
            continue
        table = tables[stock]
        within = int(table.whole_sheet * attempt.share)
        if gap > within and not attempt.exact:
            complete = False
            table = _modest(table, pricer, stock, caps)
            within = int(table.whole_sheet * attempt.share)
        near = near_best(
            table, min(gap, within), caps, pricer.effort, beam=attempt.beam, all_or_nothing=attempt.exact
        )
        complete &= near.complete
        for piece in near.pieces:
            pool.add(stock, piece)
    return complete


def _modest(table: Values, pricer: Pricer, stock: int, caps: Sequence[int]) -> Values:
    """Values under which the best pattern has no more of a part than ``caps``, or nearly so."""
    for _ in range(MODEST_ROUNDS):
        counts = parts_of(table.arrangement())
        over = {part for part, price in enumerate(table.of_part) if price > 1 and counts[part] > caps[part]}
        if not over:
            break
        prices = [
            max(1, price * 4 // 5) if part in over else price for part, price in enumerate(table.of_part)
        ]
        table = pricer.table(stock, prices)
    return table
