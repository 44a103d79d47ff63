"""The drawer over time: every movement that the records state, in date order.

On one day: openings, purchases, what batches take and keep (by slug), counts.
Nothing here depends on a computed plan, on the order of files or on the clock.
A quantity that is used but was never on hand enters as unexplained, at no known
price, and is told as a problem.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cost import NOTHING, UNKNOWN, Cost
from batchleaf.core.entries import Kind, ScrapOpening, SupplyOpening, entries_of
from batchleaf.core.pile import Pile, new_pile
from batchleaf.facts import (
    NOWHERE,
    Archive,
    CostFlow,
    Count,
    Cut,
    KeptPiece,
    Opening,
    Place,
    Problem,
    Project,
    Purchase,
    Scrap,
    Supply,
    Use,
    Weight,
)
from batchleaf.measure.display import show_number, show_size
from batchleaf.measure.lengths import Size
from batchleaf.measure.money import share


@dataclass(frozen=True, slots=True)
class Holding:
    """Whole units of a supply, or its odd pieces of one size, as :meth:`Supply.piece` names it."""

    supply: str
    piece: Size | None = None


@dataclass(frozen=True, slots=True)
class Movement:
    """``quantity`` and ``cost`` as they change the pile (negative: out); ``on_hand`` after it."""

    date: dt.date
    kind: Kind
    holding: Holding
    quantity: Fraction
    cost: Cost
    on_hand: Fraction
    project: str = ""
    supplier: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True)
class Draw:
    """What one line of a batch's record took from the drawer, and what of it went back."""

    project: str
    supply: str
    piece: Size | None
    quantity: Fraction | None
    """``None``: used, but not measured."""
    taken: Cost
    kept: Cost

    @property
    def cost(self) -> Cost:
        """What stays with the batch."""
        return self.taken - self.kept


@dataclass(frozen=True, slots=True)
class Balance:
    """What is on hand in one pile at the end."""

    holding: Holding
    quantity: Fraction
    cost: Cost


@dataclass(frozen=True, slots=True)
class Ledger:
    """All movements in order, what each batch drew, what is left, and what cannot be."""

    movements: tuple[Movement, ...]
    draws: Mapping[str, tuple[Draw, ...]]
    balances: tuple[Balance, ...]
    problems: tuple[Problem, ...]


def keep_ledger(archive: Archive, flow: CostFlow) -> Ledger:
    """Run through all records of ``archive`` in date order."""
    book = _Book(archive, flow)
    for entry in entries_of(archive):
        match entry:
            case SupplyOpening(supply=supply, opening=opening):
                book.open_supply(supply, opening)
            case ScrapOpening(supply=supply, scrap=scrap):
                book.open_scrap(supply, scrap)
            case Purchase():
                book.buy(entry)
            case Project():
                book.make(entry)
            case Count():
                book.count(entry)
    return book.closed()


def _lies_on(piece: Size, sheet: Size) -> bool:
    """Whether a piece can have been part of a sheet, either way round."""
    small, large = piece.upright, sheet.upright
    return small.width <= large.width and small.height <= large.height


class _Book:
    """The piles as they stand while the records are run through."""

    def __init__(self, archive: Archive, flow: CostFlow) -> None:
        self._flow = flow
        self._supplies = {supply.slug: supply for supply in archive.supplies}
        self._piles: dict[Holding, Pile] = {}
        self._movements: list[Movement] = []
        self._draws: dict[str, list[Draw]] = {}
        self._problems: list[Problem] = []

    def closed(self) -> Ledger:
        """The ledger as it stands."""
        return Ledger(
            movements=tuple(self._movements),
            draws={slug: tuple(draws) for slug, draws in self._draws.items()},
            balances=tuple(
                Balance(holding, pile.quantity, pile.cost) for holding, pile in self._piles.items()
            ),
            problems=tuple(self._problems),
        )

    def open_supply(self, supply: Supply, opening: Opening) -> None:
        """What was there before the first record."""
        cost = UNKNOWN if opening.value is None else Cost(opening.value)
        self._put(opening.date, Kind.OPENING, Holding(supply.slug), opening.quantity, cost, opening.place)

    def open_scrap(self, supply: Supply, scrap: Scrap) -> None:
        """Odd pieces that were there before the first record."""
        cost = UNKNOWN if scrap.value is None else Cost(scrap.value)
        holding = Holding(supply.slug, scrap.size)
        self._put(scrap.date, Kind.OPENING, holding, Fraction(scrap.count), cost, scrap.place)

    def buy(self, purchase: Purchase) -> None:
        """A line of an order comes in."""
        cost = UNKNOWN if purchase.value is None else Cost(purchase.value)
        self._put(
            purchase.date, Kind.BOUGHT, Holding(purchase.supply), purchase.quantity, cost, purchase.place,
            supplier=purchase.supplier,
        )  # fmt: skip

    def make(self, project: Project) -> None:
        """A batch takes all it needs; only then does it put back what it keeps."""
        self._draws[project.slug] = []
        back: list[tuple[Cut, KeptPiece, Cost]] = []
        for cut in project.cut:
            back += self._cut(project, cut)
        for use in project.uses:
            self._use(project, use)
        for cut, piece, cost in back:
            holding = Holding(cut.supply, piece.size)
            self._put(
                project.date, Kind.KEPT, holding, Fraction(piece.count), cost, cut.place, project=project.slug
            )

    def count(self, count: Count) -> None:
        """A count sets the balance: a shortage leaves at cost, a surplus enters at none."""
        holding = Holding(count.supply)
        pile = self._pile(holding)
        change = count.quantity - pile.quantity
        cost = NOTHING
        if change > 0:
            pile.put(change, NOTHING)
        elif change < 0:
            out = pile.take(-change)
            cost = Cost(-out.known, out.complete)
        self._note(count.date, Kind.COUNTED, holding, change, cost, count.place)

    def _cut(self, project: Project, cut: Cut) -> list[tuple[Cut, KeptPiece, Cost]]:
        """Take the sheets of one line; returns what will go back, with its share by area."""
        holding = Holding(cut.supply, cut.scrap)
        taken = self._take(project, holding, Fraction(cut.count), cut.place)
        supply = self._supplies[cut.supply]
        sheet = cut.scrap or supply.sheet
        areas = [piece.size.area * piece.count for piece in cut.kept]
        whole = sheet.area * cut.count
        for piece in cut.kept:
            if not _lies_on(piece.size, sheet):
                self._problems.append(
                    Problem(
                        cut.place,
                        f"a kept piece is larger than the {supply.unit} it comes from; check its size",
                    )
                )
        if sum(areas) > whole:
            self._problems.append(
                Problem(
                    cut.place, f"more {supply.name} is kept here than was cut; check the sizes and the counts"
                )
            )
        rest = max(whole - sum(areas), Fraction(0))
        shares = share(taken.known, [*areas, rest])
        back = [Cost(part, taken.complete) for part in shares[:-1]]
        kept = sum(back, NOTHING)
        self._draws[project.slug].append(
            Draw(project.slug, cut.supply, cut.scrap, Fraction(cut.count), taken, kept)
        )
        return [(cut, piece, cost) for piece, cost in zip(cut.kept, back, strict=True)]

    def _use(self, project: Project, use: Use) -> None:
        taken = NOTHING
        if use.quantity is not None:
            taken = self._take(project, Holding(use.supply), use.quantity, use.place)
        self._draws[project.slug].append(Draw(project.slug, use.supply, None, use.quantity, taken, NOTHING))

    def _take(self, project: Project, holding: Holding, quantity: Fraction, place: Place) -> Cost:
        pile = self._pile(holding)
        missing = quantity - pile.quantity
        if missing > 0:
            self._problems.append(self._shortage(project, holding, quantity, pile.quantity, place))
            self._put(project.date, Kind.UNEXPLAINED, holding, missing, UNKNOWN, place, project=project.slug)
        out = pile.take(quantity)
        self._note(
            project.date, Kind.TAKEN, holding, -quantity, Cost(-out.known, out.complete), place,
            project=project.slug,
        )  # fmt: skip
        return out

    def _shortage(
        self, project: Project, holding: Holding, wanted: Fraction, there: Fraction, place: Place
    ) -> Problem:
        supply = self._supplies[holding.supply]
        if holding.piece is not None:
            size = show_size(holding.piece, project.unit)
            what = f"{show_number(wanted)} of {size} {project.unit.value} of {supply.name}"
        else:
            what = f"{show_number(wanted)} {supply.name_of_unit(wanted)} of {supply.name}"
        sentence = (
            f"this takes {what}, and on {project.date.isoformat()} the drawer has {show_number(there)};"
            " a purchase, an opening or a count is missing from the records"
        )
        return Problem(place, sentence, Weight.NOTICE)

    def _pile(self, holding: Holding) -> Pile:
        return self._piles.setdefault(holding, new_pile(self._flow))

    def _put(
        self, date: dt.date, kind: Kind, holding: Holding, quantity: Fraction, cost: Cost, place: Place,
        *, project: str = "", supplier: str = "",
    ) -> None:  # fmt: skip
        self._pile(holding).put(quantity, cost)
        self._note(date, kind, holding, quantity, cost, place, project=project, supplier=supplier)

    def _note(
        self, date: dt.date, kind: Kind, holding: Holding, quantity: Fraction, cost: Cost, place: Place,
        *, project: str = "", supplier: str = "",
    ) -> None:  # fmt: skip
        on_hand = self._pile(holding).quantity
        self._movements.append(
            Movement(date, kind, holding, quantity, cost, on_hand, project, supplier, place)
        )
