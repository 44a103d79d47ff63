"""What the drawer lacks for a batch that is only planned."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.dealing import Supplies
from batchleaf.core.movements import Holding, Ledger
from batchleaf.core.reserved import Reservation
from batchleaf.facts import Cut


@dataclass(frozen=True, slots=True)
class Shortage:
    """Sheets, or scraps of one size, of which the drawer holds fewer than are ``needed``."""

    holding: Holding
    needed: int
    there: Fraction


def shortages(
    needed: Iterable[Cut], ledger: Ledger, supplies: Supplies, spoken_for: Iterable[Reservation] = ()
) -> Iterator[Shortage]:
    """Every paper of which there is too little at the end of all records.

    Of a numbered paper of a pad there are as many as there can be: the sheets of
    which no record says the number may all be of it. ``spoken_for``: what others
    will take first.
    """
    wanted = Counter[Holding]()
    for cut in needed:
        wanted[Holding(cut.supply, cut.scrap)] += cut.count
    on_hand = {balance.holding: balance.quantity for balance in ledger.balances}
    papers = dict(ledger.papers)
    for one in spoken_for:
        _take_off(one, on_hand, papers, supplies)
    for holding, count in wanted.items():
        pad = supplies[holding.supply].pad
        there = on_hand.get(holding, Fraction(0))
        if pad and holding.piece is None:
            unnamed = max(ledger.unnamed[pad], Fraction(0))
            there = min(papers[holding.supply] + unnamed, on_hand.get(Holding(pad), Fraction(0)))
        there = max(there, Fraction(0))
        if there < count:
            yield Shortage(holding, count, there)


def _take_off(
    one: Reservation, on_hand: dict[Holding, Fraction], papers: dict[str, Fraction], supplies: Supplies
) -> None:
    """Leave what is spoken for out of what is there; of a numbered paper in its pad as well."""
    holding, pad = one.holding, supplies[one.holding.supply].pad
    if pad and holding.piece is None:
        papers[holding.supply] -= one.quantity
        holding = Holding(pad)
    on_hand[holding] = on_hand.get(holding, Fraction(0)) - one.quantity
