"""Rectangles with upright sides, in mm: on a sheet, on a face of a card."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class Rect:
    """A rectangle, origin top left, mm."""

    x: Fraction
    y: Fraction
    width: Fraction
    height: Fraction

    @property
    def size(self) -> Size:
        """Without the position."""
        return Size(self.width, self.height)

    @property
    def right(self) -> Fraction:
        """Where it ends, from the left."""
        return self.x + self.width

    @property
    def bottom(self) -> Fraction:
        """Where it ends, from the top."""
        return self.y + self.height

    @property
    def area(self) -> Fraction:
        """Square millimetres."""
        return self.width * self.height

    def moved(self, right: Fraction, lower: Fraction) -> Rect:
        """The same rectangle elsewhere."""
        return Rect(self.x + right, self.y + lower, self.width, self.height)

    def holds(self, other: Rect) -> bool:
        """Whether ``other`` lies on it wholly; edges may meet."""
        return (
            self.x <= other.x
            and self.y <= other.y
            and other.right <= self.right
            and other.bottom <= self.bottom
        )

    def common(self, other: Rect) -> Rect | None:
        """What both cover; ``None`` where they meet in a line at most."""
        x, y = max(self.x, other.x), max(self.y, other.y)
        width, height = min(self.right, other.right) - x, min(self.bottom, other.bottom) - y
        return Rect(x, y, width, height) if width > 0 and height > 0 else None
