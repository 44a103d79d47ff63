"""What is done to parts besides cutting: each work with its tool, its moment, and what is waited for."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.facts.parts import Part
from batchleaf.facts.places import NOWHERE, Place


class WorkKind(StrEnum):
    """A work, in the word of the record; in the order in which they are usually done."""

    DIE_CUT = "die-cut"
    INK = "ink"
    STAMP = "stamp"
    EMBOSS = "emboss"
    PUNCH = "punch"
    ROUND = "round"
    """Corners are rounded."""
    SCORE = "score"
    FOLD = "fold"


class Moment(StrEnum):
    """When a work is done, in the words of the record; in order."""

    BEFORE = "before cutting"
    """To the sheet."""
    BETWEEN = "between cuts"
    """To the piece in hand, before the last cut frees the part."""
    AFTER = "after cutting"
    """To the part."""


class Waiting(StrEnum):
    """What is waited for once a work is done."""

    DRY = "dry"
    WAIT = "wait"


@dataclass(frozen=True, slots=True)
class Wait:
    """So many minutes after a work; all its pieces wait at once."""

    what: Waiting
    minutes: int


CORNERS: Final[Mapping[str, int]] = {
    "": 4,
    "top": 2,
    "bottom": 2,
    "left": 2,
    "right": 2,
    "top left": 1,
    "top right": 1,
    "bottom left": 1,
    "bottom right": 1,
}
"""Where a part is rounded, and how many corners lie there."""


@dataclass(frozen=True, slots=True)
class Work:
    """One work on the parts ``letters``. ``tool``, ``supply``: empty where it is done by hand, with nothing.

    ``where``: which corners or edge, one of :data:`CORNERS`. ``at``: where it is scored, in mm from the left
    (``runs_down``) or the top; none: at the scores that the part has. ``times``: strokes for
    each piece; 0: what the kind of work and the part ask for.
    """

    kind: WorkKind
    letters: tuple[str, ...]
    tool: str
    moment: Moment
    supply: str = ""
    where: str = ""
    at: tuple[Fraction, ...] = ()
    runs_down: bool = False
    times: int = 0
    wait: Wait | None = None
    place: Place = field(default=NOWHERE, compare=False, repr=False)

    @property
    def in_hand(self) -> str:
        """What is taken in hand for it: the tool, else what is worked in; nothing for bare hands."""
        return self.tool or self.supply

    def strokes_each(self, part: Part) -> int:
        """How often the tool is moved for one piece of ``part``."""
        if self.times:
            return self.times
        match self.kind:
            case WorkKind.ROUND:
                return CORNERS[self.where]
            case WorkKind.SCORE | WorkKind.FOLD:
                return max(1, len(self.at or part.scores))
            case WorkKind.STAMP:
                return self._images(tuple(use.tool for use in part.stamps))
            case WorkKind.DIE_CUT:
                return self._images(tuple(use.tool for use in part.dies))
        return 1

    def _images(self, sets: tuple[str, ...]) -> int:
        """One stroke for each set, or for each time that the tool is the set."""
        return max(1, sets.count(self.tool) if self.tool in sets else len(sets))
