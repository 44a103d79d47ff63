"""One pile in the drawer: what comes in, what goes out, and at which cost.

Whatever goes out is rounded once to minor units and the remainder stays, so
that quantity and value are conserved to the last minor unit:
in = out + on hand, at every moment.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cost import Cost
from batchleaf.core.movements import Lot, Moment
from batchleaf.facts import Basis, CostFlow
from batchleaf.measure.money import rounded


@dataclass(frozen=True, slots=True)
class Issue:
    """What goes out of a pile: its cost, and the lots from which that cost comes."""

    cost: Cost
    lots: tuple[Lot, ...]


class Pile(ABC):
    """A quantity with its cost."""

    @property
    @abstractmethod
    def quantity(self) -> Fraction:
        """How much is on hand."""

    @property
    @abstractmethod
    def cost(self) -> Cost:
        """What is on hand cost."""

    @abstractmethod
    def put(self, quantity: Fraction, cost: Cost, came: Moment) -> None:
        """A lot comes in."""

    @abstractmethod
    def take(self, quantity: Fraction) -> Issue:
        """``quantity`` (no more than is on hand) goes out."""


@dataclass(slots=True)
class _Lot:
    """A lot as it gets less; ``remains`` is what the rest of it still costs."""

    came: Moment
    whole: Fraction
    cost: Cost
    quantity: Fraction
    remains: Cost

    def part(self, quantity: Fraction) -> Lot:
        """So much of it, for others to see."""
        return Lot(self.came, quantity, self.whole, self.cost)


class AveragePile(Pile):
    """Each unit costs the average of all on hand (weighted average, IAS 2, paragraph 27).

    Which lots are on hand is told as if the oldest went first, as it does in a drawer
    that is kept so; no cost depends on it.
    """

    def __init__(self) -> None:
        self._quantity = Fraction(0)
        self._known = 0
        self._unpriced = Fraction(0)
        self._rests_on: frozenset[Basis] = frozenset()
        self._lots: list[_Lot] = []

    @property
    def quantity(self) -> Fraction:
        return self._quantity

    @property
    def cost(self) -> Cost:
        return Cost(self._known, complete=not self._unpriced, rests_on=self._rests_on)

    def put(self, quantity: Fraction, cost: Cost, came: Moment) -> None:
        if quantity:
            self._lots.append(_Lot(came, quantity, cost, quantity, cost))
        self._quantity += quantity
        self._rests_on |= cost.rests_on
        self._known += cost.known
        if not cost.complete:
            self._unpriced += quantity

    def take(self, quantity: Fraction) -> Issue:
        if not quantity:
            return Issue(Cost(0), ())
        there = tuple(lot.part(lot.quantity) for lot in self._lots)
        part = quantity / self._quantity
        out = self.cost.part(rounded(self._known * part))
        self._known -= out.known
        if self._unpriced:
            self._unpriced -= self._unpriced * part
        self._quantity -= quantity
        if not self._quantity:
            self._rests_on = frozenset()
        self._pass_on(quantity)
        return Issue(out, there)

    def _pass_on(self, quantity: Fraction) -> None:
        """The oldest lots get less by ``quantity``."""
        while quantity:
            lot = self._lots[0]
            gone = min(quantity, lot.quantity)
            lot.quantity -= gone
            quantity -= gone
            if not lot.quantity:
                self._lots.pop(0)


class OldestFirstPile(Pile):
    """The oldest lot goes first (FIFO, IAS 2, paragraph 27)."""

    def __init__(self) -> None:
        self._lots: list[_Lot] = []
        self._quantity = Fraction(0)

    @property
    def quantity(self) -> Fraction:
        return self._quantity

    @property
    def cost(self) -> Cost:
        return sum((lot.remains for lot in self._lots), Cost(0))

    def put(self, quantity: Fraction, cost: Cost, came: Moment) -> None:
        if quantity:
            self._lots.append(_Lot(came, quantity, cost, quantity, cost))
            self._quantity += quantity

    def take(self, quantity: Fraction) -> Issue:
        out, lots = Cost(0), []
        self._quantity -= quantity
        while quantity:
            lot = self._lots[0]
            taken = min(quantity, lot.quantity)
            part = lot.remains.part(rounded(lot.remains.known * taken / lot.quantity))
            lots.append(lot.part(taken))
            lot.remains -= part
            lot.quantity -= taken
            quantity -= taken
            out += part
            if not lot.quantity:
                self._lots.pop(0)
        return Issue(out, tuple(lots))


def new_pile(flow: CostFlow) -> Pile:
    """An empty pile that issues by ``flow``."""
    return AveragePile() if flow is CostFlow.AVERAGE else OldestFirstPile()
