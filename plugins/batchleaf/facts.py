"""What the records mean, as the core computes with it.

Everything here is complete: defaults are applied, roles are filled, names are
known to exist. Lengths are in mm, money in minor units of the archive's one
currency (cents), quantities in the supply's own unit.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.money import Currency


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where something stands in the maker's files; lines and columns count from 1."""

    file: str
    line: int
    column: int


NOWHERE = Place("", 0, 0)


class Weight(StrEnum):
    """How much a problem weighs."""

    ERROR = "error"
    """The record cannot be read as meant; nothing is built from it."""
    NOTICE = "notice"
    """The record is read; the maker may want to know."""


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One sentence for the maker, with the place it speaks of."""

    place: Place
    sentence: str
    weight: Weight = Weight.ERROR
    line_text: str = ""
    paste: str = ""
    """Lines that would mend it, ready to be pasted into a record."""


class CostFlow(StrEnum):
    """Which of the sheets on hand a batch is taken to have used (IAS 2, paragraph 25)."""

    AVERAGE = "average"
    """Each costs the average of all on hand."""
    OLDEST_FIRST = "oldest first"
    """The oldest lot goes first."""


@dataclass(frozen=True, slots=True)
class Settings:
    """What holds for the whole archive."""

    unit: Unit
    currency: Currency
    cost_flow: CostFlow = CostFlow.AVERAGE


class Status(StrEnum):
    """How far a batch has come."""

    IDEA = "idea"
    PLANNED = "planned"
    CUT = "cut"
    MADE = "made"
    PUBLISHED = "published"

    @property
    def moves_the_drawer(self) -> bool:
        """Only what has been cut has left the drawer."""
        return self in (Status.CUT, Status.MADE, Status.PUBLISHED)


class Fold(StrEnum):
    """Where a base is folded in half."""

    NONE = "none"
    SIDE = "side fold"
    """The fold runs down the middle of the first measure."""
    TOP = "top fold"
    """The fold runs across the middle of the second measure."""


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of a make. ``papers`` are the supplies it may be cut from."""

    letter: str
    name: str
    size: Size
    each: int
    papers: tuple[str, ...]
    turns: bool
    fold: Fold = Fold.NONE
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class KeptPiece:
    """Offcuts, or spare parts (``letter``), that went back; ``size`` as :meth:`Supply.piece` names it."""

    size: Size
    count: int
    letter: str = ""


@dataclass(frozen=True, slots=True)
class Cut:
    """Sheets of one supply that a batch took; ``scrap``: the size of an odd piece, as named by the supply."""

    supply: str
    count: int
    scrap: Size | None
    kept: tuple[KeptPiece, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Use:
    """What a batch took besides sheets; ``quantity`` is for the whole batch.

    ``None``: used, but not measured (a stamp of ink).
    """

    supply: str
    quantity: Fraction | None
    per_make: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Step:
    """One sentence of making; ``film_seconds`` is where the film shows it."""

    sentence: str
    film_seconds: int | None = None


@dataclass(frozen=True, slots=True)
class Photo:
    """A picture in the project's folder: the cover, of one step (from 1), or neither (0)."""

    path: str
    step: int
    cover: bool
    alt: str
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Project:
    """One batch."""

    slug: str
    title: str
    date: dt.date
    status: Status
    series: str | None
    unit: Unit
    thing: str
    things: str
    finished: int
    begun: int
    finished_size: Size | None
    parts: tuple[Part, ...]
    cut: tuple[Cut, ...]
    uses: tuple[Use, ...]
    minutes: int | None
    steps: tuple[Step, ...]
    photos: tuple[Photo, ...]
    notes: str
    was: tuple[str, ...] = ()
    """Addresses that the batch had before it was renamed."""
    place: Place = field(default=NOWHERE, compare=False)

    def name_of(self, count: int) -> str:
        """The noun that goes with ``count``: 1 bookmark, 22 bookmarks."""
        return self.thing if count == 1 else self.things


class Grain(StrEnum):
    """How the fibres of a sheet lie."""

    LONG = "long"
    SHORT = "short"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Opening:
    """What was there before the first record; ``value`` None: nobody knows what it cost."""

    date: dt.date
    quantity: Fraction
    value: int | None
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Scrap:
    """Odd pieces of one size that were in the drawer before the first record."""

    size: Size
    count: int
    value: int | None
    date: dt.date
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Supply:
    """Anything used up. ``size`` makes it a paper (or card, film) that is cut."""

    slug: str
    name: str
    kind: str
    unit: str
    units: str
    length_unit: Unit
    size: Size | None
    grain: Grain
    turns: bool
    colour: str
    grammage: Fraction | None
    opening: Opening | None
    scraps: tuple[Scrap, ...]
    link: str
    about: str
    place: Place = field(default=NOWHERE, compare=False)

    def piece(self, size: Size) -> Size:
        """One name for pieces that are the same: shorter side first, unless the pattern has an up."""
        return size.upright if self.turns else size

    @property
    def sheet(self) -> Size:
        """The size of a sheet, for a supply that is cut: a cut line names no other."""
        if self.size is None:
            raise ValueError(f"{self.slug} has no sheet size")
        return self.size

    def name_of_unit(self, quantity: Fraction) -> str:
        """The noun that goes with ``quantity``: 1 sheet, 4 sheets."""
        return self.unit if quantity == 1 else self.units


@dataclass(frozen=True, slots=True)
class Purchase:
    """One line of one order; ``value`` includes its share of the delivery."""

    date: dt.date
    supply: str
    quantity: Fraction
    value: int | None
    supplier: str
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Count:
    """What was found in the drawer at the end of a day."""

    date: dt.date
    supply: str
    quantity: Fraction
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Series:
    """Projects that belong together, in order of date."""

    slug: str
    title: str
    about: str
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Archive:
    """All records of one maker, sorted: nothing depends on the order of files."""

    projects: tuple[Project, ...]
    supplies: tuple[Supply, ...]
    purchases: tuple[Purchase, ...]
    counts: tuple[Count, ...]
    series: tuple[Series, ...]
