"""The four sides of a sheet: what is seen from each, and points outside of it.

A point beside a sheet is ``(along, out)``: how far along the side from its left or
upper end, and how far out from the edge, both in mm.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.steps import LaidOut
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.marks import Area

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

    def point(self, sheet: Area, along: float, out: float) -> tuple[float, float]:
        """``(x, y)`` of a point beside ``sheet``."""
        match self:
            case Side.TOP:
                return along, -out
            case Side.BOTTOM:
                return along, sheet.height + out
            case Side.LEFT:
                return -out, along
            case Side.RIGHT:
                return sheet.width + out, along

    def sight(self, sheet: Rect, rect: Rect) -> Sight:
        """``rect`` as it is seen from this side."""
        return Sight(*self.span(rect), *self.depth(sheet, rect))

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


@dataclass(frozen=True, slots=True)
class Sight:
    """A piece as it is seen from a side: where along it, and how far from it, it starts and ends."""

    start: Fraction
    end: Fraction
    near: Fraction
    far: Fraction

    @property
    def middle(self) -> Fraction:
        """Where its middle lies along the side."""
        return (self.start + self.end) / 2

    def crosses(self, along: Fraction) -> bool:
        """Whether what goes straight in from there meets more than an edge of it."""
        return self.start < along < self.end


def waste_of(laid_out: LaidOut, kept: Sequence[Rect]) -> tuple[Rect, ...]:
    """The leftovers that nobody keeps."""
    return tuple(rect for rect in laid_out.leftovers if rect not in kept)


def stops(side: Side, laid_out: LaidOut, kept: Sequence[Rect]) -> tuple[Fraction, ...]:
    """Where what is seen from ``side`` changes, from 0 to the length of the side.

    The lengths between stops add up to the sheet, whatever lies on it.
    """
    pieces = _nearest_first(side, laid_out, kept)
    ends = sorted({end for sight, _ in pieces for end in (sight.start, sight.end)} | {Fraction(0)})
    # Nothing changes from one end to the next, so that their numbers do for finding what is there.
    number = {end: i for i, end in enumerate(ends)}
    reaches = [(number[sight.start], number[sight.end]) for sight, _ in pieces]
    found = [Fraction(0)]
    seen: int | None = None
    for i, start in enumerate(ends[:-1]):
        on_the_way = [which for which, (first, last) in enumerate(reaches) if first <= i < last]
        seen_through = len(on_the_way) > 1 and pieces[on_the_way[0]][1]
        now = on_the_way[seen_through] if on_the_way else None
        if now != seen and start:
            found.append(start)
        seen = now
    return (*found, side.length(laid_out.sheet))


def _nearest_first(side: Side, laid_out: LaidOut, kept: Sequence[Rect]) -> list[tuple[Sight, bool]]:
    """Every piece with whether it is seen through where another lies behind it."""
    sheet = laid_out.sheet
    standing = [side.sight(sheet, rect) for rect in (*(placed.rect for placed in laid_out.parts), *kept)]
    waste = [side.sight(sheet, rect) for rect in waste_of(laid_out, kept)]
    pieces = [(one, False) for one in standing] + [(one, _is_strip(side, sheet, one)) for one in waste]
    return sorted(pieces, key=lambda piece: (piece[0].near, piece[0].far))


def _is_strip(side: Side, sheet: Rect, piece: Sight) -> bool:
    """A trimmed edge: thin, and longer along the side than it is deep."""
    across = sheet.height if side.is_level else sheet.width
    return piece.far - piece.near <= min(piece.end - piece.start, across * _THIN)
