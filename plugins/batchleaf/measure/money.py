"""Money in minor units: read, shared and shown without losing one.

All sums are whole minor units (cents) of one currency. Minor units per currency
follow ISO 4217.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import lcm

from babel.numbers import get_currency_symbol
from iso4217 import Currency as Iso4217

from batchleaf.measure.display import MINUS
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.slips import refuse_slips


@dataclass(frozen=True, slots=True)
class Currency:
    """An ISO 4217 currency: its code, the digits of its minor unit and its sign."""

    code: str
    digits: int
    sign: str

    @classmethod
    def of(cls, code: str) -> Currency:
        """The currency with this code. Raises :class:`MeasureError`."""
        try:
            known = Iso4217(code.upper())
        except ValueError:
            raise MeasureError(
                f"“{code}” is no currency; write a code of ISO 4217 such as EUR or USD"
            ) from None
        digits = known.exponent or 0
        return cls(known.code, digits, get_currency_symbol(known.code, locale="en"))

    def show(self, minor: int) -> str:
        """``0.73``, without the sign: for columns of money."""
        whole, rest = divmod(abs(minor), 10**self.digits)
        shown = f"{whole:,}.{rest:0{self.digits}d}" if self.digits else f"{whole:,}"
        return f"{MINUS}{shown}" if minor < 0 else shown

    def plain(self, minor: int) -> str:
        """``1250.00``: decimal text for programs, without commas and with a plain minus."""
        return self.show(minor).replace(",", "").replace(MINUS, "-")

    def show_with_sign(self, minor: int) -> str:
        """``0.73 €`` with a space that does not break."""
        return f"{self.show(minor)}\u00a0{self.sign}"


def parse_money(text: str, currency: Currency) -> int:
    """An amount as written, in minor units: ``9.75`` → 975, ``€9.75``, ``9.75 EUR``.

    Raises :class:`MeasureError`: another currency, a comma, less than nothing, too many decimals.
    """
    plain = text.strip()
    for mine in (currency.code, currency.sign):
        plain = plain.removeprefix(mine).removesuffix(mine).strip()
    if "," in plain:
        decimal = re.fullmatch(r"[0-9]+,[0-9]{1,2}", plain)
        better = plain.replace(",", "." if decimal else "")
        raise MeasureError(f"“{text.strip()}” has a comma; write {better}")
    refuse_slips(plain, "9.75")
    found = re.fullmatch(r"([0-9]{1,9})(?:\.([0-9]+))?", plain)
    if found is None and (other := _another(text, currency)):
        raise MeasureError(
            f"“{text.strip()}” is in {other}, and all money here is in {currency.code};"
            f" write what it was in {currency.code}"
        )
    if found is None:
        raise MeasureError(
            f"“{text.strip()}” is no amount of money in {currency.code}; write for example 9.75"
        )
    decimals = found[2] or ""
    if len(decimals) > currency.digits:
        raise MeasureError(f"“{text.strip()}” has more decimals than {currency.code} has ({currency.digits})")
    return int(found[1] + decimals.ljust(currency.digits, "0"))


def _another(text: str, currency: Currency) -> str:
    """The code or the sign of another currency that stands in ``text``, else nothing."""
    for word in re.findall(r"[A-Za-z]{3}", text):
        try:
            return Iso4217(word.upper()).code if word.upper() != currency.code else ""
        except ValueError:
            continue
    return next((sign for sign in text if unicodedata.category(sign) == "Sc"), "")


def rounded(minor: Fraction) -> int:
    """To whole minor units, halves up (Council Regulation (EC) No 1103/97, article 5)."""
    return int((minor + Fraction(1, 2)) // 1)


def share(total: int, weights: Sequence[Fraction]) -> tuple[int, ...]:
    """``total`` split in proportion to ``weights``; the shares sum to ``total``.

    Largest remainder: each share is rounded down, and the minor units left over
    go one each to the largest fractions, the earlier of equals first. Weights
    that sum to nothing share nothing.

    >>> share(10000, [Fraction(1)] * 3)
    (3334, 3333, 3333)
    """
    # In whole numbers, since it is asked for every cost: all weights over one denominator.
    common = lcm(*(weight.denominator for weight in weights))
    parts = [weight.numerator * (common // weight.denominator) for weight in weights]
    whole = sum(parts)
    if not whole:
        return (0,) * len(weights)
    shares = [total * part // whole for part in parts]
    by_remainder = sorted(range(len(shares)), key=lambda i: (-(total * parts[i] % whole), i))
    for i in by_remainder[: total - sum(shares)]:
        shares[i] += 1
    return tuple(shares)
