"""The aspects of a make: what of it is seen at once, and what lies behind where one sees through.

An aspect is a pile of levels, the nearest first. A level with ``sheets`` is the near side
of the base there; one without is the far side of the sheets before it, whose parts are
seen only through these, turned over.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.panels import Panel
from batchleaf.measure.lengths import Size
from batchleaf.measure.rects import Rect

NOTHING: Final = Fraction(0)


class AspectKind(StrEnum):
    """What one looks at."""

    FRONT = "front"
    """As it looks closed; an accordion pulled out; a box from above."""
    INSIDE = "inside"
    """Opened out flat; a box without its lid from above."""
    CLOSED = "closed"
    """An accordion folded up."""
    BACK = "back"
    """From behind; a box from underneath."""
    LID_INSIDE = "inside of the lid"
    WALL = "wall"


@dataclass(frozen=True, slots=True)
class Leaf:
    """A face where it lies in an aspect, in mm from the aspect's top left.

    ``across``: left and right have changed places; ``down``: top and foot have.
    """

    panel: Panel
    x: Fraction = NOTHING
    y: Fraction = NOTHING
    across: bool = False
    down: bool = False

    @property
    def rect(self) -> Rect:
        """What it covers."""
        return Rect(self.x, self.y, self.panel.size.width, self.panel.size.height)

    @property
    def is_upside_down(self) -> bool:
        """It looks at us, and stands on its head."""
        return self.across and self.down

    def turned_over(self) -> Leaf:
        """The same seen from behind, left and right changed."""
        return replace(self, across=not self.across)

    def placed(self, rect: Rect) -> Rect:
        """Where something on the face is seen."""
        x = self.panel.size.width - rect.right if self.across else rect.x
        y = self.panel.size.height - rect.bottom if self.down else rect.y
        return Rect(self.x + x, self.y + y, rect.width, rect.height)


@dataclass(frozen=True, slots=True)
class Level:
    """Faces at one depth; ``sheets``: the pieces of the base that they are the near side of."""

    leaves: tuple[Leaf, ...]
    sheets: tuple[Rect, ...] = ()

    @property
    def is_near_side(self) -> bool:
        """Its parts look at us."""
        return bool(self.sheets)


@dataclass(frozen=True, slots=True)
class Crease:
    """A fold as it is seen; ``at_edge``: it is an edge of what is seen."""

    x1: Fraction
    y1: Fraction
    x2: Fraction
    y2: Fraction
    at_edge: bool = False


@dataclass(frozen=True, slots=True)
class Aspect:
    """One of the views that a make has. ``round``: the faces of what goes round the whole."""

    kind: AspectKind
    levels: tuple[Level, ...]
    creases: tuple[Crease, ...] = ()
    round: tuple[Leaf, ...] = ()

    @property
    def nearest(self) -> Level:
        """What is seen of anything."""
        return self.levels[0]

    @property
    def size(self) -> Size:
        """Of what is nearest, as it lies."""
        around = whole(self.nearest.leaves)
        return Size(around.right, around.bottom)


def near(*leaves: Leaf, apart: bool = False) -> Level:
    """The near side of one sheet, or where the leaves are ``apart`` of one each."""
    return Level(leaves, tuple(leaf.rect for leaf in leaves) if apart else (whole(leaves),))


def far(*leaves: Leaf) -> Level:
    """The far side of the sheets of the level before."""
    return Level(leaves)


def whole(leaves: tuple[Leaf, ...]) -> Rect:
    """The smallest rectangle that holds them all."""
    rects = [leaf.rect for leaf in leaves]
    x, y = min(rect.x for rect in rects), min(rect.y for rect in rects)
    return Rect(x, y, max(rect.right for rect in rects) - x, max(rect.bottom for rect in rects) - y)
