"""Where a part sits on what carries it, in the trade's words."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.facts.places import NOWHERE, Place


class Face(StrEnum):
    """A face of the base that parts sit on."""

    FRONT = "front"
    BACK = "back"
    INSIDE_LEFT = "inside left"
    INSIDE_RIGHT = "inside right"
    INSIDE_TOP = "inside top"
    INSIDE_BOTTOM = "inside bottom"
    INSIDE = "inside"
    """The middle of a gate fold, the bottom of a box."""
    LEFT_DOOR = "left door"
    RIGHT_DOOR = "right door"
    INSIDE_LEFT_DOOR = "inside left door"
    INSIDE_RIGHT_DOOR = "inside right door"
    PANEL = "panel"
    """One panel of an accordion, counted from the left, on the side that is seen first."""
    BACK_OF_PANEL = "back of panel"
    FRONT_WALL = "front wall"
    BACK_WALL = "back wall"
    LEFT_WALL = "left wall"
    RIGHT_WALL = "right wall"
    SPINE = "spine"
    ROUND = "round"
    """No face of its own: what goes round the closed piece, a band, as it is seen from the front."""


START: Final = Fraction(0)
MIDDLE: Final = Fraction(1, 2)
END: Final = Fraction(1)


@dataclass(frozen=True, slots=True)
class Spot:
    """One place of a part.

    ``across`` and ``down`` say which of its edges or corners lies on the same one of
    what carries it: 0 left or top, 1/2 the middle, 1 right or bottom. From there it
    is moved by ``right`` and ``lower``, in mm (below nothing: to the left, up).
    ``quarter_turns``: how often it is turned by a right angle, clockwise, before.
    ``face``: of the base, ``None``: the one that what carries it lies on; ``panel``:
    its number, of an accordion. ``behind``: the letter of a part that it is tucked under.
    """

    across: Fraction = MIDDLE
    down: Fraction = MIDDLE
    right: Fraction = Fraction(0)
    lower: Fraction = Fraction(0)
    quarter_turns: int = 0
    face: Face | None = None
    panel: int = 0
    behind: str = ""
    place: Place = field(default=NOWHERE, compare=False, repr=False)
