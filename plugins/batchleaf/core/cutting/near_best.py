"""Every pattern of one sheet whose value is within a gap of the best.

If a whole cutting plan is to reach a target, each of its sheets may fall short of
the best value by no more than the plan as a whole may. All patterns within that
gap are therefore all that a better plan can be made of. A piece (i, j) is looked
at only as far as F(i, j) plus the most that the rest of the sheet can still be
worth stays within the gap.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from batchleaf.core.cutting.contents import Contents, Rows, Source, together, undominated
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.grid import Whole
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row
from batchleaf.core.cutting.values import Values

Cell = tuple[int, int]
MOST_CELLS: Final = 6_000
MOST_PAIRS: Final = 8_000_000
"""Above these an enumeration is cut short: it would take seconds."""
PAIRS_A_STEP: Final = 20_000
WIDE: Final = 30
"""Of the pairs for one piece so many times the beam are looked at, the best ones."""


@dataclass(frozen=True, slots=True)
class NearBest:
    """``complete`` False: some patterns within the gap are missing."""

    pieces: tuple[Arrangement, ...]
    complete: bool


def near_best(
    values: Values,
    gap: int,
    caps: Sequence[int],
    effort: Effort,
    *,
    beam: int,
    all_or_nothing: bool = False,
) -> NearBest:
    """The patterns worth at least the best less ``gap``, none contained in another.

    ``caps`` by part: more of it is worth nothing. At most ``beam`` contents are
    kept for any piece; with ``all_or_nothing`` one piece that holds more ends it.
    A thin grid shows nothing of the kind.
    """
    if values.grid.thin:
        return NearBest((), complete=False)
    return _Enumeration(values, gap, caps, effort, beam).run(all_or_nothing=all_or_nothing)


class _Enumeration:
    def __init__(self, values: Values, gap: int, caps: Sequence[int], effort: Effort, beam: int) -> None:
        self._grid = values.grid
        self._best = values.best
        self._least = max(1, values.whole_sheet - gap)
        self._effort = effort
        self._beam = beam
        self._complete = True
        self._pairs = 0
        parts = sorted({shape.part for shape in self._grid.sheet.shapes})
        self._prices = np.array([values.of_part[part] for part in parts], dtype=np.int64)
        self._caps = np.array([min(caps[part], self._room_for(part)) for part in parts], dtype=np.int64)
        self._shapes = np.array(
            [[part == shape.part for part in parts] for shape in self._grid.sheet.shapes], dtype=np.int64
        )
        self._outer = np.full(self._best.shape, -1, dtype=np.int64)
        self._contents = Contents.empty(self._best.size, len(parts))

    def run(self, *, all_or_nothing: bool) -> NearBest:
        root = (self._best.shape[0] - 1, self._best.shape[1] - 1)
        cells = self._worth_a_look(root)
        for i, j in reversed(cells):
            has_time = self._effort.step(1 + self._hold(i, j) // PAIRS_A_STEP)
            if not has_time or self._pairs > MOST_PAIRS or (all_or_nothing and not self._complete):
                return NearBest((), complete=False)
        if not cells:
            return NearBest((), complete=False)
        last = self._best.size - 1
        first = int(self._contents.start[last])
        pieces = [self._arranged(row) for row in range(first, first + int(self._contents.size[last]))]
        return NearBest(tuple(piece for piece in pieces if piece is not None), self._complete)

    def _room_for(self, part: int) -> int:
        sheet = self._grid.sheet
        return max(
            sheet.width * sheet.height // (shape.width * shape.height)
            for shape in sheet.shapes
            if shape.part == part
        )

    def _worth_a_look(self, root: Cell) -> list[Cell]:
        """Pieces that can be part of a pattern within the gap, larger ones first."""
        self._outer[root] = 0
        by_size: defaultdict[int, set[Cell]] = defaultdict(set)
        by_size[sum(root)].add(root)
        found: list[Cell] = []
        for size in range(sum(root), 1, -1):
            for i, j in sorted(by_size.pop(size, ())):
                found.append((i, j))
                if len(found) > MOST_CELLS or not self._effort.affords():
                    self._complete = False
                    return []
                self._open_halves(i, j, by_size)
        return found

    def _open_halves(self, i: int, j: int, by_size: defaultdict[int, set[Cell]]) -> None:
        outer = int(self._outer[i, j])
        (near_x, far_x), (near_y, far_y) = self._cuts(i, j)
        for one, other in ((near_x, far_x), (far_x, near_x)):
            rest = outer + self._best[other, j]
            for at in np.flatnonzero(rest > self._outer[one, j]):
                self._outer[one[at], j] = max(self._outer[one[at], j], rest[at])
                by_size[int(one[at]) + j].add((int(one[at]), j))
        for one, other in ((near_y, far_y), (far_y, near_y)):
            rest = outer + self._best[i, other]
            for at in np.flatnonzero(rest > self._outer[i, one]):
                self._outer[i, one[at]] = max(self._outer[i, one[at]], rest[at])
                by_size[i + int(one[at])].add((i, int(one[at])))

    def _cuts(self, i: int, j: int) -> tuple[tuple[Whole, Whole], tuple[Whole, Whole]]:
        """The cuts of a piece that stay within the gap, across and along: indices on their axis."""
        x, y, best = self._grid.x, self._grid.y, self._best
        need = self._least - int(self._outer[i, j])
        near, far = x.near[i, : x.many[i]], x.far[i, : x.many[i]]
        across = best[near, j] + best[far, j] >= need
        below, above = y.near[j, : y.many[j]], y.far[j, : y.many[j]]
        along = best[i, below] + best[i, above] >= need
        return (near[across], far[across]), (below[along], above[along])

    def _hold(self, i: int, j: int) -> int:
        """Put down what a piece can hold; how many pairs were looked at."""
        rows = self._best.shape[1]
        need = self._least - int(self._outer[i, j])
        (near_x, far_x), (near_y, far_y) = self._cuts(i, j)
        found = [self._singles(i, j, need)]
        before = self._pairs
        for source, near, far in (
            (Source.CUT_X, near_x * rows + j, far_x * rows + j),
            (Source.CUT_Y, i * rows + near_y, i * rows + far_y),
        ):
            if len(near):
                found.append(self._joined(source, near, far, need))
        held, all_kept = undominated(together(found), self._caps, self._beam)
        self._complete &= all_kept
        self._contents.put(i * rows + j, held)
        return self._pairs - before

    def _singles(self, i: int, j: int, need: int) -> Rows:
        """Nothing, or one part."""
        x, y = self._grid.x.points[i], self._grid.y.points[j]
        fits = [
            at for at, shape in enumerate(self._grid.sheet.shapes) if shape.width <= x and shape.height <= y
        ]
        counts = np.concatenate([np.zeros((1, len(self._caps)), dtype=np.int64), self._shapes[fits]])
        counts = np.minimum(counts, self._caps)
        origin = np.zeros((len(counts), 3), dtype=np.int64)
        origin[1:, 0] = Source.SHAPE
        origin[1:, 1] = fits
        rows = Rows(counts, counts @ self._prices, origin)
        return rows.only(rows.worth >= need)

    def _joined(self, source: Source, near: Whole, far: Whole, need: int) -> Rows:
        table = self._contents.rows
        self._pairs += self._contents.number_of_pairs(near, far)
        if self._pairs > MOST_PAIRS:
            self._complete = False
            return table.only(np.zeros(0, dtype=np.int64))
        one, other = self._contents.pairs(near, far)
        worth = table.worth[one] + table.worth[other]
        keep = np.flatnonzero(worth >= need)
        if len(keep) > WIDE * self._beam:
            self._complete = False
            keep = keep[np.argsort(-worth[keep], kind="stable")[: WIDE * self._beam]]
        one, other = one[keep], other[keep]
        counts = np.minimum(table.counts[one] + table.counts[other], self._caps)
        origin = np.stack([np.full(len(one), int(source)), one, other], axis=1)
        rows = Rows(counts, counts @ self._prices, origin)
        return rows.only(rows.worth >= need)

    def _arranged(self, row: int) -> Arrangement | None:
        source, first, second = (int(number) for number in self._contents.rows.origin[row])
        match Source(source):
            case Source.NOTHING:
                return None
            case Source.SHAPE:
                return Leaf(self._grid.sheet.shapes[first])
            case Source.CUT_X | Source.CUT_Y:
                halves = (self._arranged(first), self._arranged(second))
                axis = Axis.X if source == Source.CUT_X else Axis.Y
                return in_a_row(axis, (half for half in halves if half is not None))
