"""How many parts of one size a sheet gives; printers say numbers out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cutting.integers import Sheet, common_unit, shapes_of
from batchleaf.core.cutting.values import best_values
from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class FromOneSheet:
    """``grid``: all parts lying one way in rows and columns; ``through``: the most by through cuts."""

    grid: int
    through: int


def from_one_sheet(sheet: Size, part: Size, *, turns: bool, kerf: Fraction = Fraction(0)) -> FromOneSheet:
    """How many of ``part`` a ``sheet`` gives, exactly; all lengths in mm."""
    unit = common_unit((sheet.width, sheet.height, part.width, part.height, kerf))
    lost = int(kerf / unit)
    width, height = int(sheet.width / unit) + lost, int(sheet.height / unit) + lost
    lying = shapes_of(0, int(part.width / unit) + lost, int(part.height / unit) + lost, turns=turns)
    fitting = tuple(shape for shape in lying if shape.width <= width and shape.height <= height)
    grid = max(((width // shape.width) * (height // shape.height) for shape in fitting), default=0)
    return FromOneSheet(grid, best_values(Sheet(width, height, fitting), (1,)).whole_sheet)
