"""The four sides of a sheet: what is seen from each, and points outside of it.

A point beside a sheet is ``(along, out)``: how far along the side from its left or
upper end, and how far out from the edge, both in mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.core.cutting.steps import LaidOut
from batchleaf.measure.rects import Rect

_THIN: Final = Fraction(1, 8)
"""A strip of waste thinner than this share of the sheet is seen through."""


class Side(StrEnum):
    """One side of a sheet."""

    TOP = "top"
    LEFT = "left"
    RIGHT = "right"
    BOTTOM = "bottom"

    @property
    def is_level(self) -> bool:
        """True for the two sides that run from left to right."""
        return self in (Side.TOP, Side.BOTTOM)

    @property
    def opposite(self) -> Side:
        """The side across the sheet."""
        return _OPPOSITE[self]

    def length(self, sheet: Rect) -> Fraction:
        """How long this side of ``sheet`` is."""
        return sheet.width if self.is_level else sheet.height

    def point(self, sheet: Rect, along: float, out: float) -> tuple[float, float]:
        """``(x, y)`` of a point beside ``sheet``."""
        match self:
            case Side.TOP:
                return along, -out
            case Side.BOTTOM:
                return along, float(sheet.height) + out
            case Side.LEFT:
                return -out, along
            case Side.RIGHT:
                return float(sheet.width) + out, along

    def span(self, rect: Rect) -> tuple[Fraction, Fraction]:
        """Where ``rect`` starts and ends along this side."""
        return (rect.x, rect.x + rect.width) if self.is_level else (rect.y, rect.y + rect.height)

    def depth(self, sheet: Rect, rect: Rect) -> tuple[Fraction, Fraction]:
        """How far from this side ``rect`` starts and ends."""
        match self:
            case Side.TOP:
                return rect.y, rect.y + rect.height
            case Side.BOTTOM:
                return sheet.height - rect.y - rect.height, sheet.height - rect.y
            case Side.LEFT:
                return rect.x, rect.x + rect.width
            case Side.RIGHT:
                return sheet.width - rect.x - rect.width, sheet.width - rect.x


_OPPOSITE: Final = {
    Side.TOP: Side.BOTTOM,
    Side.BOTTOM: Side.TOP,
    Side.LEFT: Side.RIGHT,
    Side.RIGHT: Side.LEFT,
}


def waste_of(laid_out: LaidOut, kept: Sequence[Rect]) -> tuple[Rect, ...]:
    """The leftovers that nobody keeps."""
    return tuple(rect for rect in laid_out.leftovers if rect not in kept)


def stops(side: Side, laid_out: LaidOut, kept: Sequence[Rect]) -> tuple[Fraction, ...]:
    """Where what is seen from ``side`` changes, from 0 to the length of the side.

    The lengths between stops add up to the sheet, whatever lies on it.
    """
    waste = waste_of(laid_out, kept)
    pieces = [placed.rect for placed in laid_out.parts] + [*kept] + list(waste)
    ends = sorted({end for piece in pieces for end in side.span(piece)} | {Fraction(0)})
    found = [Fraction(0)]
    seen: Rect | None = None
    for start, end in pairwise(ends):
        now = _seen_from(side, laid_out.sheet, pieces, waste, (start + end) / 2)
        if now != seen and start not in found:
            found.append(start)
        seen = now
    return (*found, side.length(laid_out.sheet))


def _seen_from(
    side: Side, sheet: Rect, pieces: Sequence[Rect], waste: Sequence[Rect], along: Fraction
) -> Rect | None:
    on_the_way = sorted(
        (piece for piece in pieces if side.span(piece)[0] <= along < side.span(piece)[1]),
        key=lambda piece: side.depth(sheet, piece),
    )
    if not on_the_way:
        return None
    first = on_the_way[0]
    strip = len(on_the_way) > 1 and first in waste and _is_strip(side, sheet, first)
    return on_the_way[1] if strip else first


def _is_strip(side: Side, sheet: Rect, piece: Rect) -> bool:
    """A trimmed edge: thin, and longer along the side than it is deep."""
    start, end = side.depth(sheet, piece)
    from_, to = side.span(piece)
    across = sheet.height if side.is_level else sheet.width
    return end - start <= min(to - from_, across * _THIN)
