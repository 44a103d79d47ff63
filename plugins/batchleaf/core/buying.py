"""What to buy next: supplies of which there is less than their mark, and what planned batches lack."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.dealing import Supplies
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.movements import Holding, Ledger
from batchleaf.core.reserved import needed_sheets, reservations
from batchleaf.core.shortage import shortages
from batchleaf.facts import Basis, Purchase, Status
from batchleaf.measure.money import rounded


@dataclass(frozen=True, slots=True)
class Lack:
    """What the drawer lacks for one batch: of the ``needed`` only ``there`` is left to it."""

    project: str
    needed: int
    there: Fraction


@dataclass(frozen=True, slots=True)
class ToBuy:
    """A reason to buy, or several: too little for the mark, or for batches that are planned.

    ``holding``: whole units, or scraps of one size, for which only batches ask. ``on_hand``: ``None``
    where no record speaks of any. ``mark``: ``None`` where it is not below one. ``last``: the usual
    lot, which is the newest purchase, of a numbered paper that of its pad.
    """

    holding: Holding
    on_hand: Fraction | None
    mark: Fraction | None
    lacks: tuple[Lack, ...]
    last: Purchase | None


def to_buy(figures: Figures, ledger: Ledger) -> tuple[ToBuy, ...]:
    """In the order of the archive's supplies; what is only an idea asks for nothing.

    A batch lacks what is not left to it by those that are planned before it. Kept pieces do not
    count towards a mark.
    """
    archive = figures.archive
    supplies = {supply.slug: supply for supply in archive.supplies}
    on_hand = _on_hand(ledger)
    lacks = _lacks(figures.batches.values(), ledger, supplies)
    marks = dict(_below_their_mark(supplies, on_hand))
    lots = _usual_lots(archive.purchases, figures.as_of)
    order = {slug: place for place, slug in enumerate(supplies)}
    asked = {*lacks, *(Holding(slug) for slug in marks)}
    return tuple(
        ToBuy(
            holding=holding,
            on_hand=on_hand.get(holding),
            mark=None if holding.piece else marks.get(holding.supply),
            lacks=tuple(lacks.get(holding, ())),
            last=lots.get(supplies[holding.supply].pad or holding.supply),
        )
        for holding in sorted(asked, key=lambda one: (order[one.supply], *_by_size(one)))
    )


def cost_of_a_unit(purchase: Purchase) -> int | None:
    """What one of its own units cost, in minor units, halves up; ``None`` where nobody knows."""
    return None if purchase.value is None else rounded(Fraction(purchase.value) / purchase.quantity)


def _on_hand(ledger: Ledger) -> dict[Holding, Fraction]:
    """What is there of all that a record speaks of; of a numbered paper so far as it is known."""
    found = {Holding(balance.holding.supply): Fraction(0) for balance in ledger.balances}
    found |= {Holding(slug): sheets for slug, sheets in ledger.papers.items()}
    return found | {balance.holding: balance.quantity for balance in ledger.balances}


def _below_their_mark(
    supplies: Supplies, on_hand: Mapping[Holding, Fraction]
) -> Iterator[tuple[str, Fraction]]:
    for slug, supply in supplies.items():
        if supply.mark is not None and on_hand.get(Holding(slug), Fraction(0)) < supply.mark:
            yield slug, supply.mark


def _lacks(batches: Iterable[BatchFigures], ledger: Ledger, supplies: Supplies) -> dict[Holding, list[Lack]]:
    """What is lacking, and for which batches, the nearest first."""
    planned = {one.project.slug: one for one in batches if one.project.status is Status.PLANNED}
    claims = reservations(planned.values())
    found: dict[Holding, list[Lack]] = {}
    slugs = [one.project.slug for one in claims]
    for slug in dict.fromkeys(slugs):
        before = claims[: slugs.index(slug)]
        for one in shortages(needed_sheets(planned[slug]), ledger, supplies, before):
            found.setdefault(one.holding, []).append(Lack(slug, one.needed, one.there))
    return found


def _usual_lots(purchases: Iterable[Purchase], until: dt.date | None) -> dict[str, Purchase]:
    """The newest purchase of each, to the end of the day ``until``; a gift only where nothing was paid."""
    done = [one for one in purchases if until is None or one.date <= until]
    ordered = sorted(done, key=lambda one: (one.basis is not Basis.GIFT, one.date, one.place))
    return {one.supply: one for one in ordered}


def _by_size(holding: Holding) -> tuple[Fraction, Fraction]:
    """Whole units first, then scraps from the smallest."""
    piece = holding.piece
    return (piece.width, piece.height) if piece else (Fraction(0), Fraction(0))
