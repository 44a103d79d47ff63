"""One batch: what was cut, used, made, and where it went."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from batchleaf.facts.collating import Collating
from batchleaf.facts.film import Film
from batchleaf.facts.parts import Origin, Part
from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.terms import Credit
from batchleaf.facts.works import Work
from batchleaf.measure.lengths import Size, Unit


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


class Companion(StrEnum):
    """Who gets the companion notes, the printable sheet that goes with a batch."""

    PUBLIC = "public"
    """Everybody: they are a page of the site."""
    HAND_OUT = "hand-out"
    """Those to whom the maker gives them: they are a file that no page leads to."""


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
    place: Place = field(default=NOWHERE, compare=False, repr=False)


class Purpose(StrEnum):
    """What something is used for besides being cut."""

    WORKED_IN = "worked in"
    STICKING = "sticking"
    """It sticks parts on."""
    PACKING = "packing"
    """Finished makes go into it, or are held together by it."""


@dataclass(frozen=True, slots=True)
class Use:
    """What a batch took besides sheets; ``quantity`` is for the whole batch.

    ``None``: used, but not measured (a stamp of ink). ``per_make``: what each make
    takes, where each takes as much.
    """

    supply: str
    quantity: Fraction | None
    per_make: Fraction | None = None
    place: Place = field(default=NOWHERE, compare=False, repr=False)
    purpose: Purpose = Purpose.WORKED_IN


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
    place: Place = field(default=NOWHERE, compare=False, repr=False)


class Whereabouts(StrEnum):
    """Where finished makes are."""

    KEPT = "kept"
    GIVEN = "given"
    SOLD = "sold"
    SAMPLE = "sample"
    CLASS = "class"


@dataclass(frozen=True, slots=True)
class Went:
    """Finished makes that went one way; ``value`` is what was paid for all of them."""

    count: int
    where: Whereabouts
    value: int | None = None
    date: dt.date | None = None
    words: str = ""
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Asked:
    """What is asked for one make, in minor units."""

    price: int
    place: Place = field(default=NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Project:
    """One batch. ``finished_size``: after folding; a box has its ``height`` besides."""

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
    design: str = ""
    """The design that stands alone, where it uses one."""
    height: Fraction | None = None
    envelope: str = ""
    """The envelope that goes with a standard base, by its usual name and size."""
    tools: tuple[str, ...] = ()
    kerf: Fraction = Fraction(0)
    """What each cut takes away, of the tool that takes most."""
    went: tuple[Went, ...] = ()
    asks: Asked | None = None
    youngest: int | None = None
    """The age in months of the youngest who gets one, where the record tells it."""
    occasions: tuple[str, ...] = ()
    """What it is for, in the maker's words."""
    credit: Credit | None = None
    collating: tuple[Collating, ...] = ()
    """Every part that comes from several papers stands in one of these."""
    film: Film | None = None
    works: tuple[Work, ...] = ()
    """What is done at the bench besides cutting: what the record names, then what follows from its parts."""
    companion: Companion = Companion.PUBLIC
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    @property
    def in_hand(self) -> bool:
        """Cut, and none of it finished yet: what lies in parts is neither made nor spoiled."""
        return self.status is Status.CUT and not self.finished

    @property
    def used_so_far(self) -> tuple[Use, ...]:
        """What was used besides sheets; of a batch in hand only what has an amount of its own."""
        return tuple(use for use in self.uses if use.quantity) if self.in_hand else self.uses

    @property
    def cut_parts(self) -> tuple[Part, ...]:
        """The parts that come from sheets: all that a cutting plan is about."""
        return tuple(part for part in self.parts if part.origin is Origin.CUT)

    def name_of(self, count: int) -> str:
        """The noun that goes with ``count``: 1 bookmark, 22 bookmarks."""
        return self.thing if count == 1 else self.things
