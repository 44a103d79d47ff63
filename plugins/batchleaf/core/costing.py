"""What a batch cost, and what one of it cost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.movements import Draw
from batchleaf.measure.money import rounded, share


@dataclass(frozen=True, slots=True)
class CostLine:
    """All that one supply adds to a batch; ``one`` is its share of the cost of one."""

    supply: str
    draws: tuple[Draw, ...]
    cost: Cost
    one: int

    @property
    def measured(self) -> bool:
        """False for what was used without a measure (a stamp of ink)."""
        return any(draw.quantity is not None for draw in self.draws)


@dataclass(frozen=True, slots=True)
class Unpriced:
    """Something in a batch's cost whose price is not known.

    All of a supply, or so many odd pieces of it; ``partly``: some of it has a price.
    """

    supply: str
    pieces: int = 0
    partly: bool = False


@dataclass(frozen=True, slots=True)
class BatchCost:
    """``one`` is the batch shared among the finished makes, rounded once; ``None`` without any.

    ``shares`` splits the batch to the last minor unit: (cost, how many makes
    carry it), dearest first. ``without``: supplies whose price is not known,
    ``lacks``: the same line by line.
    ``not_counted``: supplies used without a measure.
    """

    lines: tuple[CostLine, ...]
    batch: Cost
    one: int | None
    shares: tuple[tuple[int, int], ...]
    without: tuple[str, ...]
    not_counted: tuple[str, ...]
    lacks: tuple[Unpriced, ...]

    @property
    def counted(self) -> bool:
        """True where at least one supply was measured, so that a cost means something."""
        return any(line.measured for line in self.lines)


def batch_cost(draws: Sequence[Draw], finished: int) -> BatchCost:
    """Add up what a batch drew, by supply in the order of the record."""
    by_supply: dict[str, list[Draw]] = {}
    for draw in draws:
        by_supply.setdefault(draw.supply, []).append(draw)
    costs = {slug: sum((draw.cost for draw in mine), NOTHING) for slug, mine in by_supply.items()}
    batch = sum(costs.values(), NOTHING)
    one = rounded(Fraction(batch.known, finished)) if finished else None
    ones = share(one or 0, [Fraction(cost.known) for cost in costs.values()])
    lines = tuple(
        CostLine(slug, tuple(mine), costs[slug], part)
        for (slug, mine), part in zip(by_supply.items(), ones, strict=True)
    )
    return BatchCost(
        lines=lines,
        batch=batch,
        one=one,
        shares=_shares(batch.known, finished),
        without=tuple(line.supply for line in lines if not line.cost.complete),
        not_counted=tuple(line.supply for line in lines if not line.measured),
        lacks=tuple(lack for line in lines for lack in _lacks(line)),
    )


def _lacks(line: CostLine) -> Iterator[Unpriced]:
    unpriced = [draw for draw in line.draws if not draw.cost.complete]
    if unpriced and len(unpriced) == len(line.draws) and not line.cost.known:
        yield Unpriced(line.supply)
        return
    for draw in unpriced:
        if draw.cost.known:
            yield Unpriced(line.supply, partly=True)
        elif draw.piece is not None and draw.quantity is not None:
            yield Unpriced(line.supply, pieces=int(draw.quantity))
        else:
            yield Unpriced(line.supply)


def _shares(batch: int, finished: int) -> tuple[tuple[int, int], ...]:
    split = Counter(share(batch, [Fraction(1)] * finished))
    return tuple(sorted(split.items(), reverse=True))
