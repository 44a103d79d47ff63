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
        start, end = self.span(rect)
        near, far = self.depth(sheet, rect)
        return Sight(float(start), float(end), float(start + end) / 2, float(near), float(far))

    def span(self, rect: Rect) -> tuple[Fraction, Fraction]:
        """Where ``rect`` starts and ends along this side."""
        return (rect.x, rect.x + rect.width) if self.is_level else (rect.y, rect.y + rect.height)

    def depth(self, sheet: Rect, rect: Rect) -> tuple[Fraction, Fraction]:
        """How far from this side ``rect`` starts and ends."""
        match self:
            case Side.TOP:
                return rect.y, rect.y + rect.height
            case Side.BOTTOM:
                far = sheet.height - rect.y
                return far - rect.height, far
            case Side.LEFT:
                return rect.x, rect.x + rect.width
            case Side.RIGHT:
                far = sheet.width - rect.x
                return far - rect.width, far


_OPPOSITE: Final = {
    Side.TOP: Side.BOTTOM,
    Side.BOTTOM: Side.TOP,
    Side.LEFT: Side.RIGHT,
    Side.RIGHT: Side.LEFT,
}


@dataclass(frozen=True, slots=True)
class Sight:
    """A piece as it is seen from a side: where along it, and how far from it, it starts and ends.

    These are held against one another, and no more: equal lengths are equal as floats too.
    """

    start: float
    end: float
    middle: float
    near: float
    far: float

    def crosses(self, along: float) -> bool:
        """Whether what goes straight in from there meets more than an edge of it."""
        return self.start < along < self.end


def waste_of(laid_out: LaidOut, kept: Sequence[Rect]) -> tuple[Rect, ...]:
    """The leftovers that nobody keeps."""
    return tuple(rect for rect in laid_out.leftovers if rect not in kept)


@dataclass(frozen=True, slots=True)
class _Piece:
    """``strip``: it is waste that is seen through where another piece lies behind it."""

    sight: Sight
    span: tuple[Fraction, Fraction]
    strip: bool


def stops(side: Side, laid_out: LaidOut, kept: Sequence[Rect]) -> tuple[Fraction, ...]:
    """Where what is seen from ``side`` changes, from 0 to the length of the side.

    The lengths between stops add up to the sheet, whatever lies on it.
    """
    pieces = _nearest_first(side, laid_out, kept)
    ends = {float(end): end for piece in pieces for end in piece.span}
    found = [Fraction(0)]
    seen: _Piece | None = None
    for start in sorted(ends)[:-1]:
        on_the_way = [piece for piece in pieces if piece.sight.start <= start < piece.sight.end]
        seen_through = len(on_the_way) > 1 and on_the_way[0].strip
        now = on_the_way[seen_through] if on_the_way else None
        if now is not seen and start:
            found.append(ends[start])
        seen = now
    return (*found, side.length(laid_out.sheet))


def _nearest_first(side: Side, laid_out: LaidOut, kept: Sequence[Rect]) -> list[_Piece]:
    sheet = laid_out.sheet
    found = [
        _Piece(side.sight(sheet, rect), side.span(rect), strip=False)
        for rect in (*(placed.rect for placed in laid_out.parts), *kept)
    ]
    found += [
        _Piece(side.sight(sheet, rect), side.span(rect), _is_strip(side, sheet, rect))
        for rect in waste_of(laid_out, kept)
    ]
    return sorted(found, key=lambda piece: (piece.sight.near, piece.sight.far))


def _is_strip(side: Side, sheet: Rect, piece: Rect) -> bool:
    """A trimmed edge: thin, and longer along the side than it is deep."""
    across = sheet.height if side.is_level else sheet.width
    long, deep = (piece.width, piece.height) if side.is_level else (piece.height, piece.width)
    return deep <= min(long, across * _THIN)
