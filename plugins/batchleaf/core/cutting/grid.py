"""The places where a cut can matter.

Parts pushed to the left and to the top touch, so a cut only ever needs to lie at
a sum of part widths (Herz 1972, "canonical dissections"). Of these sums only the
raster points are kept: for every sum x, the largest sum that fits in W - x. What
lies between two raster points can be given to either side of the cut for nothing
(Scheithauer and Terno, "The G4-heuristic for the pallet loading problem",
J. Opl Res. Soc. 47 (1996) 511-522; Scheithauer 1997).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from batchleaf.core.cutting.integers import Sheet

Whole = NDArray[np.int64]
BITS: Final = 1 << 20
"""Sums up to here are marked in the bits of one number."""
MOST_SUMS: Final = 30_000
"""More sums than these make no grid that is searched as a whole."""


@dataclass(frozen=True, slots=True, eq=False)
class AxisCuts:
    """The raster points of one axis, from 0, and the useful cuts of each.

    Piece ``i`` (as long as ``points[i]``) may be cut into pieces ``near[i, c]``
    and ``far[i, c]``; rows are filled up with the empty piece 0.
    ``many[i]`` is how many of the row are cuts.
    """

    points: tuple[int, ...]
    near: Whole
    far: Whole
    many: Whole

    def holding(self, length: int) -> int:
        """The shortest piece that is at least ``length`` long."""
        return bisect_right(self.points, length - 1)

    def within(self, length: int) -> int:
        """The longest piece that is at most ``length`` long."""
        return bisect_right(self.points, length) - 1


@dataclass(frozen=True, slots=True, eq=False)
class Grid:
    """Both axes of one sheet. It belongs to that sheet's size and shapes alone."""

    sheet: Sheet
    x: AxisCuts
    y: AxisCuts
    thin: bool = False
    """Some cuts are left out: plans over it are true, but need not be the best."""

    @property
    def cells(self) -> int:
        """How many pieces a table over this grid holds."""
        return len(self.x.points) * len(self.y.points)

    @property
    def work(self) -> int:
        """How many cuts one pass over the grid weighs."""
        return len(self.y.points) * int(self.x.many.sum()) + len(self.x.points) * int(self.y.many.sum())


@lru_cache(maxsize=64)
def grid_of(sheet: Sheet) -> Grid:
    """The grid of ``sheet``, remembered."""
    return new_grid(sheet)


def new_grid(sheet: Sheet) -> Grid:
    """The grid of a ``sheet`` that is asked for once."""
    return Grid(
        sheet,
        axis_cuts(sheet.width, {shape.width for shape in sheet.shapes}),
        axis_cuts(sheet.height, {shape.height for shape in sheet.shapes}),
    )


@lru_cache(maxsize=256)
def work_ahead(sheet: Sheet) -> int:
    """No grid of ``sheet`` takes more work than this; told without making one."""
    axes = (
        (sheet.width, {shape.width for shape in sheet.shapes}),
        (sheet.height, {shape.height for shape in sheet.shapes}),
    )
    if any(len(sums(length, sizes)) > MOST_SUMS for length, sizes in axes):
        return MOST_SUMS**3
    columns, rows = (len(raster_points(length, sizes)) for length, sizes in axes)
    return columns * rows * (columns + rows) // 4


def sums(length: int, sizes: Iterable[int]) -> tuple[int, ...]:
    """Every sum of ``sizes``, each any number of times, that is at most ``length``.

    More than :data:`MOST_SUMS` are not all found where the unit is very fine.
    """
    return _sums_by_bits(length, sizes) if length <= BITS else _sums_one_by_one(length, sizes)


def _sums_by_bits(length: int, sizes: Iterable[int]) -> tuple[int, ...]:
    mask = (1 << (length + 1)) - 1
    reached = 1
    for size in sizes:
        step = size
        while step <= length:
            # Shifts of 1, 2, 4 … sizes together give every multiple.
            reached |= (reached << step) & mask
            step *= 2
    bits = bin(reached)[:1:-1]
    return tuple(at for at, bit in enumerate(bits) if bit == "1")


def _sums_one_by_one(length: int, sizes: Iterable[int]) -> tuple[int, ...]:
    """Few sums lie far apart in a fine unit; large sizes first, which have the fewest."""
    reached = {0}
    for size in sorted(sizes, reverse=True):
        last = set(reached)
        while last and len(reached) <= MOST_SUMS:
            last = {at + size for at in last if at + size <= length} - reached
            reached |= last
    return tuple(sorted(reached))


def raster_points(length: int, sizes: Iterable[int]) -> tuple[int, ...]:
    """For every sum x the largest sum within ``length`` - x, in rising order."""
    every = sums(length, sizes)
    return tuple(sorted({every[bisect_right(every, length - at) - 1] for at in every}))


def axis_cuts(length: int, sizes: Iterable[int]) -> AxisCuts:
    """Raster points of ``length``, and for each the cuts that no other cut makes needless."""
    return cuts_at(raster_points(length, sizes))


def positions(points: tuple[int, ...]) -> NDArray[Any]:
    """The points for reckoning; measures of many odd fractions have a unit too fine for 64 bits."""
    return np.array(points, dtype=np.int64 if points[-1] < 1 << 62 else object)


def cuts_at(points: tuple[int, ...]) -> AxisCuts:
    """The useful cuts where pieces are as long as ``points``, which rise from 0."""
    at = positions(points)
    rows = [_useful_cuts(at, piece) for piece in range(len(points))]
    widest = max((len(row[0]) for row in rows), default=0)
    near = np.zeros((len(points), widest), dtype=np.int64)
    far = np.zeros((len(points), widest), dtype=np.int64)
    for piece, (one, other) in enumerate(rows):
        near[piece, : len(one)] = one
        far[piece, : len(other)] = other
    return AxisCuts(points, near, far, np.array([len(row[0]) for row in rows], dtype=np.int64))


def _useful_cuts(at: NDArray[Any], piece: int) -> tuple[Whole, Whole]:
    """Pairs (near, far) of piece indices, near not longer than far, each as long as it can be."""
    far = np.searchsorted(at, at[piece] - at[1:piece], side="right") - 1
    near = np.searchsorted(at, at[piece] - at[far], side="right") - 1
    keep = (near > 0) & (far > 0) & (near <= far)
    pairs = np.unique(near[keep] * len(at) + far[keep])
    return pairs // len(at), pairs % len(at)
