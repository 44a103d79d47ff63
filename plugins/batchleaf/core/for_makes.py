"""What other numbers of makes take: sheets as bought, supplies, and what that costs.

    sheets for N = the least paper that gives N makes, all sheets whole, no scraps
    supply for N = what one make takes × N
    cost of N    = the sum of N's amounts, each at what the batch paid for one on average

It is worked out for the numbers in ``COUNTS`` and for that of the batch; nothing is said of those
between them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import Cost
from batchleaf.core.costing import BatchCost
from batchleaf.core.dealing import Supplies
from batchleaf.core.other_sheets import OnOther
from batchleaf.core.sheets_needed import Counting, SheetsFor, asking_for_sheets, sheets_for_each
from batchleaf.facts import OtherSheet, Project
from batchleaf.measure.money import rounded

COUNTS: Final = (*range(1, 13), 15, 18, 20, 24, 30, 36, 48, 60)
"""A few, a class, a market stall."""


@dataclass(frozen=True, slots=True)
class Needed:
    """So much of a supply, in its own unit; ``None``: used, but not measured.

    ``scales`` is False for an amount that the record states for the whole batch: how much
    another number of makes would take of it is not known. ``cost``: in minor units; ``None``
    where it is not known, or not told.
    """

    supply: str
    quantity: Fraction | None
    scales: bool = True
    cost: int | None = None

    def at(self, price: Fraction | None) -> Needed:
        """The same with its cost, rounded once."""
        if price is None or self.quantity is None or not self.scales:
            return self
        return replace(self, cost=rounded(price * self.quantity))


@dataclass(frozen=True, slots=True)
class ForMakes:
    """What so many makes take; ``cost`` is ``None`` where an edition tells none.

    ``without``: supplies that are not in the cost, since their price or their amount is not known.
    """

    makes: int
    sheets: tuple[Needed, ...]
    proved: bool
    uses: tuple[Needed, ...]
    cost: Cost | None = None
    without: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ForMakesOn:
    """The same from sheets of another size; what these cost nobody knows."""

    sheet: OtherSheet
    counts: tuple[ForMakes, ...]


def for_makes(
    project: Project, cost: BatchCost | None, supplies: Supplies, count: Counting
) -> tuple[ForMakes, ...]:
    """In the order of their numbers; nothing where no plan can be followed, or nothing is known to scale."""
    uses = [use for use in project.uses if supplies[use.supply].named]
    if not (project.cut_parts or any(use.per_make for use in uses)):
        return ()
    prices = prices_paid(cost, supplies) if cost and cost.counted and cost.one is not None else None
    return _for_each(project, prices, supplies, count)


def for_makes_on(
    project: Project, cost: BatchCost | None, others: Sequence[OnOther], count: Counting
) -> Iterator[ForMakesOn]:
    """One for each other size that the parts can be cut from."""
    for one in others:
        if one.cutting is None:
            continue
        papers = {one.papers[slug].pad or slug for part in project.cut_parts for slug in part.papers}
        paid = prices_paid(cost, one.papers) if cost and cost.counted and cost.one is not None else None
        prices = None if paid is None else {slug: paid[slug] for slug in paid if slug not in papers}
        if counts := _for_each(project, prices, one.papers, count):
            yield ForMakesOn(one.sheet, counts)


def _for_each(
    project: Project, prices: Mapping[str, Fraction] | None, supplies: Supplies, count: Counting
) -> tuple[ForMakes, ...]:
    ask = asking_for_sheets(project, supplies, count)
    found = sheets_for_each(sorted({*COUNTS, project.begun}), project.begun, ask)
    return tuple(_for(one, tuple(_uses(project, one.makes, supplies)), prices, supplies) for one in found)


def _uses(project: Project, makes: int, supplies: Supplies) -> Iterator[Needed]:
    """By supply in the order of the record, what scales apart from what is stated for the whole batch."""
    alike: dict[tuple[str, bool], Fraction | None] = {}
    for use in project.uses:
        if not supplies[use.supply].named:
            continue
        key = (use.supply, use.per_make is not None)
        quantity = use.quantity if use.per_make is None else use.per_make * makes
        alike[key] = quantity if quantity is None else (alike.get(key) or Fraction(0)) + quantity
    for (supply, scales), quantity in alike.items():
        yield Needed(supply, quantity, scales)


# --- the cost --------------------------------------------------------------------


def prices_paid(cost: BatchCost, supplies: Supplies) -> Mapping[str, Fraction]:
    """Supply (of a numbered paper its pad) → minor units for one, on average over what the batch took.

    Odd pieces tell no price of a whole one, and what is known in part tells none at all.
    """
    taken: dict[str, Fraction] = {}
    known: dict[str, int] = {}
    unknown: set[str] = set()
    for draw in (draw for line in cost.lines for draw in line.draws):
        if draw.piece is None and draw.quantity:
            home = supplies[draw.supply].pad or draw.supply
            taken[home] = taken.get(home, Fraction(0)) + draw.quantity
            known[home] = known.get(home, 0) + draw.taken.known
            unknown |= set() if draw.taken.complete else {home}
    return {home: known[home] / quantity for home, quantity in taken.items() if home not in unknown}


def _for(
    sheets: SheetsFor, uses: tuple[Needed, ...], prices: Mapping[str, Fraction] | None, supplies: Supplies
) -> ForMakes:
    papers = tuple(Needed(slug, Fraction(many)) for slug, many in sheets.sheets)
    if prices is None:
        return ForMakes(sheets.makes, papers, sheets.proved, uses)
    priced_sheets = _priced(papers, prices, supplies)
    priced_uses = _priced(uses, prices, supplies)
    measured = [one for one in (*priced_sheets, *priced_uses) if one.quantity is not None]
    without = dict.fromkeys(one.supply for one in measured if one.cost is None)
    cost = Cost(sum(one.cost or 0 for one in measured), complete=not without)
    return ForMakes(sheets.makes, priced_sheets, sheets.proved, priced_uses, cost, tuple(without))


def _priced(
    needed: tuple[Needed, ...], prices: Mapping[str, Fraction], supplies: Supplies
) -> tuple[Needed, ...]:
    return tuple(one.at(prices.get(supplies[one.supply].pad or one.supply)) for one in needed)
