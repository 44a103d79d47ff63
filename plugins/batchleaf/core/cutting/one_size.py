"""How many parts of one size a sheet gives.

Lying one way, rows and columns are the most. Lying both ways, the exact count comes
from a table over all cuts; where that would be too large, from rows that lie one way
or the other, with a bound beside it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from batchleaf.core.cutting.grid import work_ahead
from batchleaf.core.cutting.integers import Shape, Sheet
from batchleaf.core.cutting.thin_grid import thin_grid_of
from batchleaf.core.cutting.values import best_values, values_on

MOST_WORK: Final = 8_000_000
"""A table that weighs more cuts than this takes more than a moment."""


@dataclass(frozen=True, slots=True)
class OneSize:
    """``found`` can be cut; no way of through cuts gives more than ``at_most``."""

    found: int
    at_most: int


def plain_grid_count(sheet: Sheet, shape: Shape) -> int:
    """Rows and columns of parts that all lie one way."""
    return (sheet.width // shape.width) * (sheet.height // shape.height)


def most_of_one_size(sheet: Sheet) -> OneSize:
    """``sheet`` has shapes of one part alone."""
    if not sheet.shapes:
        return OneSize(0, 0)
    if len(sheet.shapes) == 1:
        found = plain_grid_count(sheet, sheet.shapes[0])
        return OneSize(found, found)
    prices = [1] * (1 + sheet.shapes[0].part)
    if work_ahead(sheet) <= MOST_WORK:
        found = best_values(sheet, prices).whole_sheet
        return OneSize(found, found)
    thin = values_on(thin_grid_of(sheet), prices)
    found = max(thin.whole_sheet, in_strips(sheet))
    return OneSize(found, max(found, min(thin.at_most, covered_by_bars(sheet))))


def in_strips(sheet: Sheet) -> int:
    """The most by rows, or by columns, each of parts lying one way."""
    one, other = sheet.shapes
    rows = _in_strips(
        sheet.height, (one.height, sheet.width // one.width), (other.height, sheet.width // other.width)
    )
    columns = _in_strips(
        sheet.width, (one.width, sheet.height // one.height), (other.width, sheet.height // other.height)
    )
    return max(rows, columns)


def _in_strips(room: int, one: tuple[int, int], other: tuple[int, int]) -> int:
    """Strips as (depth, parts in each), however many of both kinds find room."""
    (deep, many), (other_deep, other_many) = one, other
    return max(n * many + (room - n * deep) // other_deep * other_many for n in range(room // deep + 1))


def covered_by_bars(sheet: Sheet) -> int:
    """A bound for any layout: a part is a bundle of bars, one unit thin and as long as a side.

    Bars of length n in W x H leave free at least r·s or (n-r)·(n-s), the less of the two, with
    r = W mod n and s = H mod n (Barnes, Discrete Mathematics 26 (1979) 93-100).
    """
    shape = sheet.shapes[0]
    area = sheet.width * sheet.height
    lost = max(_left_by_bars(sheet, side) for side in (shape.width, shape.height))
    return (area - lost) // (shape.width * shape.height)


def _left_by_bars(sheet: Sheet, bar: int) -> int:
    across, down = sheet.width % bar, sheet.height % bar
    return min(across * down, (bar - across) * (bar - down))
