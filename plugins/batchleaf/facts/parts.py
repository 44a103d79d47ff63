"""What one make is: its parts, their folds, and the design they belong to."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction

from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.terms import NO_TERMS, Credit, Terms
from batchleaf.measure.lengths import Size


class Fold(StrEnum):
    """How a flat blank becomes the finished piece."""

    NONE = "flat"
    SIDE = "side fold"
    """The fold runs down the middle of the first measure."""
    TOP = "top fold"
    """The fold runs across the middle of the second measure."""
    TENT = "tent"
    """A top fold that stands open."""
    GATE = "gate fold"
    """Two doors, each half as wide as the back, meet in the middle."""
    ACCORDION = "accordion"
    """Panels of one width, folded to and fro."""
    BOX = "box"
    """A bottom and four walls."""


@dataclass(frozen=True, slots=True)
class Score:
    """A straight line, from edge to edge of a part, along which it is scored and folded."""

    runs_down: bool
    """True: from the top edge to the foot, ``at`` measured from the left; else across, from the top."""
    at: Fraction


class Origin(StrEnum):
    """Where a part comes from."""

    CUT = "cut from sheets"
    BY_HAND = "cut by hand from scraps"
    """Nobody measured the scraps: the plan leaves the part out, and the drawer does not move."""
    READY = "ready-made"
    """Bought as it is: a blank, a sticker, a die-cut piece."""


class ShownSide(StrEnum):
    """Which side of its paper a part shows."""

    FRONT = "front"
    BACK = "back"


@dataclass(frozen=True, slots=True)
class ImageUse:
    """Images of one stamp or die set that a part gets; no numbers: the set is one image."""

    tool: str
    numbers: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of a make. ``papers`` are the supplies it may come from.

    ``extra`` parts are made on top of what the makes need, for the batch as a
    whole. ``any_of`` above 0: so many papers of a pad, and the record does not
    say which.
    """

    letter: str
    name: str
    size: Size
    each: int
    papers: tuple[str, ...]
    turns: bool
    fold: Fold = Fold.NONE
    scores: tuple[Score, ...] = ()
    origin: Origin = Origin.CUT
    extra: int = 0
    any_of: int = 0
    side: ShownSide = ShownSide.FRONT
    below: str = ""
    """The letter of the part it lies on."""
    stamps: tuple[ImageUse, ...] = ()
    dies: tuple[ImageUse, ...] = ()
    place: Place = field(default=NOWHERE, compare=False)


@dataclass(frozen=True, slots=True)
class Design:
    """What one make is, where it stands alone.

    ``roles`` are the papers it asks for, each with what is said of it.
    """

    slug: str
    title: str
    roles: tuple[tuple[str, str], ...]
    about: str = ""
    credit: Credit | None = None
    terms: Terms = NO_TERMS
    place: Place = field(default=NOWHERE, compare=False)
