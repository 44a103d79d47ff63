"""Sheet plans as trees of through cuts; positions and settings derive from the tree."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction


class Axis(StrEnum):
    """The direction along which a cut's setting is measured."""

    X = "x"
    """The blade runs along y; the setting is measured from the left edge of the piece."""
    Y = "y"
    """The blade runs along x; the setting is measured from the top edge of the piece."""


@dataclass(frozen=True, slots=True)
class PartLeaf:
    """A piece that is a part, to size; ``turned`` by a quarter against the job's size."""

    part: str
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Leftover:
    """A piece that is no part: an offcut to keep, or waste."""


@dataclass(frozen=True, slots=True)
class ThroughCut:
    """A straight cut from edge to edge of the piece in hand.

    ``at`` is measured from the left (X) or top (Y) edge of that piece, in mm;
    ``first`` is the piece before the cut, ``second`` the one after (and after the kerf).
    """

    axis: Axis
    at: Fraction
    first: Node
    second: Node


Node = PartLeaf | Leftover | ThroughCut


def leaves_of(tree: Node) -> Counter[str]:
    """How often each part comes out of ``tree``."""
    found: Counter[str] = Counter()
    waiting = [tree]
    while waiting:
        node = waiting.pop()
        if isinstance(node, PartLeaf):
            found[node.part] += 1
        elif isinstance(node, ThroughCut):
            waiting += (node.first, node.second)
    return found


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """How one kind of sheet is cut, and how many sheets are cut like this."""

    stock: str
    times: int
    tree: Node


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """The most makes from the sheets at hand.

    ``bound``: no way of through cuts gives more makes than this. ``proved``:
    makes equals the bound. ``reason`` is a sentence for a maker.
    ``spares``: (part, how many) cut beyond the makes.
    """

    makes: int
    bound: int
    reason: str
    plans: tuple[SheetPlan, ...]
    spares: tuple[tuple[str, int], ...]

    @property
    def proved(self) -> bool:
        """True where the bound is met."""
        return self.makes == self.bound


@dataclass(frozen=True, slots=True)
class CostPlan:
    """The least cost of sheets for a number of makes.

    ``cost`` None: no way was found, and ``plans`` is empty. ``bound``: no way of
    through cuts costs less than this (None: there is no way at all). Both in the
    unit of the stocks' costs.
    """

    makes: int
    cost: Fraction | None
    bound: Fraction | None
    reason: str
    plans: tuple[SheetPlan, ...]
    spares: tuple[tuple[str, int], ...]

    @property
    def proved(self) -> bool:
        """True where the bound is met, or where it is shown that there is no way."""
        return self.cost == self.bound


@dataclass(frozen=True, slots=True)
class Least:
    """The cost and the bound of a :class:`CostPlan`."""

    cost: Fraction | None
    bound: Fraction | None


@dataclass(frozen=True, slots=True)
class BestUse:
    """``plan`` cuts parts worth ``worth``; no way of through cuts is worth more than ``bound``."""

    worth: int
    bound: int
    plan: SheetPlan

    @property
    def proved(self) -> bool:
        """True where the bound is met."""
        return self.worth == self.bound
