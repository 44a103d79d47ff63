"""Numbers out: parts of one size from one sheet."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest

from batchleaf.core.cutting.from_one_sheet import from_one_sheet
from cutting.jobs import inches, mm

# (sheet, part, plain grid, by through cuts, with stopped cuts), inches.
# A printing course: 17x22. A print buyer's guide ("about 7 %", "5, about 33 %" waste): 23x35.
# A printer's table of sizes without waste: the last two from 8 1/2 x 11.
# Common practice, recomputed by hand: 2 1/2 x 3 1/2 cards, 5x7. Computed from the definition: 2 3/8 squares.
NUMBERS_OUT = [
    ("17 x 22", "8 1/2 x 11", 4, 4, 4),
    ("23 x 35", "8 1/2 x 11", 8, 8, 8),
    ("23 x 35", "9 x 12", 4, 5, 6),
    ("8 1/2 x 11", "2 1/2 x 3 1/2", 9, 10, 10),
    ("22 x 28", "2 1/2 x 3 1/2", 66, 70, 70),
    ("12 x 12", "5 x 7", 2, 3, 4),
    ("12 x 12", "2 1/2 x 3 1/2", 12, 14, 16),
    ("8 1/2 x 11", "4 1/4 x 5 1/2", 4, 4, 4),
    ("8 1/2 x 11", "8 1/2 x 3 2/3", 3, 3, 3),
    ("12 x 12", "2 3/8 x 2 3/8", 25, 25, 25),
]


@pytest.mark.parametrize(("sheet", "part", "grid", "through", "stopped"), NUMBERS_OUT)
def test_published_numbers_out(sheet: str, part: str, grid: int, through: int, stopped: int) -> None:
    """Grid, through and stopped cuts give what printers' tables say."""
    found = from_one_sheet(inches(sheet), inches(part), turns=True)
    assert (found.grid, found.through, found.stopped) == (grid, through, stopped)


TINY = [
    (width, height, one, other)
    for width in range(2, 8)
    for height in range(2, width + 1)
    for one in range(1, 5)
    for other in range(1, one)
]


@pytest.mark.parametrize(("width", "height", "one", "other"), TINY)
def test_stopped_cuts_of_tiny_sheets(width: int, height: int, one: int, other: int) -> None:
    """As many as trying every place for every part gives."""
    found = from_one_sheet(mm(width, height), mm(one, other), turns=True)
    assert found.grid <= found.through <= found.stopped == most_anywhere(width, height, one, other)


def most_anywhere(width: int, height: int, one: int, other: int) -> int:
    """The most parts in any layout at whole millimetres: every square is covered, or left, in turn."""
    shapes = {(one, other), (other, one)}

    @cache
    def most(taken: int) -> int:
        at = next((n for n in range(width * height) if not taken >> n & 1), None)
        if at is None:
            return 0
        x, y = at % width, at // width
        best = most(taken | 1 << at)
        for wide, high in shapes:
            if x + wide <= width and y + high <= height:
                squares = sum(1 << (y + j) * width + x + i for i in range(wide) for j in range(high))
                if not taken & squares:
                    best = max(best, 1 + most(taken | squares))
        return best

    return most(0)


@pytest.mark.parametrize(("kerf", "most"), [(0, 4), (1, 2)])
def test_a6_from_a4_needs_a_blade_without_kerf(kerf: int, most: int) -> None:
    """ISO 216: four A6 leave no millimetre across an A4, so a saw of 1 mm spoils two of them."""
    assert from_one_sheet(mm(210, 297), mm(105, 148), turns=True, kerf=Fraction(kerf)).through == most


def test_a_part_that_may_not_turn_keeps_its_direction() -> None:
    """Six 2 in strips, 12 long, come from 12 x 8 lying one way and none lying the other way."""
    sheet = inches("8 x 12")
    assert from_one_sheet(sheet, inches("12 x 2"), turns=True).through == 4
    assert from_one_sheet(sheet, inches("12 x 2"), turns=False).through == 0


def test_thirds_are_exact() -> None:
    """Three times 3 2/3 in are 11 in; the nearest sixteenth above is too much for three."""
    assert from_one_sheet(inches("8 1/2 x 11"), inches("8 1/2 x 3 11/16"), turns=True).through == 2


def test_a_metric_sheet_gives_fewer_inch_strips() -> None:
    """Six 2 in strips do not come from a sheet of 30 cm."""
    assert from_one_sheet(inches("12 x 12"), inches("12 x 2"), turns=True).through == 6
    assert from_one_sheet(mm(300, 300), inches("11 x 2"), turns=True).through == 5
