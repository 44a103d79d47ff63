"""The drawer over time: every movement that the records state, in date order.

On one day: openings, purchases, what batches take and keep (by slug), what went
elsewhere, counts. Nothing here depends on a computed plan, on the order of files or
on the clock. A quantity that is used but was never on hand enters as unexplained, at
no known price, and is told as a problem.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction

from batchleaf.core.cost import NOTHING, UNKNOWN, Cost
from batchleaf.core.entries import Kind, ScrapOpening, SupplyOpening, entries_of
from batchleaf.core.movements import Balance, Draw, Found, Holding, Ledger, Moment, Movement
from batchleaf.core.pads import PadBook
from batchleaf.core.pile import Issue, Pile, new_pile
from batchleaf.core.unexplained import Comings, Wanted, shortage
from batchleaf.facts import (
    Archive,
    Basis,
    CostFlow,
    Count,
    Cut,
    Gone,
    KeptPiece,
    Opening,
    Place,
    Problem,
    Project,
    Purchase,
    Scrap,
    Supply,
    Use,
)
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.money import share

__all__ = ["Draw", "Ledger", "keep_ledger", "near_enough"]


def keep_ledger(archive: Archive, flow: CostFlow, until: dt.date | None = None) -> Ledger:
    """Run through the records of ``archive`` in date order, to the end of ``until``, or to the last."""
    book = _Book(archive, flow)
    for entry in entries_of(archive, until):
        match entry:
            case SupplyOpening(supply=supply, opening=opening):
                book.open_supply(supply, opening)
            case ScrapOpening(supply=supply, scrap=scrap):
                book.open_scrap(supply, scrap)
            case Purchase():
                book.buy(entry)
            case Project():
                book.make(entry)
            case Gone():
                book.lose(entry)
            case Count():
                book.count(entry)
    return book.closed()


def near_enough(found: Fraction, expected: Fraction) -> bool:
    """Whether a rough count bears out what was expected: within a fifth of it, and within one anyway.

    The rule is the house's own: by eye a stack of twenty is told from one of twenty-five, not from
    one of twenty-two.
    """
    return abs(found - expected) <= max(expected / 5, Fraction(1))


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
        self._pads = PadBook(archive.supplies)
        self._comings = Comings(archive)
        self._movements: list[Movement] = []
        self._draws: dict[str, list[Draw]] = {}
        self._counted: dict[Holding, dt.date] = {}
        """The day of the last count of each holding, or that on which the first of it came in."""
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
            paper_movements=tuple(self._pads.movements),
            papers=self._pads.papers(),
            unnamed=self._pads.unnamed(),
        )

    def open_supply(self, supply: Supply, opening: Opening) -> None:
        """What was there before the first record."""
        moment = Moment(opening.date, Kind.OPENING, opening.place)
        self._put(moment, Holding(supply.slug), opening.quantity, opening.value, opening.basis)

    def open_scrap(self, supply: Supply, scrap: Scrap) -> None:
        """Odd pieces that were there before the first record."""
        moment = Moment(scrap.date, Kind.OPENING, scrap.place)
        self._put(moment, Holding(supply.slug, scrap.size), Fraction(scrap.count), scrap.value, scrap.basis)

    def buy(self, purchase: Purchase) -> None:
        """A line of an order comes in."""
        moment = Moment(purchase.date, Kind.BOUGHT, purchase.place, supplier=purchase.supplier)
        self._put(moment, Holding(purchase.supply), purchase.quantity, purchase.value, purchase.basis)

    def make(self, project: Project) -> None:
        """A batch takes all it needs; only then does it put back what it keeps."""
        self._draws[project.slug] = []
        back: list[tuple[Cut, KeptPiece, Cost]] = []
        for cut in project.cut:
            back += self._cut(project, cut)
        for use in project.used_so_far:
            self._use(project, use)
        for cut, piece, cost in back:
            moment = Moment(project.date, Kind.KEPT, cut.place, project.slug)
            self._come_in(moment, Holding(cut.supply, piece.size), Fraction(piece.count), cost)

    def lose(self, gone: Gone) -> None:
        """Something leaves for another use than a batch, or is lost; its cost goes with it."""
        moment = Moment(gone.date, Kind.GONE, gone.place, why=gone.why)
        self._take(
            moment, Holding(gone.supply, gone.piece), gone.quantity, self._supplies[gone.supply].length_unit
        )

    def count(self, count: Count) -> None:
        """A count sets the balance: a shortage leaves at cost, a surplus enters at none."""
        moment = Moment(count.date, Kind.COUNTED, count.place)
        holding = Holding(count.supply, count.piece)
        pile = self._pile(holding)
        by_number = bool(self._supplies[count.supply].pad) and count.piece is None
        expected = self._pads.on_hand(count.supply) if by_number else pile.quantity
        found = Found(count.quantity, expected, self._last_count(holding))
        self._counted[holding] = count.date
        if count.about and near_enough(count.quantity, expected):
            self._note(moment, holding, Fraction(0), NOTHING, found=replace(found, about=True))
            return
        if by_number:
            change = self._pads.set_paper(moment, count.supply, count.quantity)
            found = replace(found, unnamed=count.quantity - expected - change)
        else:
            change = count.quantity - expected
            if count.piece is None:
                self._pads.set_total(moment, count.supply, change)
        cost = NOTHING
        if change > 0:
            pile.put(change, NOTHING, moment)
        elif change < 0:
            cost = -pile.take(-change).cost
        self._note(moment, holding, change, cost, found=found)

    def _cut(self, project: Project, cut: Cut) -> list[tuple[Cut, KeptPiece, Cost]]:
        """Take the sheets of one line; returns what will go back, with its share by area."""
        holding = Holding(cut.supply, cut.scrap)
        issue = self._take(self._taken_by(project, cut.place), holding, Fraction(cut.count), project.unit)
        taken = issue.cost
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
        back = [taken.part(known) for known in share(taken.known, [*areas, rest])[:-1]]
        kept = sum(back, NOTHING)
        self._draws[project.slug].append(
            Draw(project.slug, cut.supply, cut.scrap, Fraction(cut.count), taken, kept, issue.lots)
        )
        return [(cut, piece, cost) for piece, cost in zip(cut.kept, back, strict=True)]

    def _use(self, project: Project, use: Use) -> None:
        issue = Issue(NOTHING, ())
        if use.quantity is not None:
            moment = self._taken_by(project, use.place)
            issue = self._take(moment, Holding(use.supply), use.quantity, project.unit)
        self._draws[project.slug].append(
            Draw(project.slug, use.supply, None, use.quantity, issue.cost, NOTHING, issue.lots, use.purpose)
        )

    def _taken_by(self, project: Project, place: Place) -> Moment:
        return Moment(project.date, Kind.TAKEN, place, project.slug)

    def _take(self, moment: Moment, holding: Holding, quantity: Fraction, unit: Unit) -> Issue:
        """What leaves, also where it was never seen to come in; ``unit`` is that of its record."""
        unexplained = replace(moment, kind=Kind.UNEXPLAINED)
        pile = self._pile(holding)
        there = self._there(holding)
        # What the drawer does not name is told already, with what to write.
        supply = self._supplies[holding.supply]
        if quantity > there and not supply.supposed:
            wanted = Wanted(supply, holding.piece, quantity, there, unit)
            self._problems.append(shortage(wanted, moment, self._comings))
        if quantity > pile.quantity:
            self._come_in(unexplained, holding, quantity - pile.quantity, UNKNOWN)
        issue = pile.take(quantity)
        if holding.piece is None:
            self._pads.take(moment, unexplained, holding.supply, quantity)
        self._note(moment, holding, -quantity, -issue.cost)
        return issue

    def _there(self, holding: Holding) -> Fraction:
        """As much as there can be of exactly this."""
        if holding.piece is None and self._supplies[holding.supply].pad:
            return self._pads.most(holding.supply)
        return self._pile(holding).quantity

    def _last_count(self, holding: Holding) -> dt.date | None:
        """The day of the count before; of a numbered paper else that of its pad."""
        return self._counted.get(holding) or self._counted.get(self._home(holding))

    def _home(self, holding: Holding) -> Holding:
        """Where it lies: whole sheets of a numbered paper lie in the pile of their pad."""
        pad = self._supplies[holding.supply].pad
        return Holding(pad) if pad and holding.piece is None else holding

    def _pile(self, holding: Holding) -> Pile:
        home = self._home(holding)
        pile = self._piles.get(home)
        if pile is None:
            pile = self._piles[home] = new_pile(self._flow)
        return pile

    def _put(
        self, moment: Moment, holding: Holding, quantity: Fraction, value: int | None, basis: Basis
    ) -> None:
        self._come_in(moment, holding, quantity, Cost.of(value, basis), basis)

    def _come_in(
        self, moment: Moment, holding: Holding, quantity: Fraction, cost: Cost, basis: Basis = Basis.STATED
    ) -> None:
        self._pile(holding).put(quantity, cost, moment)
        self._counted.setdefault(holding, moment.date)
        if holding.piece is None:
            self._pads.put(moment, holding.supply, quantity)
        self._note(moment, holding, quantity, cost, basis=basis)

    def _note(
        self, moment: Moment, holding: Holding, quantity: Fraction, cost: Cost,
        *, basis: Basis = Basis.STATED, found: Found | None = None,
    ) -> None:  # fmt: skip
        home = self._home(holding)
        pile = self._pile(home)
        paper = holding.supply if home != holding else ""
        self._movements.append(
            Movement(moment, home, quantity, cost, pile.quantity, paper, basis, found, pile.cost)
        )
