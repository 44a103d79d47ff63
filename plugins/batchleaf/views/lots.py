"""Where the price of what a batch took comes from, in words."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.entries import Kind
from batchleaf.core.movements import Draw, Lot
from batchleaf.facts import CostFlow, Settings, Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import show_number
from batchleaf.measure.money import Currency, rounded
from batchleaf.views.words import listed, short_date

MOST_NAMED: Final = 3
"""Lots by name; of more the newest, and how many besides."""


def lots_in_words(draws: Iterable[Draw], supply: Supply, settings: Settings) -> str:
    """``0.28 each, 12 Sep 2025`` · ``average of 0.20 (at the start) and 0.28 (12 Sep 2025)``.

    Where the oldest go first: ``4 at 0.20 (at the start), 3 at 0.28 (12 Sep 2025)``. Odd
    pieces lie apart from whole sheets, and have prices of their own.
    """
    each = f" per {supply.unit}" if is_measured(supply.unit) else " each"
    piles: dict[bool, list[Draw]] = {}
    for draw in draws:
        piles.setdefault(draw.piece is not None, []).append(draw)
    said = [(is_odd, _pile(_merged(mine), each, settings)) for is_odd, mine in sorted(piles.items())]
    told = [f"scraps: {words}" if is_odd and len(said) > 1 else words for is_odd, words in said if words]
    return "; ".join(told)


def _pile(lots: Sequence[Lot], each: str, settings: Settings) -> str:
    currency, flow = settings.currency, settings.cost_flow
    if not lots:
        return ""
    if len(lots) == 1:
        lot = lots[0]
        return f"{_price(lot, currency)}{each if lot.cost.complete else ''}, {_when(lot)}"
    shown, more = lots[-MOST_NAMED:], len(lots) - MOST_NAMED
    older = [f"{more} older"] if more > 0 else []
    if flow is CostFlow.AVERAGE:
        return f"average of {listed([*older, *(f'{_price(lot, currency)} ({_when(lot)})' for lot in shown)])}"
    told = (f"{show_number(lot.quantity, 2)} at {_price(lot, currency)} ({_when(lot)})" for lot in shown)
    return ", ".join([*older, *told])


def _merged(draws: Iterable[Draw]) -> list[Lot]:
    """The lots of all draws, each once, oldest first."""
    found: dict[tuple[object, ...], Lot] = {}
    for lot in (lot for draw in draws for lot in draw.lots):
        key = (lot.came, lot.whole, lot.cost)
        before = found[key].quantity if key in found else Fraction(0)
        found[key] = Lot(lot.came, before + lot.quantity, lot.whole, lot.cost)
    return sorted(found.values(), key=lambda lot: lot.came.date)


def _price(lot: Lot, currency: Currency) -> str:
    if not lot.cost.complete:
        return "no known price"
    return currency.show(rounded(Fraction(lot.cost.known) / lot.whole))


def _when(lot: Lot) -> str:
    match lot.came.kind:
        case Kind.OPENING:
            return "at the start"
        case Kind.UNEXPLAINED:
            return "no record"
        case Kind.KEPT:
            return f"kept {short_date(lot.came.date)}"
        case Kind.COUNTED:
            return f"found {short_date(lot.came.date)}"
    return short_date(lot.came.date)
