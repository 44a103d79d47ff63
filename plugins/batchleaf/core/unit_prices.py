"""What one unit of a supply cost, purchase by purchase.

    price of one = price of the line with its share of the delivery ÷ units

exact, in minor units. A gift and an unknown price are no price: they are told apart
and never count as nothing. A price that is guessed is one.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.facts import Basis, Purchase


@dataclass(frozen=True, slots=True)
class Paid:
    """One purchase; ``one``: minor units for one unit, ``None`` for a gift and an unknown price."""

    purchase: Purchase
    one: Fraction | None

    @property
    def guessed(self) -> bool:
        """Whether the maker knows the price only roughly."""
        return self.purchase.basis is Basis.GUESSED


@dataclass(frozen=True, slots=True)
class Priced:
    """A purchase with its price of one."""

    paid: Paid
    one: Fraction


@dataclass(frozen=True, slots=True)
class PriceRange:
    """The prices that say most of two or more, in order of date; of equals the earliest."""

    first: Priced
    last: Priced
    lowest: Priced
    highest: Priced


def paid_for(supplies: Collection[str], purchases: Iterable[Purchase]) -> tuple[Paid, ...]:
    """All purchases of ``supplies`` (a pad has those of its papers too), the earliest first."""
    mine = [purchase for purchase in purchases if purchase.supply in supplies]
    return tuple(
        Paid(purchase, _one(purchase)) for purchase in sorted(mine, key=lambda one: (one.date, one.place))
    )


def _one(purchase: Purchase) -> Fraction | None:
    if purchase.value is None or purchase.basis is Basis.GIFT:
        return None
    return Fraction(purchase.value) / purchase.quantity


def priced(paid: Iterable[Paid]) -> tuple[Priced, ...]:
    """Those with a price."""
    return tuple(Priced(one, one.one) for one in paid if one.one is not None)


def price_range(found: Sequence[Priced]) -> PriceRange | None:
    """First, last, lowest and highest; ``None`` for fewer than two prices."""
    if len(found) < 2:
        return None
    return PriceRange(
        first=found[0],
        last=found[-1],
        lowest=min(found, key=lambda one: one.one),
        highest=max(found, key=lambda one: one.one),
    )


def paid_together(paid: Iterable[Paid]) -> Cost:
    """What all of it cost; at least that, where a price is not known."""
    return sum((Cost.of(one.purchase.value, one.purchase.basis) for one in paid), NOTHING)


def average(found: Sequence[Priced]) -> Fraction | None:
    """What one unit cost on average, by all that has a price; ``None`` without any."""
    quantity = sum((one.paid.purchase.quantity for one in found), Fraction(0))
    value = sum((one.paid.purchase.value or 0 for one in found), 0)
    return Fraction(value) / quantity if quantity else None
