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
from batchleaf.facts import Basis, CostFlow
from batchleaf.measure.money import rounded


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
    def put(self, quantity: Fraction, cost: Cost) -> None:
        """A lot comes in."""

    @abstractmethod
    def take(self, quantity: Fraction) -> Cost:
        """``quantity`` (no more than is on hand) goes out; returns what it cost."""


class AveragePile(Pile):
    """Each unit costs the average of all on hand (weighted average, IAS 2, paragraph 27)."""

    def __init__(self) -> None:
        self._quantity = Fraction(0)
        self._known = 0
        self._unpriced = Fraction(0)
        self._rests_on: frozenset[Basis] = frozenset()

    @property
    def quantity(self) -> Fraction:
        return self._quantity

    @property
    def cost(self) -> Cost:
        return Cost(self._known, complete=not self._unpriced, rests_on=self._rests_on)

    def put(self, quantity: Fraction, cost: Cost) -> None:
        self._quantity += quantity
        self._rests_on |= cost.rests_on
        self._known += cost.known
        if not cost.complete:
            self._unpriced += quantity

    def take(self, quantity: Fraction) -> Cost:
        if not quantity:
            return Cost(0)
        part = quantity / self._quantity
        out = self.cost.part(rounded(self._known * part))
        self._known -= out.known
        self._unpriced -= self._unpriced * part
        self._quantity -= quantity
        if not self._quantity:
            self._rests_on = frozenset()
        return out


@dataclass(slots=True)
class _Lot:
    quantity: Fraction
    cost: Cost


class OldestFirstPile(Pile):
    """The oldest lot goes first (FIFO, IAS 2, paragraph 27)."""

    def __init__(self) -> None:
        self._lots: list[_Lot] = []

    @property
    def quantity(self) -> Fraction:
        return sum((lot.quantity for lot in self._lots), Fraction(0))

    @property
    def cost(self) -> Cost:
        return sum((lot.cost for lot in self._lots), Cost(0))

    def put(self, quantity: Fraction, cost: Cost) -> None:
        if quantity:
            self._lots.append(_Lot(quantity, cost))

    def take(self, quantity: Fraction) -> Cost:
        out = Cost(0)
        while quantity:
            lot = self._lots[0]
            taken = min(quantity, lot.quantity)
            part = lot.cost.part(rounded(lot.cost.known * taken / lot.quantity))
            lot.cost -= part
            lot.quantity -= taken
            quantity -= taken
            out += part
            if not lot.quantity:
                self._lots.pop(0)
        return out


def new_pile(flow: CostFlow) -> Pile:
    """An empty pile that issues by ``flow``."""
    return AveragePile() if flow is CostFlow.AVERAGE else OldestFirstPile()
