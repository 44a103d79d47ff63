"""What the ledger is made of: piles, what moves them, what batches draw from them."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.entries import Kind
from batchleaf.facts import NOWHERE, Basis, Place, Problem, Purpose
from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class Holding:
    """Whole units of a supply, or its odd pieces of one size, as :meth:`Supply.piece` names it.

    Whole sheets of a numbered paper lie in the pile of its pad: all sheets of a
    pad have one price. Its odd pieces have piles of their own.
    """

    supply: str
    piece: Size | None = None


@dataclass(frozen=True, slots=True)
class Moment:
    """When and why something moved."""

    date: dt.date
    kind: Kind
    place: Place = field(default=NOWHERE, repr=False)
    project: str = ""
    supplier: str = ""
    why: str = ""
    """What it went for, where that was no batch."""


@dataclass(frozen=True, slots=True)
class Lot:
    """``quantity`` of what came in at one moment, when it was ``whole`` and had this ``cost``.

    The price of one is ``cost`` ÷ ``whole``.
    """

    came: Moment
    quantity: Fraction
    whole: Fraction
    cost: Cost


@dataclass(frozen=True, slots=True)
class Found:
    """What a count found, and what was ``expected``; ``about``: it was rough, and bears that out.

    ``since``: the day of the count before, or that on which the first of it came in.
    ``unnamed``: by how much the two differ since sheets of the pad were taken (below
    nothing), or came in, without a number.
    """

    quantity: Fraction
    expected: Fraction
    since: dt.date | None
    about: bool = False
    unnamed: Fraction = Fraction(0)

    @property
    def differs(self) -> Fraction:
        """What nothing explains: below nothing, so much is missing."""
        return self.quantity - self.expected - self.unnamed


@dataclass(frozen=True, slots=True)
class Movement:
    """``quantity`` and ``cost`` as they change the pile (negative: out).

    ``on_hand`` and ``worth``: what the pile holds after it, and what that cost.
    ``paper``: the numbered paper that was meant, where the pile is that of a pad.
    ``basis``: how the maker knows what came in for that price. ``found``: of a count.
    """

    moment: Moment
    holding: Holding
    quantity: Fraction
    cost: Cost
    on_hand: Fraction
    paper: str = ""
    basis: Basis = Basis.STATED
    found: Found | None = None
    worth: Cost = NOTHING

    @property
    def date(self) -> dt.date:
        """The day of it."""
        return self.moment.date

    @property
    def kind(self) -> Kind:
        """What kind of movement it is."""
        return self.moment.kind


@dataclass(frozen=True, slots=True)
class PaperMovement:
    """Sheets of one numbered paper, which are priced with the pad they lie in."""

    moment: Moment
    paper: str
    quantity: Fraction
    on_hand: Fraction


@dataclass(frozen=True, slots=True)
class Draw:
    """What one line of a batch's record took from the drawer, and what of it went back.

    ``lots``: where its price comes from: the lots it was taken from, where the oldest
    goes first; all that lay there, where the average counts. ``purpose``: what it was
    used for, where it was not cut.
    """

    project: str
    supply: str
    piece: Size | None
    quantity: Fraction | None
    """``None``: used, but not measured."""
    taken: Cost
    kept: Cost
    lots: tuple[Lot, ...] = ()
    purpose: Purpose | None = None

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
    """All movements in order, what each batch drew, what is left, and what cannot be.

    ``papers``: sheets on hand of each numbered paper, so far as records say which
    were taken. ``unnamed``: for each pad, the sheets of which no record says the
    number; below nothing where so many were taken.
    """

    movements: tuple[Movement, ...]
    draws: Mapping[str, tuple[Draw, ...]]
    balances: tuple[Balance, ...]
    problems: tuple[Problem, ...]
    paper_movements: tuple[PaperMovement, ...]
    papers: Mapping[str, Fraction]
    unnamed: Mapping[str, Fraction]
