"""The most that one sheet can give, when each part has a value.

F(w, h) is the larger of the best single part in w x h and the best sum of the two
pieces of any through cut of w x h; each part may come any number of times
(Gilmore and Gomory, Operations Research 13 (1965) 94-120; Herz, IBM J. Res. Dev.
16 (1972) 462-469; Beasley, J. Opl Res. Soc. 36 (1985) 297-306; on a thinned grid:
Cintra, Miyazawa, Wakabayashi, Xavier, EJOR 191 (2008) 61-85).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from batchleaf.core.cutting.grid import Grid, Whole, grid_of, positions
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row


@dataclass(frozen=True, slots=True, eq=False)
class Values:
    """``best[i, j]`` is the most that piece (i, j) of the grid gives."""

    grid: Grid
    of_part: tuple[int, ...]
    best: Whole

    @property
    def whole_sheet(self) -> int:
        """The most that the sheet gives; on a thin grid, what was found."""
        return int(self.best[-1, -1])

    @property
    def at_most(self) -> int:
        """What no way of cutting the sheet goes above; on a thin grid, by area.

        Parts pushed to the left and to the top reach to the last raster points.
        """
        if not self.grid.thin:
            return self.whole_sheet
        area = self.grid.x.points[-1] * self.grid.y.points[-1]
        return max(
            self.of_part[shape.part] * area // (shape.width * shape.height)
            for shape in self.grid.sheet.shapes
        )

    def arrangement(self) -> Arrangement | None:
        """One way of cutting the sheet that gives the most."""
        sheet = self.grid.sheet
        return self._arranged(sheet.width, sheet.height)

    def _arranged(self, width: int, height: int) -> Arrangement | None:
        i, j = self.grid.x.within(width), self.grid.y.within(height)
        worth = int(self.best[i, j])
        if worth == 0:
            return None
        for shape in self.grid.sheet.shapes:
            if self.of_part[shape.part] == worth and shape.width <= width and shape.height <= height:
                return Leaf(shape)
        if self.grid.thin and (block := self._block(i, j, worth)):
            return block
        cut = self._cut_worth(i, j, worth)
        if cut is None:
            raise AssertionError("a piece has a value that neither a part nor a cut explains")
        axis, near = cut
        if axis is Axis.X:
            at = self.grid.x.points[near]
            halves = (self._arranged(at, height), self._arranged(width - at, height))
        else:
            at = self.grid.y.points[near]
            halves = (self._arranged(width, at), self._arranged(width, height - at))
        return in_a_row(axis, (half for half in halves if half is not None))

    def _block(self, i: int, j: int, worth: int) -> Arrangement | None:
        """Rows and columns of one part that are worth ``worth``."""
        width, height = self.grid.x.points[i], self.grid.y.points[j]
        for shape in self.grid.sheet.shapes:
            across, down = width // shape.width, height // shape.height
            if self.of_part[shape.part] * across * down == worth:
                row = in_a_row(Axis.X, [Leaf(shape)] * across)
                return in_a_row(Axis.Y, [row] * down) if row else None
        return None

    def _cut_worth(self, i: int, j: int, worth: int) -> tuple[Axis, int] | None:
        x, y = self.grid.x, self.grid.y
        found = np.flatnonzero(self.best[x.near[i], j] + self.best[x.far[i], j] == worth)
        if len(found):
            return Axis.X, int(x.near[i, found[-1]])
        found = np.flatnonzero(self.best[i, y.near[j]] + self.best[i, y.far[j]] == worth)
        if len(found):
            return Axis.Y, int(y.near[j, found[-1]])
        return None


def best_values(sheet: Sheet, of_part: Sequence[int]) -> Values:
    """F for every piece of ``sheet``; ``of_part`` holds a value, not below 0, for each part."""
    return values_on(grid_of(sheet), of_part)


def values_on(grid: Grid, of_part: Sequence[int]) -> Values:
    """F for every piece of ``grid``, by such cuts as it has.

    Pieces are settled by anti-diagonals: all pieces (i, j) with equal i + j depend
    only on earlier ones, so each diagonal is one step over whole arrays.
    """
    best = _blocks(grid, of_part) if grid.thin else _single_parts(grid, of_part)
    columns, rows = best.shape
    flat = best.reshape(-1)
    near_x, far_x = grid.x.near * rows, grid.x.far * rows
    for diagonal in range(2, columns + rows - 1):
        first = max(1, diagonal - rows + 1)
        last = min(columns - 1, diagonal - 1)
        i = np.arange(first, last + 1)
        j = diagonal - i
        at = i * rows + j
        here = flat[at]
        # Rows of the tables are filled up with zeros; no row before `last` is longer than its own.
        width = int(grid.x.many[first : last + 1].max())
        if width:
            up = j[:, None]
            both = flat.take(near_x[first : last + 1, :width] + up)
            both += flat.take(far_x[first : last + 1, :width] + up)
            np.maximum(here, both.max(axis=1), out=here)
        depth = int(grid.y.many[j[-1] : j[0] + 1].max())
        if depth:
            along = (i * rows)[:, None]
            both = flat.take(grid.y.near[j, :depth] + along)
            both += flat.take(grid.y.far[j, :depth] + along)
            np.maximum(here, both.max(axis=1), out=here)
        flat[at] = here
    return Values(grid, tuple(of_part), best)


def _single_parts(grid: Grid, of_part: Sequence[int]) -> Whole:
    best = np.zeros((len(grid.x.points), len(grid.y.points)), dtype=np.int64)
    for shape in grid.sheet.shapes:
        corner = best[grid.x.holding(shape.width) :, grid.y.holding(shape.height) :]
        np.maximum(corner, of_part[shape.part], out=corner)
    return best


def _blocks(grid: Grid, of_part: Sequence[int]) -> Whole:
    """Rows and columns of one part: between the few cuts of a thin grid they fill what is free."""
    best = np.zeros((len(grid.x.points), len(grid.y.points)), dtype=np.int64)
    x, y = positions(grid.x.points), positions(grid.y.points)
    for shape in grid.sheet.shapes:
        many = np.outer((x // shape.width).astype(np.int64), (y // shape.height).astype(np.int64))
        np.maximum(best, of_part[shape.part] * many, out=best)
    return best
