"""What is on hand of a supply, and which batches drew from it; a pad counts with its papers."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.movements import Balance, Ledger
from batchleaf.facts import Supply
from batchleaf.measure.money import Currency
from batchleaf.views.levels import level, there_is
from batchleaf.views.words import amount, counted, listed


@dataclass(frozen=True, slots=True)
class Stock:
    """What is on hand of a supply; of a pad with all its papers.

    ``pieces``: the piles of odd pieces that are not empty, largest first.
    ``worth``: of all of it; of a numbered paper that of its pieces alone, since
    its sheets are priced with the pad. ``moved``: whether any record speaks of it.
    """

    quantity: Fraction
    pieces: tuple[Balance, ...]
    worth: Cost
    moved: bool

    @property
    def kept(self) -> int:
        """How many odd pieces there are."""
        return sum(int(balance.quantity) for balance in self.pieces)


def papers_in(pad: Supply, figures: Figures) -> tuple[Supply, ...]:
    """The numbered papers of a pad, in order; none for what is no pad."""
    papers = (one for one in figures.archive.supplies if one.pad == pad.slug)
    return tuple(sorted(papers, key=lambda paper: paper.number))


def batches_using(supply: Supply, figures: Figures) -> tuple[BatchFigures, ...]:
    """The batches that drew from it, or from a paper of the pad, oldest first."""
    slugs = {supply.slug, *(paper.slug for paper in papers_in(supply, figures))}
    return tuple(batch for batch in figures.batches.values() if slugs & {used.supply for used in batch.used})


def last_use(supply: Supply, figures: Figures) -> dt.date | None:
    """The day of the newest batch that drew from it."""
    return max((batch.project.date for batch in batches_using(supply, figures)), default=None)


def on_shelves(figures: Figures) -> tuple[Supply, ...]:
    """The supplies that the index lists; the papers of a pad lie in it."""
    return tuple(supply for supply in figures.archive.supplies if not supply.pad)


def worth_in_words(worth: Cost, currency: Currency) -> str:
    """``5.98 €``; ``at least 5.98 €`` where the price of something is not known."""
    shown = currency.show_with_sign(worth.known)
    return shown if worth.complete else f"at least {shown}"


def in_the_column(supply: Supply, figures: Figures, ledger: Ledger) -> str:
    """``4 sheets and 2 pieces``, ``26``; ``none`` where records tell of some, else ``not counted``."""
    stock = stock_of(supply, figures, ledger)
    there = [there_is(stock.quantity, supply)] if stock.quantity else []
    return listed([*there, *_kept(stock)]) or ("none" if stock.moved else "not counted")


def on_hand_in_words(supply: Supply, figures: Figures, ledger: Ledger) -> str:
    """The same where no column says what is counted: ``26 pieces``, ``none on hand``."""
    stock = stock_of(supply, figures, ledger)
    level_or_amount = level if supply.by_level else amount
    there = [level_or_amount(stock.quantity, supply)] if stock.quantity else []
    return listed([*there, *_kept(stock)]) or ("none on hand" if stock.moved else "not counted")


def _kept(stock: Stock) -> list[str]:
    return [counted(stock.kept, "piece", "pieces")] if stock.kept else []


def stock_of(supply: Supply, figures: Figures, ledger: Ledger) -> Stock:
    """What is on hand of a supply."""
    slugs = {supply.slug, *(paper.slug for paper in papers_in(supply, figures))}
    mine = [balance for balance in ledger.balances if balance.holding.supply in slugs]
    whole = [balance for balance in mine if balance.holding.piece is None]
    pieces = [(one.holding.piece.area, one) for one in mine if one.holding.piece and one.quantity]
    own = sum((balance.quantity for balance in whole), Fraction(0))
    return Stock(
        quantity=ledger.papers.get(supply.slug, own),
        pieces=tuple(balance for _, balance in sorted(pieces, key=lambda pair: -pair[0])),
        worth=sum((balance.cost for balance in mine), NOTHING),
        moved=bool(mine),
    )
