"""What the same batch would cost at today's prices: those last paid."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.facts import Basis, Project, Purchase, Supply
from batchleaf.measure.money import rounded

Supplies = Mapping[str, Supply]
Prices = Mapping[str, Fraction]
"""Supply (of a numbered paper its pad) → minor units for one of its unit."""


@dataclass(frozen=True, slots=True)
class TodaysCost:
    """In minor units; ``without``: supplies of which no price is on record."""

    batch: int
    one: int
    without: tuple[str, ...]


def last_prices(purchases: Iterable[Purchase], supplies: Supplies, until: dt.date | None) -> Prices:
    """What was last paid for one of each, to the end of the day ``until``.

    A gift is no price. Of two purchases on one day the one whose place comes last counts.
    """
    found: dict[str, Fraction] = {}
    for one in sorted(purchases, key=lambda one: (one.date, one.place)):
        paid = one.value is not None and one.basis is not Basis.GIFT
        if paid and (until is None or one.date <= until):
            found[_home(one.supply, supplies)] = Fraction(one.value or 0) / one.quantity
    return found


def todays_cost(project: Project, supplies: Supplies, prices: Prices) -> TodaysCost | None:
    """The batch as it was made, at ``prices``: each supply rounded once; ``None`` where nothing is finished.

    A scrap costs its share of a sheet by area, and a kept piece is worth its share.
    What was used without a measure is not counted, as in the cost of the batch.
    """
    if not project.finished:
        return None
    taken: dict[str, Fraction] = {}
    for cut in project.cut:
        sheet = supplies[cut.supply].sheet.area
        area = (cut.scrap.area if cut.scrap else sheet) * cut.count
        kept = sum((piece.size.area * piece.count for piece in cut.kept), Fraction(0))
        taken[cut.supply] = taken.get(cut.supply, Fraction(0)) + max(area - kept, Fraction(0)) / sheet
    for use in project.uses:
        if use.quantity is not None:
            taken[use.supply] = taken.get(use.supply, Fraction(0)) + use.quantity
    priced = {slug: prices.get(_home(slug, supplies)) for slug in taken}
    batch = sum(rounded(price * taken[slug]) for slug, price in priced.items() if price is not None)
    without = tuple(slug for slug, price in priced.items() if price is None)
    if len(without) == len(taken):
        return None
    return TodaysCost(batch, rounded(Fraction(batch, project.finished)), without)


def _home(slug: str, supplies: Supplies) -> str:
    return supplies[slug].pad or slug
