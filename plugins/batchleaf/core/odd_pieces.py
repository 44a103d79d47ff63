"""The odd pieces in the drawer, each with where it came from."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Final

from batchleaf.core.cost import Cost
from batchleaf.core.entries import Kind
from batchleaf.core.movements import Holding, Ledger
from batchleaf.measure.lengths import Size

_COMES_IN: Final = (Kind.OPENING, Kind.KEPT, Kind.COUNTED)


@dataclass(frozen=True, slots=True)
class PieceSource:
    """Where a piece came from: a batch that kept it, else what was there at the start, or a count."""

    date: dt.date
    kind: Kind
    project: str


@dataclass(frozen=True, slots=True)
class OddPieces:
    """``count`` pieces of one supply and one size, and what they cost together.

    Pieces that are alike are not told apart: ``sources``, newest first and each once, are all that
    brought one since there were none, though some of these may be used up.
    """

    supply: str
    size: Size
    count: int
    cost: Cost
    sources: tuple[PieceSource, ...]


def odd_pieces(ledger: Ledger) -> tuple[OddPieces, ...]:
    """All that are on hand, in the order in which the drawer first met them."""
    sources = _sources(ledger)
    return tuple(
        OddPieces(
            supply=balance.holding.supply,
            size=balance.holding.piece,
            count=int(balance.quantity),
            cost=balance.cost,
            sources=tuple(dict.fromkeys(reversed(sources[balance.holding]))),
        )
        for balance in ledger.balances
        if balance.holding.piece and balance.quantity
    )


def _sources(ledger: Ledger) -> dict[Holding, list[PieceSource]]:
    """What brought the pieces of each pile since it was last empty, oldest first."""
    found: dict[Holding, list[PieceSource]] = {}
    for movement in ledger.movements:
        here = found.setdefault(movement.holding, [])
        if movement.kind in _COMES_IN and movement.quantity > 0:
            here.append(PieceSource(movement.date, movement.kind, movement.moment.project))
        if not movement.on_hand:
            here.clear()
    return found
