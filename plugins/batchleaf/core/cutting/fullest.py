"""A sheet filled with no more of any part than is still wanted.

The table of :mod:`~batchleaf.core.cutting.values` has one content for each piece, the
best one. With limits the best content of a piece may not go with its neighbour's, so
each piece keeps the few best that differ in worth, and two halves are joined only
where both together stay within the limits. That is no proof of anything, but takes
hardly longer than the table without limits.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.grid import AxisCuts, Grid, Whole, new_grid, work_ahead
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.packed import Packing
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row
from batchleaf.core.cutting.thin_grid import new_thin_grid

KEPT: Final = 2
"""Contents of each piece; with one alone, several published instances are missed by a sheet."""
WORK_A_STEP: Final = 2_500
MOST_STEPS: Final = 400
"""A sheet that would take more is filled on a thin grid."""
_NOTHING: Final = -1
_SHAPE: Final = -2
"""An origin of -2 - n is shape n."""


@dataclass(frozen=True, slots=True, eq=False)
class _Table:
    """By piece and rank: worth (-1: none), packed counts by word, and where it comes from."""

    worth: Whole
    words: tuple[Whole, ...]
    origin: Whole

    def put(self, at: Whole, worth: Whole, words: Sequence[Whole], origin: Whole) -> None:
        self.worth[at], self.origin[at] = worth, origin
        for mine, new in zip(self.words, words, strict=True):
            mine[at] = new


@dataclass(frozen=True, slots=True, eq=False)
class _Diagonal:
    """Pieces that depend only on smaller ones, and the halves of their cuts, those along x first."""

    at: Whole
    near: Whole
    far: Whole
    along_x: int


def filled(sheet: Sheet, limits: Sequence[int], values: Sequence[int], effort: Effort) -> Arrangement | None:
    """``sheet`` filled with parts worth much, none of them more often than its limit.

    ``limits`` and ``values`` by part. None also where the effort ends before it begins.
    """
    shapes = tuple(shape for shape in sheet.shapes if limits[shape.part])
    if not shapes:
        return None
    asked = Sheet(sheet.width, sheet.height, shapes)
    fine = work_ahead(sheet) <= MOST_STEPS * WORK_A_STEP
    grid = new_grid(asked) if fine else new_thin_grid(asked)
    if not effort.step(1 + grid.work // WORK_A_STEP):
        return None
    room = list(limits)
    for shape in shapes:
        most = sheet.width * sheet.height // (shape.width * shape.height)
        room[shape.part] = min(room[shape.part], most)
    return fullest(grid, room, values)


def fullest(grid: Grid, limits: Sequence[int], values: Sequence[int]) -> Arrangement | None:
    """Parts worth as much as can be found, for the sheet of ``grid``.

    ``limits`` and ``values`` by part; the shapes of the sheet belong to parts with a limit above 0.
    """
    packing = Packing(limits)
    table = _single_parts(grid, packing, values)
    for diagonal in _diagonals(grid):
        _settle(diagonal, table, packing)
    return _arranged(table, grid.sheet, table.worth.shape[0] - 1, 0)


def _single_parts(grid: Grid, packing: Packing, values: Sequence[int]) -> _Table:
    columns, rows = len(grid.x.points), len(grid.y.points)
    shape = (columns, rows, KEPT)
    worth = np.full(shape, -1, dtype=np.int64)
    worth[:, :, 0] = 0
    words = [np.zeros(shape, dtype=np.int64) for _ in range(packing.words)]
    origin = np.full((*shape, 2), _NOTHING, dtype=np.int64)
    shapes = list(enumerate(grid.sheet.shapes))
    for number, one in sorted(shapes, key=lambda entry: values[entry[1].part]):
        holding = (slice(grid.x.holding(one.width), None), slice(grid.y.holding(one.height), None))
        for whole in (worth, origin, *words):
            whole[holding][:, :, 1:] = whole[holding][:, :, :-1].copy()
        worth[holding][:, :, 0] = values[one.part]
        origin[holding][:, :, 0] = (_SHAPE - number, 0)
        for word, bits in zip(words, packing.one(one.part), strict=True):
            word[holding][:, :, 0] = bits
    cells = columns * rows
    return _Table(
        worth.reshape(cells, KEPT),
        tuple(word.reshape(cells, KEPT) for word in words),
        origin.reshape(cells, KEPT, 2),
    )


def _diagonals(grid: Grid) -> list[_Diagonal]:
    columns, rows = len(grid.x.points), len(grid.y.points)
    found = []
    for diagonal in range(2, columns + rows - 1):
        i = np.arange(max(1, diagonal - rows + 1), min(columns - 1, diagonal - 1) + 1)
        j = diagonal - i
        across, below = _most(grid.x, i), _most(grid.y, j)
        if across + below:
            beside, along = j[:, None], (i * rows)[:, None]
            near = np.hstack([grid.x.near[i, :across] * rows + beside, grid.y.near[j, :below] + along])
            far = np.hstack([grid.x.far[i, :across] * rows + beside, grid.y.far[j, :below] + along])
            found.append(_Diagonal(i * rows + j, near, far, across))
    return found


def _most(axis: AxisCuts, pieces: Whole) -> int:
    return int(axis.many[pieces].max())


def _settle(diagonal: _Diagonal, table: _Table, packing: Packing) -> None:
    """The best contents of the pieces, from what they hold already and from every pair of halves."""
    pieces, cuts = diagonal.near.shape
    worth = _joined_worth(diagonal, table, packing).reshape(pieces, -1)
    worth = np.hstack([worth, table.worth[diagonal.at]])
    each = np.arange(pieces)
    ranks = np.empty((pieces, KEPT), dtype=np.int64)
    best = np.empty((pieces, KEPT), dtype=np.int64)
    for rank in range(KEPT):
        ranks[:, rank] = worth.argmax(axis=1)
        best[:, rank] = worth[each, ranks[:, rank]]
        if rank + 1 < KEPT:
            worth[worth == best[:, rank, None]] = -1
    own = ranks - cuts * KEPT * KEPT
    held = own >= 0
    pair = np.where(held, 0, ranks)
    cut, one, other = pair // (KEPT * KEPT), pair // KEPT % KEPT, pair % KEPT
    near, far = diagonal.near[each[:, None], cut], diagonal.far[each[:, None], cut]
    kept = (diagonal.at[:, None], np.maximum(own, 0))
    words = [np.where(held, word[kept], word[near, one] + word[far, other]) for word in table.words]
    # The lowest bit of the first number says along which axis.
    made = np.stack([(near * KEPT + one) * 2 + (cut < diagonal.along_x), far * KEPT + other], axis=2)
    table.put(diagonal.at, best, words, np.where(held[:, :, None], table.origin[kept], made))


def _joined_worth(diagonal: _Diagonal, table: _Table, packing: Packing) -> Whole:
    """By piece, cut, and ranks in both halves; -1 where they do not go together."""
    one, other = (slice(None), slice(None), slice(None), None), (slice(None), slice(None), None)
    near, far = table.worth[diagonal.near][one], table.worth[diagonal.far][other]
    worth = near + far
    worth[(near < 0) | (far < 0)] = -1
    for number, word in enumerate(table.words):
        sums = word[diagonal.near][one] + word[diagonal.far][other]
        worth[packing.over(number, sums) != 0] = -1
    found: Whole = worth
    return found


def _arranged(table: _Table, sheet: Sheet, piece: int, rank: int) -> Arrangement | None:
    first, second = (int(number) for number in table.origin[piece, rank])
    if first == _NOTHING:
        return None
    if first <= _SHAPE:
        return Leaf(sheet.shapes[_SHAPE - first])
    axis = Axis.X if first % 2 else Axis.Y
    halves = (first // 2, second)
    found = (_arranged(table, sheet, half // KEPT, half % KEPT) for half in halves)
    return in_a_row(axis, (half for half in found if half is not None))
