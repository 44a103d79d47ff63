"""A grid with fewer cuts, for sheets so finely measured that the whole grid takes too long.

Cuts at some places only are still cuts: what is found on a thin grid can be cut.
Only "nothing is better" can no longer be said, so bounds come from area instead.
"""

from __future__ import annotations

from collections.abc import Set
from functools import lru_cache
from typing import Final

from batchleaf.core.cutting.grid import Grid, cuts_at, raster_points
from batchleaf.core.cutting.integers import Sheet

POINTS: Final = 72
"""About so many places are kept on each axis, besides those of single parts."""


@lru_cache(maxsize=64)
def thin_grid_of(sheet: Sheet) -> Grid:
    """A grid of ``sheet`` that never has many more than :data:`POINTS` places on an axis, remembered."""
    return new_thin_grid(sheet)


def new_thin_grid(sheet: Sheet) -> Grid:
    """The same for a sheet that is asked for once."""
    widths = {shape.width for shape in sheet.shapes}
    heights = {shape.height for shape in sheet.shapes}
    x, y = raster_points(sheet.width, widths), raster_points(sheet.height, heights)
    return Grid(sheet, cuts_at(_some(x, widths)), cuts_at(_some(y, heights)), thin=True)


def _some(points: tuple[int, ...], sizes: Set[int]) -> tuple[int, ...]:
    """Evenly spread ``points`` with the last one, and with the ``sizes`` so far as they are few."""
    if len(points) <= POINTS:
        return points
    spread = {*points[:: -(-len(points) // POINTS)], points[-1]}
    return tuple(sorted(spread | set(sorted(sizes)[:POINTS])))
