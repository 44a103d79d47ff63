"""How many parts of one size a sheet gives where cuts may stop part way.

Five blocks round a pinwheel, each cut into blocks again (Morabito and Morales, Journal of the
Operational Research Society 49 (1998) 819-828, for pallets of equal boxes); with the middle one
empty and blocks that vanish this includes every through cut. What no layout can beat is bounded
by area and by bars (Barnes 1979, in :mod:`~batchleaf.core.cutting.one_size`).
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Final

from batchleaf.core.cutting.grid import raster_points
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.one_size import covered_by_bars

MOST_PARTS: Final = 60
"""A sheet that holds more is not looked at: a part more or less is no tip then."""
MOST_BLOCKS: Final = 150_000
"""Ways to split blocks that are weighed at most; a sheet of a few dozen parts takes far fewer."""


def most_with_stopped_cuts(sheet: Sheet, through: int) -> int:
    """The most that is found; ``through`` are found by through cuts.

    ``sheet`` has the one or two shapes of one part.
    """
    if len(sheet.shapes) < 2 or not through:
        return through
    at_most = covered_by_bars(sheet)
    if through >= at_most or at_most > MOST_PARTS:
        return through
    return _Blocks(sheet).most(sheet.width, sheet.height, through, at_most)


class _Blocks:
    """Sheets of all sizes that come up, each with the most that was found for it."""

    def __init__(self, sheet: Sheet) -> None:
        one, _ = sheet.shapes
        self._long, self._short = max(one.width, one.height), min(one.width, one.height)
        sides = {self._long, self._short}
        self._x = raster_points(sheet.width, sides)
        self._y = raster_points(sheet.height, sides)
        self._known: dict[tuple[int, int], int] = {}
        self._weighed = 0

    def most(self, width: int, height: int, known: int, at_most: int) -> int:
        """The most for a block; ``known`` are found already, and more than ``at_most`` there are not."""
        best = known
        for blocks in self._splits(width, height):
            self._weighed += 1
            if best == at_most or self._weighed > MOST_BLOCKS:
                break
            if sum(self._area(*block) for block in blocks) > best:
                best = max(best, sum(self._block(*block) for block in blocks))
        return best

    def _block(self, width: int, height: int) -> int:
        width, height = max(width, height), min(width, height)
        if (width, height) not in self._known:
            fits = height >= self._short and width >= self._long
            self._known[width, height] = (
                self.most(width, height, self._rows(width, height), self._area(width, height)) if fits else 0
            )
        return self._known[width, height]

    def _rows(self, width: int, height: int) -> int:
        lying = (width // self._long) * (height // self._short)
        return max(lying, (width // self._short) * (height // self._long))

    def _area(self, width: int, height: int) -> int:
        """No layout gives more, by area alone."""
        if min(width, height) < self._short or max(width, height) < self._long:
            return 0
        return width * height // (self._long * self._short)

    def _splits(self, width: int, height: int) -> Iterator[tuple[tuple[int, int], ...]]:
        """Two blocks side by side or one above the other, then five round a pinwheel."""
        x = [point for point in self._x if 0 < point < width]
        y = [point for point in self._y if 0 < point < height]
        for at in x:
            yield (at, height), (width - at, height)
        for at in y:
            yield (width, at), (width, height - at)
        for left, right in combinations(x, 2):
            for upper, lower in combinations(y, 2):
                yield (
                    (left, lower),
                    (width - left, upper),
                    (right - left, lower - upper),
                    (right, height - lower),
                    (width - right, height - upper),
                )
