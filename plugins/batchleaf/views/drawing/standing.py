"""Where rings and letters stand beside a sheet: near what they name, and clear of one another.

Where cuts lie closer than their rings are wide, the rings are pushed apart as little as
possible. One row is best, with a second ring
beyond another on the same line; then two rows in turn; where two are not enough, cuts
whose numbers follow one another share a ring.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import count, pairwise
from typing import Final

from batchleaf.views.drawing.callouts import Callout, with_two_joined
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.spread import spread

_BEFORE: Final = 0.3
"""Distance between the sheet and its nearest bracket or ring, and between these, in em."""
_BETWEEN: Final = 0.08
"""Smallest distance between two rings, in em."""
_LABEL: Final = 1.3
"""What a row of letters takes away from the side, halo and all, in em."""
_OVER_CORNER: Final = 0.2
"""How far what stands beside a sheet reaches past its corner, so that two sides stay apart, in em."""
_BRACKETED: Final = 0.02
"""Weight of a ring with a bracket, which may stand anywhere on it; one on a line weighs 1."""
_ROWS: Final = 2
"""Rings stand no further out, as long as numbers can be joined."""


@dataclass(frozen=True, slots=True)
class Standing:
    """``callout`` with its middle at ``along`` and ``out``; its bracket, if it has one, ``bracket`` far out.

    ``depth`` is how far from the sheet to its far edge it takes; all in mm.
    """

    callout: Callout
    along: float
    out: float
    depth: float
    bracket: float

    @property
    def near(self) -> float:
        """How far out its edge is that looks at the sheet."""
        return self.out - self.depth / 2

    @property
    def far(self) -> float:
        """How far out it reaches."""
        return self.out + self.depth / 2


def stand(canvas: Canvas, callouts: Sequence[Callout], length: float) -> list[Standing]:
    """The callouts of one side of so much ``length``, in order along it."""
    if not callouts:
        return []
    here = _Side(canvas, length)
    told = list(callouts)
    while True:
        for columns, rows in ((here.stacked(told), 1), (here.singly(told), _ROWS)):
            if here.fits(columns, rows):
                return here.places(columns, rows)
        joined = with_two_joined(told)
        if joined is None:
            break
        told = joined
    columns = here.singly(told)
    rows = next(rows for rows in count(_ROWS + 1) if rows >= len(columns) or here.fits(columns, rows))
    return here.places(columns, rows)


@dataclass(frozen=True, slots=True)
class _Side:
    """The room beside one side of a sheet. A column is what stands behind one another, nearest first."""

    canvas: Canvas
    length: float

    def singly(self, callouts: Iterable[Callout]) -> list[list[Callout]]:
        """Each in a column of its own."""
        return [[one] for one in sorted(callouts, key=lambda one: (self.wanted(one), one.turn))]

    def stacked(self, callouts: Iterable[Callout]) -> list[list[Callout]]:
        """Two on one line behind one another; what has a bracket finds another place on it."""
        columns: list[list[Callout]] = []
        for alone in self.singly(callouts):
            line = (alone[0].start, alone[0].end)
            last = columns[-1] if columns else []
            if line[0] == line[1] and len(last) in range(1, _ROWS) and (last[0].start, last[0].end) == line:
                last += alone
            else:
                columns.append(alone)
        return columns

    def wanted(self, one: Callout) -> float:
        """At its line; a wide ring begins at the first line of its run."""
        half = self.width(one) / 2 - self.canvas.lettering.ring
        return one.start + max(0.0, min(half, (one.end - one.start) / 2))

    def width(self, one: Callout) -> float:
        """What it takes along the side, in mm: all but circles lie along it."""
        return self._size(one)[0]

    def depth(self, one: Callout) -> float:
        """What it takes away from the side, in mm."""
        return self._size(one)[1]

    def _size(self, one: Callout) -> tuple[float, float]:
        lettering = self.canvas.lettering
        if one.is_cut:
            return (2 * lettering.half_ring(len(one.text)), 2 * lettering.ring)
        if len(one.text) == 1:
            return (2 * lettering.ring, 2 * lettering.ring)
        return (lettering.width(one.text), _LABEL * lettering.em)

    def fits(self, columns: Sequence[Sequence[Callout]], rows: int) -> bool:
        """True where the columns, in ``rows`` by turns, are no longer than the side."""
        low, high = self._bounds(columns)
        return sum(self._steps(columns, rows)) <= high - low

    def places(self, columns: Sequence[Sequence[Callout]], rows: int) -> list[Standing]:
        """Everything at its place."""
        low, high = self._bounds(columns)
        wanted = [self.wanted(column[0]) for column in columns]
        weights = [_BRACKETED if column[0].end > column[0].start else 1.0 for column in columns]
        places = spread(wanted, list(self._steps(columns, rows)), low, high, weights)
        told = [one for column in columns for one in column]
        levels, gap = _levels(told), self._em(_BETWEEN)
        base = self._em(_BEFORE) * (1 + (1 + max(levels.values()) if levels else 0))
        first = [base]
        for row in range(1, rows):
            before = (self.depth(one) for column in columns[row - 1 :: rows] for one in column)
            first.append(first[-1] + max(before, default=0.0) + gap)
        found = []
        for i, (column, place) in enumerate(zip(columns, places, strict=True)):
            near = first[i % rows]
            for one in column:
                depth = self.depth(one)
                bracket = self._em(_BEFORE) * (1 + levels.get(one, 0))
                found.append(Standing(one, place, near + depth / 2, depth, bracket))
                near += depth + gap
        return found

    def _bounds(self, columns: Sequence[Sequence[Callout]]) -> tuple[float, float]:
        """Where the first and the last column may stand."""
        first, last = self._widest(columns[0]) / 2, self._widest(columns[-1]) / 2
        over, middle = self._em(_OVER_CORNER), self.length / 2
        return min(first - over, middle), max(self.length - last + over, middle)

    def _widest(self, column: Iterable[Callout]) -> float:
        return max(self.width(one) for one in column)

    def _steps(self, columns: Sequence[Sequence[Callout]], rows: int) -> Iterator[float]:
        """From the middle of each column to the next: so that every ``rows``-th is clear of the other.

        Of two rows, a line that leads to the further one passes between the rings of the nearer one.
        """
        widths, gap = [self._widest(column) for column in columns], self._em(_BETWEEN)
        for i, (one, other) in enumerate(pairwise(widths), 1):
            widest = max(widths[max(0, i - rows) : i + rows])
            yield ((one + other) / 2 if rows == 1 else widest / rows) + gap

    def _em(self, times: float) -> float:
        return times * self.canvas.lettering.em


def _levels(callouts: Iterable[Callout]) -> dict[Callout, int]:
    """How many brackets stand between each bracket and the sheet."""
    found: dict[Callout, int] = {}
    for one in sorted(callouts, key=lambda one: (one.end - one.start, one.start)):
        if one.end > one.start:
            under = [
                level for other, level in found.items() if other.start <= one.end and one.start <= other.end
            ]
            found[one] = next(level for level in count() if level not in under)
    return found
