"""The best value of one sheet against published optima."""

from __future__ import annotations

import pytest

from batchleaf.core.cutting.grid import raster_points, sums
from batchleaf.core.cutting.integers import Sheet, shapes_of
from batchleaf.core.cutting.strips import parts_of
from batchleaf.core.cutting.values import Values, best_values

HERZ = [(21, 13), (36, 17), (54, 20), (24, 27), (18, 65)]
CHRISTOFIDES_WHITLOCK_1 = [
    (8, 4, 66), (3, 7, 35), (8, 2, 24), (3, 4, 17), (3, 3, 11), (3, 2, 8), (2, 1, 2),
]  # fmt: skip


def values_of(width: int, height: int, parts: list[tuple[int, int, int]], *, turns: bool) -> Values:
    """The table for one sheet; parts are (width, height, value)."""
    shapes = [shape for at, (w, h, _) in enumerate(parts) for shape in shapes_of(at, w, h, turns=turns)]
    fitting = tuple(shape for shape in shapes if shape.width <= width and shape.height <= height)
    return best_values(Sheet(width, height, fitting), [value for _, _, value in parts])


@pytest.mark.parametrize(("turns", "value"), [(False, 12348), (True, 12387)])
def test_herz(turns: bool, value: int) -> None:  # noqa: FBT001
    """Herz, IBM J. Res. Dev. 16 (1972) 462-469: 12348; with turning 12387 (Cintra's page)."""
    found = values_of(127, 98, [(w, h, w * h) for w, h in HERZ], turns=turns)
    assert found.whole_sheet == value


def test_christofides_and_whitlock_without_limits() -> None:
    """Christofides and Whitlock, Operations Research 25 (1977) 30-44, no. 1, any number: 249."""
    assert values_of(15, 10, CHRISTOFIDES_WHITLOCK_1, turns=False).whole_sheet == 249


@pytest.mark.parametrize("turns", [False, True])
def test_the_arrangement_is_worth_the_value(turns: bool) -> None:  # noqa: FBT001
    """The parts of the arrangement add up to the value, and it fits on its sheet."""
    parts = [(w, h, w * h) for w, h in HERZ]
    found = values_of(127, 98, parts, turns=turns)
    piece = found.arrangement()
    assert piece is not None
    assert sum(parts[at][2] * many for at, many in parts_of(piece).items()) == found.whole_sheet
    assert (piece.width <= 127, piece.height <= 98) == (True, True)


def test_raster_points_are_sums_that_leave_room() -> None:
    """Sums of 3 and 5 within 11 are 0 3 5 6 8 9 10 11; turned round from 11, 0 3 5 6 8 11 remain."""
    assert sums(11, (3, 5)) == (0, 3, 5, 6, 8, 9, 10, 11)
    assert raster_points(11, (3, 5)) == (0, 3, 5, 6, 8, 11)


def test_an_empty_sheet_is_worth_nothing() -> None:
    """A sheet on which nothing fits has no arrangement."""
    found = values_of(5, 5, [(6, 1, 9)], turns=False)
    assert (found.whole_sheet, found.arrangement()) == (0, None)
