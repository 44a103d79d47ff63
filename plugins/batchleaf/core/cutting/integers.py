"""A job in whole numbers: lengths without denominators, cuts without kerf.

All lengths of a job are multiples of one unit, so the search runs in integers
and never rounds. The kerf k goes away by adding k to both sides of every part
and of every sheet: n parts in a row need n·w + (n-1)·k <= W, which is
n·(w+k) <= W+k.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, lcm

from batchleaf.facts.jobs import Job, Stock


@dataclass(frozen=True, slots=True)
class Shape:
    """A part as it lies on a sheet; ``part`` counts in the job's parts, kerf included."""

    part: int
    turned: bool
    width: int
    height: int


@dataclass(frozen=True, slots=True)
class Sheet:
    """A piece to cut, kerf included, with every shape that fits on it."""

    width: int
    height: int
    shapes: tuple[Shape, ...]


@dataclass(frozen=True, slots=True)
class WholeJob:
    """``unit`` is the length in mm of one whole step; one sheet for each stock of the job."""

    unit: Fraction
    kerf: int
    sheets: tuple[Sheet, ...]


def in_whole_numbers(job: Job) -> WholeJob:
    """``job`` with every length a whole multiple of ``unit``."""
    unit = common_unit(_lengths(job))
    kerf = int(job.kerf / unit)
    sheets = tuple(_sheet(job, stock, unit, kerf) for stock in job.stocks)
    return WholeJob(unit, kerf, sheets)


def common_unit(lengths: Iterable[Fraction]) -> Fraction:
    """The largest length of which all of ``lengths`` are whole multiples.

    >>> common_unit([Fraction(3, 4), Fraction(5, 6)])
    Fraction(1, 12)
    """
    known = [length for length in lengths if length]
    bottom = lcm(*(length.denominator for length in known))
    top = gcd(*(int(length * bottom) for length in known))
    return Fraction(top or 1, bottom)


def _lengths(job: Job) -> list[Fraction]:
    sizes = [stock.size for stock in job.stocks] + [part.size for part in job.parts]
    return [job.kerf, *(size.width for size in sizes), *(size.height for size in sizes)]


def _sheet(job: Job, stock: Stock, unit: Fraction, kerf: int) -> Sheet:
    width = int(stock.size.width / unit) + kerf
    height = int(stock.size.height / unit) + kerf
    fitting = tuple(
        shape
        for index, part in enumerate(job.parts)
        if not part.sources or stock.id in part.sources
        for shape in shapes_of(
            index, int(part.size.width / unit) + kerf, int(part.size.height / unit) + kerf, turns=part.turns
        )
        if shape.width <= width and shape.height <= height
    )
    return Sheet(width, height, fitting)


def shapes_of(part: int, width: int, height: int, *, turns: bool) -> tuple[Shape, ...]:
    """The one or two ways in which a part may lie."""
    upright = Shape(part, turned=False, width=width, height=height)
    if not turns or width == height:
        return (upright,)
    return (upright, Shape(part, turned=True, width=height, height=width))
