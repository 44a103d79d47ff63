"""What something cost, and how the maker knows."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Basis
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.money import Currency, parse_money

_NOT_KNOWN: Final = ("price unknown", "not known", "unknown")


@dataclass(frozen=True, slots=True)
class Price:
    """Minor units of all of it; ``None``: nobody knows."""

    value: int | None
    basis: Basis


NOT_KNOWN: Final = Price(None, Basis.UNKNOWN)
GIFT: Final = Price(0, Basis.GIFT)
"""A gift cost nothing, so far as the drawer is concerned."""


def read_asked(text: str, currency: Currency) -> int:
    """What is asked for one, in minor units: ``3.50``. Raises :class:`MeasureError`."""
    price = parse_money(text.removesuffix(" each"), currency)
    if not price:
        raise MeasureError(f"“{text}” asks for nothing; leave this line out")
    return price


def read_price(text: str, currency: Currency) -> Price:
    """``7.20``, ``about 7.20``, ``gift`` or ``price unknown``. Raises :class:`MeasureError`."""
    words = " ".join(text.lower().split())
    if words in _NOT_KNOWN:
        return NOT_KNOWN
    if words in ("gift", "a gift"):
        return GIFT
    guess = words.removeprefix("about").strip()
    if not words.startswith("about"):
        return Price(parse_money(text, currency), Basis.STATED)
    if not guess:
        raise MeasureError(f"“{text}” does not say about how much; write for example about 2.00")
    return Price(parse_money(guess, currency), Basis.GUESSED)
