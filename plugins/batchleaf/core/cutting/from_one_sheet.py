"""How many parts of one size a sheet gives; printers say numbers out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from batchleaf.core.cutting.integers import Sheet, common_unit, shapes_of
from batchleaf.core.cutting.one_size import most_of_one_size, plain_grid_count
from batchleaf.core.cutting.stopped_cuts import most_with_stopped_cuts
from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class FromOneSheet:
    """``grid``: all parts lying one way in rows and columns; ``through``: the most by through cuts.

    ``stopped``: the most that was found where cuts may stop part way, never less than ``through``.
    ``at_most`` is above ``through`` only where so many parts fit that the most was not worked out.
    """

    grid: int
    through: int
    at_most: int
    stopped: int

    @property
    def proved(self) -> bool:
        """Whether no way of through cuts gives more."""
        return self.through == self.at_most


@dataclass(frozen=True, slots=True)
class OneSize:
    """The question: how many of ``part`` a ``sheet`` gives; all lengths in mm."""

    sheet: Size
    part: Size
    turns: bool
    kerf: Fraction = Fraction(0)


def most_from_one_sheet(asked: OneSize) -> FromOneSheet:
    """The answer."""
    return from_one_sheet(asked.sheet, asked.part, turns=asked.turns, kerf=asked.kerf)


@lru_cache(maxsize=4096)
def from_one_sheet(sheet: Size, part: Size, *, turns: bool, kerf: Fraction = Fraction(0)) -> FromOneSheet:
    """How many of ``part`` a ``sheet`` gives; all lengths in mm."""
    # Remembered: each edition of a batch asks for the same.
    whole = _in_whole_units(sheet, part, turns=turns, kerf=kerf)
    grid = max((plain_grid_count(whole, shape) for shape in whole.shapes), default=0)
    most = most_of_one_size(whole)
    stopped = most_with_stopped_cuts(whole, most.found) if most.found == most.at_most else most.found
    return FromOneSheet(grid, most.found, most.at_most, stopped)


@lru_cache(maxsize=4096)
def through_cuts_give(sheet: Size, part: Size, *, turns: bool) -> int:
    """How many of ``part`` a ``sheet`` gives at least by through cuts, and nothing else of it."""
    return most_of_one_size(_in_whole_units(sheet, part, turns=turns, kerf=Fraction(0))).found


def _in_whole_units(sheet: Size, part: Size, *, turns: bool, kerf: Fraction) -> Sheet:
    """Each length with what a cut takes away, in a unit that all of them are multiples of."""
    unit = common_unit((sheet.width, sheet.height, part.width, part.height, kerf))
    lost = int(kerf / unit)
    width, height = int(sheet.width / unit) + lost, int(sheet.height / unit) + lost
    lying = shapes_of(0, int(part.width / unit) + lost, int(part.height / unit) + lost, turns=turns)
    fitting = tuple(shape for shape in lying if shape.width <= width and shape.height <= height)
    return Sheet(width, height, fitting)
