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
from numpy.typing import NDArray

from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.grid import Whole
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row
from batchleaf.core.cutting.values import Values

Cell = tuple[int, int]
MOST_CELLS: Final = 6_000
MOST_PAIRS: Final = 3_000_000
"""Above these an enumeration is cut short: it would take seconds."""

_NOTHING: Final = 0
_SHAPE: Final = 1
_X: Final = 2
_Y: Final = 3


@dataclass(frozen=True, slots=True)
class NearBest:
    """``complete`` False: some patterns within the gap are missing."""

    pieces: tuple[Arrangement, ...]
    complete: bool


@dataclass(frozen=True, slots=True, eq=False)
class _Contents:
    """What one piece can hold: part counts, their worth, and what each came from.

    A row of ``origin`` is (kind, near or shape, row in near, far, row in far).
    """

    counts: Whole
    worth: Whole
    origin: Whole

    def only(self, keep: NDArray[np.bool_] | Whole) -> _Contents:
        return _Contents(self.counts[keep], self.worth[keep], self.origin[keep])


def near_best(values: Values, gap: int, caps: Sequence[int], effort: Effort, *, beam: int) -> NearBest:
    """The patterns worth at least the best less ``gap``, none contained in another.

    ``caps`` by part: more of it is worth nothing. At most ``beam`` contents are
    kept for any piece.
    """
    return _Enumeration(values, gap, caps, effort, beam).run()


class _Enumeration:
    def __init__(self, values: Values, gap: int, caps: Sequence[int], effort: Effort, beam: int) -> None:
        self._values = values
        self._grid = values.grid
        self._best = values.best
        self._least = max(1, values.whole_sheet - gap)
        self._effort = effort
        self._beam = beam
        self._complete = True
        self._pairs = 0
        self._parts = sorted({shape.part for shape in self._grid.sheet.shapes})
        self._prices = np.array([values.of_part[part] for part in self._parts], dtype=np.int64)
        self._caps = np.array([caps[part] for part in self._parts], dtype=np.int64)
        self._outer = np.full(self._best.shape, -1, dtype=np.int64)
        self._contents: dict[Cell, _Contents] = {}

    def run(self) -> NearBest:
        root = (self._best.shape[0] - 1, self._best.shape[1] - 1)
        for cell in reversed(self._worth_a_look(root)):
            if not self._effort.step():
                return NearBest((), complete=False)
            self._contents[cell] = self._hold(cell)
        held = self._contents.get(root)
        if held is None:
            return NearBest((), complete=False)
        pieces = [self._arranged(root, row) for row in range(len(held.worth))]
        return NearBest(tuple(piece for piece in pieces if piece is not None), self._complete)

    def _worth_a_look(self, root: Cell) -> list[Cell]:
        """Pieces that can be part of a pattern within the gap, larger ones first."""
        self._outer[root] = 0
        by_size: defaultdict[int, set[Cell]] = defaultdict(set)
        by_size[sum(root)].add(root)
        found: list[Cell] = []
        for size in range(sum(root), 1, -1):
            for i, j in sorted(by_size.pop(size, ())):
                found.append((i, j))
                if len(found) > MOST_CELLS:
                    self._complete = False
                    return []
                for near, far in self._cuts(i, j):
                    self._open(near, far, self._outer[i, j], by_size)
                    self._open(far, near, self._outer[i, j], by_size)
        return found

    def _cuts(self, i: int, j: int) -> list[tuple[Cell, Cell]]:
        """The cuts of a piece that stay within the gap."""
        x, y, best = self._grid.x, self._grid.y, self._best
        need = self._least - int(self._outer[i, j])
        near, far = x.near[i, : x.many[i]], x.far[i, : x.many[i]]
        across = np.flatnonzero(best[near, j] + best[far, j] >= need)
        cuts = [((int(near[at]), j), (int(far[at]), j)) for at in across]
        near, far = y.near[j, : y.many[j]], y.far[j, : y.many[j]]
        along = np.flatnonzero(best[i, near] + best[i, far] >= need)
        cuts += [((i, int(near[at])), (i, int(far[at]))) for at in along]
        return cuts

    def _open(self, cell: Cell, other: Cell, outer: int, by_size: defaultdict[int, set[Cell]]) -> None:
        rest = outer + self._best[other]
        if rest > self._outer[cell]:
            self._outer[cell] = rest
            by_size[sum(cell)].add(cell)

    def _hold(self, cell: Cell) -> _Contents:
        """What ``cell`` can hold, from the single parts that fit and from all its cuts."""
        i, j = cell
        need = self._least - int(self._outer[cell])
        found = [self._singles(cell)]
        for near, far in self._cuts(i, j):
            one, other = self._contents[near], self._contents[far]
            self._pairs += len(one.worth) * len(other.worth)
            if self._pairs > MOST_PAIRS:
                self._complete = False
                break
            # Both halves of a cut across keep the height, and both are narrower.
            found.append(self._joined(_X if near[0] < i else _Y, near, far, need))
        together = _Contents(
            np.concatenate([part.counts for part in found]),
            np.concatenate([part.worth for part in found]),
            np.concatenate([part.origin for part in found]),
        )
        return self._undominated(together.only(together.worth >= need))

    def _singles(self, cell: Cell) -> _Contents:
        x, y = self._grid.x.points[cell[0]], self._grid.y.points[cell[1]]
        counts = [np.zeros(len(self._parts), dtype=np.int64)]
        origin = [(_NOTHING, 0, 0, 0, 0)]
        for at, shape in enumerate(self._grid.sheet.shapes):
            if shape.width <= x and shape.height <= y:
                counts.append((np.array(self._parts) == shape.part).astype(np.int64))
                origin.append((_SHAPE, at, 0, 0, 0))
        table = np.minimum(np.array(counts), self._caps)
        return _Contents(table, table @ self._prices, np.array(origin, dtype=np.int64))

    def _joined(self, kind: int, near: Cell, far: Cell, need: int) -> _Contents:
        one, other = self._contents[near], self._contents[far]
        rows, columns = np.nonzero(one.worth[:, None] + other.worth[None, :] >= need)
        counts = np.minimum(one.counts[rows] + other.counts[columns], self._caps)
        place = 0 if kind == _X else 1
        origin = np.empty((len(rows), 5), dtype=np.int64)
        origin[:, 0] = kind
        origin[:, 1], origin[:, 2] = near[place], rows
        origin[:, 3], origin[:, 4] = far[place], columns
        return _Contents(counts, counts @ self._prices, origin)

    def _undominated(self, held: _Contents) -> _Contents:
        """Without contents that another one has as well; cut to the beam, the best first."""
        if len(held.worth) > 1:
            _, first = np.unique(held.counts, axis=0, return_index=True)
            held = held.only(np.sort(first))
        held = held.only(np.argsort(-held.worth, kind="stable"))
        kept = np.empty_like(held.counts)
        rows: list[int] = []
        for row, counts in enumerate(held.counts):
            if not (kept[: len(rows)] >= counts).all(axis=1).any():
                if len(rows) == self._beam:
                    self._complete = False
                    break
                kept[len(rows)] = counts
                rows.append(row)
        return held.only(np.array(rows, dtype=np.int64))

    def _arranged(self, cell: Cell, row: int) -> Arrangement | None:
        kind, near, near_row, far, far_row = (int(part) for part in self._contents[cell].origin[row])
        if kind == _NOTHING:
            return None
        if kind == _SHAPE:
            return Leaf(self._grid.sheet.shapes[near])
        if kind == _X:
            axis, one, other = Axis.X, (near, cell[1]), (far, cell[1])
        else:
            axis, one, other = Axis.Y, (cell[0], near), (cell[0], far)
        halves = (self._arranged(one, near_row), self._arranged(other, far_row))
        return in_a_row(axis, (half for half in halves if half is not None))
