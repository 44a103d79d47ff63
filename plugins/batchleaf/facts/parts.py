"""What one make is: its parts, their folds, and the design they belong to."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.facts.places import NOWHERE, Place
from batchleaf.facts.shapes import RECTANGLE, Shape
from batchleaf.facts.spots import Spot
from batchleaf.facts.sticking import Stuck
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
    SLEEVE = "sleeve"
    """Front, right side, back, left side and a flap, from the left; one that lies flat has no sides."""
    SLIPCASE = "slipcase"
    """Back, spine and front, from the left, with flaps above and below; open at the right."""
    COVER = "cover"
    """Back, spine and front, from the left, with edges that are turned in all round."""

    @property
    def goes_round(self) -> bool:
        """Whether it is folded round something else."""
        return self in (Fold.SLEEVE, Fold.SLIPCASE, Fold.COVER)


@dataclass(frozen=True, slots=True)
class Score:
    """A straight line, from edge to edge of a part, along which it is scored and folded."""

    runs_down: bool
    """True: from the top edge to the foot, ``at`` measured from the left; else across, from the top."""
    at: Fraction


_FRONT_OF: Final = {Fold.SLEEVE: 0, Fold.SLIPCASE: -1, Fold.COVER: -2}
"""Which panel from the left is the front; of all others it is the middle one that is seen."""

_DEPTH_OF: Final = {Fold.SLEEVE: (0, 4), Fold.SLIPCASE: (0, 2), Fold.COVER: (1, 4)}
"""The score from the left after which side or spine begins; how many scores there are if it has one."""


def folded_size(size: Size, scores: tuple[Score, ...], fold: Fold) -> Size:
    """The panel of a blank that is seen: the face of a card between its doors, the bottom of a box."""
    down = _panels(size.width, [score.at for score in scores if score.runs_down])
    across = _panels(size.height, [score.at for score in scores if not score.runs_down])
    return Size(down[_FRONT_OF.get(fold, len(down) // 2)], across[len(across) // 2])


def _panels(length: Fraction, scores: list[Fraction]) -> list[Fraction]:
    return [b - a for a, b in pairwise([Fraction(0), *sorted(scores), length])]


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
    """Images of one stamp or die set that a part gets; no numbers: the set is one image.

    Several numbers are dealt round: each part gets one of them.
    """

    tool: str
    numbers: tuple[int, ...] = ()

    @property
    def is_dealt(self) -> bool:
        """Whether the parts get different images."""
        return len(self.numbers) > 1


@dataclass(frozen=True, slots=True)
class Part:
    """One piece of a make. ``papers`` are the supplies it may come from.

    ``extra`` parts are made on top of what the makes need, for the batch as a
    whole. ``any_of`` above 0: so many papers of a pad, and the record does not
    say which. ``oversize``: by how much it is cut larger on each side, in mm.
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
    oversize: Fraction = Fraction(0)
    before: str = ""
    """What is done to the piece in hand before the part is cut from it."""
    side: ShownSide = ShownSide.FRONT
    below: str = ""
    """The letter of the part it lies on."""
    spots: tuple[Spot, ...] = ()
    """Its places; none: in the middle of what carries it."""
    stamps: tuple[ImageUse, ...] = ()
    dies: tuple[ImageUse, ...] = ()
    room: Fraction | None = None
    """How much larger a lid or a sleeve is than what goes in, or how far a cover stands out, in mm."""
    stuck: Stuck | None = None
    """What it is stuck with; ``None`` where it is not stuck, or nobody says."""
    shape: Shape = RECTANGLE
    """What is cut from its rectangle; of a folded base from all of its panels at once, once it is folded."""
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    @property
    def has_several_papers(self) -> bool:
        """Whether one make may get it from another paper than the next."""
        return max(len(self.papers), self.any_of) > 1

    @property
    def dealt_images(self) -> tuple[ImageUse, ...]:
        """Of its stamps, then of its dies, those that are dealt round."""
        return tuple(use for use in (*self.stamps, *self.dies) if use.is_dealt)

    @property
    def cut_size(self) -> Size:
        """As it leaves the sheet, before it is trimmed to its size."""
        return Size(self.size.width + 2 * self.oversize, self.size.height + 2 * self.oversize)

    @property
    def folded_size(self) -> Size:
        """The face that it shows, and that others lie on, once it is folded."""
        return folded_size(self.size, self.scores, self.fold)

    @property
    def depth(self) -> Fraction:
        """How thick what a sleeve, a slipcase or a cover goes round may be, in mm; 0 where it lies flat."""
        down = sorted(score.at for score in self.scores if score.runs_down)
        first, scores = _DEPTH_OF.get(self.fold, (0, len(down) + 1))
        return down[first + 1] - down[first] if len(down) == scores else Fraction(0)

    @property
    def area(self) -> Fraction:
        """Square millimetres of one, once it has its shape; the cutting plan needs its whole rectangle."""
        if self.shape.is_rectangle:
            return self.size.area
        return self.shape.outline(self.folded_size).area * (len(self.scores) + 1)

    @property
    def walls(self) -> Fraction | None:
        """How high the walls of a box stand, in mm; nothing else has any."""
        return self.scores[0].at if self.fold is Fold.BOX else None


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
    place: Place = field(default=NOWHERE, compare=False, repr=False)
