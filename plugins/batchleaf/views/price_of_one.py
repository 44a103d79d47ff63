"""The price of one unit: how finely it is shown, and how it is drawn over time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.core.unit_prices import Priced, price_range
from batchleaf.facts import Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import NBSP
from batchleaf.measure.money import Currency, rounded
from batchleaf.views.drawing.charts.unit_prices import PricePoint, draw_prices
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.words import counted, listed, long_date, short_date

FIGURES_FROM: Final = 10
"""Fewer minor units than this are told in tenths or hundredths of one."""
_MOST_DECIMALS: Final = 2


@dataclass(frozen=True, slots=True)
class PriceShown:
    """Prices of one for one column: all with the decimals of ``currency`` and ``more``."""

    currency: Currency
    more: int

    @classmethod
    def of(cls, currency: Currency, prices: Sequence[Fraction]) -> PriceShown:
        """So fine that the cheapest has two figures, but not finer than hundredths of the smallest coin.

        Where one would look the same as the one before it and is not, all have one decimal more
        than the currency.
        """
        cheapest = min((one for one in prices if one), default=Fraction(FIGURES_FROM))
        more = int(any(a != b and rounded(a) == rounded(b) for a, b in pairwise(prices)))
        while more < _MOST_DECIMALS and cheapest * 10**more < FIGURES_FROM:
            more += 1
        return cls(currency, more)

    def show(self, one: Fraction) -> str:
        """``0.28``; ``one`` is in minor units and is rounded here for the first time."""
        finer = replace(self.currency, digits=self.currency.digits + self.more)
        shown = rounded(one * 10**self.more)
        return finer.show(shown) if shown or not one else f"under {finer.show(1)}"


def one_of(supply: Supply) -> str:
    """``one sheet``, ``1 m``."""
    return f"1{NBSP}{supply.unit}" if is_measured(supply.unit) else f"one {supply.unit}"


def price_drawing(supply: Supply, found: Sequence[Priced], shown: PriceShown) -> Drawing | None:
    """The prices of one, in order of date; nothing for fewer than two."""
    if len(found) < 2:
        return None
    said = _said(found, shown)
    currency = shown.currency
    first, last = found[0].paid.purchase.date, found[-1].paid.purchase.date
    told = [
        f"{words}, {long_date(found[i].paid.purchase.date)}, {_price(found[i], shown)}{NBSP}{currency.sign}"
        for i, words in said.items()
    ]
    return draw_prices(
        tuple(
            PricePoint(
                date=one.paid.purchase.date,
                price=one.one / 10**currency.digits,
                said=f"{said[i]} {_price(one, shown)}" if i in said else "",
                rough=one.paid.guessed,
            )
            for i, one in enumerate(found)
        ),
        (short_date(first), short_date(last)),
        id="price-drawing",
        title=f"What {one_of(supply)} of {supply.name} cost over time",
        description=f"{counted(len(found), 'purchase', 'purchases')}: {'; '.join(told)}.",
    )


def _price(one: Priced, shown: PriceShown) -> str:
    return f"about {shown.show(one.one)}" if one.paid.guessed else shown.show(one.one)


def _said(found: Sequence[Priced], shown: PriceShown) -> dict[int, str]:
    """What is written at which point: the lowest and the highest where they say more than the ends."""
    last = len(found) - 1
    words: dict[int, list[str]] = {0: ["first"], last: ["last"]}
    prices = price_range(found)
    if prices and last > 1 and prices.lowest.one != prices.highest.one:
        words.setdefault(found.index(prices.lowest), []).append("lowest")
        words.setdefault(found.index(prices.highest), []).append("highest")
    return {i: listed(words[i]) for i in sorted(words)}
