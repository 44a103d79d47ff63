"""A sheet plan as a person cuts it: rectangles, and cuts in order."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cutting.plan import Axis
from batchleaf.measure.rects import Rect


@dataclass(frozen=True, slots=True)
class PlacedPart:
    """One part where it lies on the sheet."""

    part: str
    rect: Rect
    turned: bool


@dataclass(frozen=True, slots=True)
class CutStep:
    """The ``n``-th cut of a sheet plan: ``piece`` is cut at ``setting`` into ``first`` and ``second``.

    ``setting`` is measured from the left (Axis.X) or top (Axis.Y) edge of the piece in hand.
    """

    n: int
    piece: Rect
    axis: Axis
    setting: Fraction
    first: Rect
    second: Rect


@dataclass(frozen=True, slots=True)
class LaidOut:
    """A sheet plan with every position worked out from its tree of cuts."""

    sheet: Rect
    parts: tuple[PlacedPart, ...]
    leftovers: tuple[Rect, ...]
    cuts: tuple[CutStep, ...]
