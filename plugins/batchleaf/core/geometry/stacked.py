"""How thick a heap of rectangles is: at its thickest spot, over half of its face, at its rim. Exact."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from math import lcm
from typing import Final

from batchleaf.measure.rects import Rect

Sheet = tuple[Rect, Fraction]
"""A rectangle, and how thick it is."""
_Area = tuple[int, int, int, int]
"""Left, top, right and bottom in whole numbers."""
_Whole = tuple[int, int, int, int, int]
"""The same, and a thickness."""


@dataclass(frozen=True, slots=True)
class Stacked:
    """In mm. ``most``: at the thickest spot; ``usual``: half of the face is no thicker than that.

    ``rim``: at the thickest spot that is nearer to the edge of the face than :data:`RIM`, or beyond it.
    """

    most: Fraction
    usual: Fraction
    rim: Fraction


RIM: Final = Fraction(5)
"""How wide the rim of a face is, in mm."""


def stack(sheets: Sequence[Sheet], face: Rect) -> Stacked:
    """A spot is as thick as all rectangles that cover it together.

    All edges make a grid, and within one of its cells nothing changes: each column of it is
    swept from top to bottom. Worked in whole numbers, since it is asked for every batch.
    """
    inner = Rect(face.x + RIM, face.y + RIM, face.width - 2 * RIM, face.height - 2 * RIM)
    rects = (face, inner, *(rect for rect, _ in sheets))
    across = lcm(*(side.denominator for rect in rects for side in _sides(rect)))
    through = lcm(*(thickness.denominator for _, thickness in sheets))
    whole = [(*_whole(rect, across), int(thickness * through)) for rect, thickness in sheets]
    of_face, of_inner = _whole(face, across), _whole(inner, across)
    areas = Counter[int]()
    most = rim = 0
    for cell, thickness in _cells(whole, (of_face, of_inner)):
        most = max(most, thickness)
        if not _within(cell, of_inner):
            rim = max(rim, thickness)
        if _within(cell, of_face):
            areas[thickness] += (cell[2] - cell[0]) * (cell[3] - cell[1])
    return Stacked(*(Fraction(one, through) for one in (most, _half_way(areas), rim)))


def _cells(sheets: Sequence[_Whole], areas: Sequence[_Area]) -> Iterator[tuple[_Area, int]]:
    """All cells of the grid of all edges, each with how thick it is."""
    sides = {x for one in (*sheets, *areas) for x in (one[0], one[2])}
    ends = [y for one in areas for y in (one[1], one[3])]
    for left, right in pairwise(sorted(sides)):
        there = [one for one in sheets if one[0] <= left and right <= one[2]]
        for top, bottom, thickness in _column(there, ends):
            yield (left, top, right, bottom), thickness


def _within(cell: _Area, area: _Area) -> bool:
    return area[0] <= cell[0] and area[1] <= cell[1] and cell[2] <= area[2] and cell[3] <= area[3]


def _column(there: Sequence[_Whole], ends: Iterable[int]) -> Iterable[tuple[int, int, int]]:
    """From top to bottom: where each cell of a column begins and ends, and how thick it is."""
    steps = Counter(dict.fromkeys(ends, 0))
    for _, y1, _, y2, thickness in there:
        steps[y1] += thickness
        steps[y2] -= thickness
    places = sorted(steps)
    thick = accumulate(steps[place] for place in places)
    return ((y1, y2, one) for (y1, y2), one in zip(pairwise(places), thick, strict=False))


def _half_way(areas: Counter[int]) -> int:
    """The least thickness that half of the area does not go beyond."""
    covered, whole = 0, areas.total()
    for thickness in sorted(areas):
        covered += areas[thickness]
        if 2 * covered >= whole:
            return thickness
    return 0


def _sides(rect: Rect) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    return rect.x, rect.y, rect.right, rect.bottom


def _whole(rect: Rect, scale: int) -> tuple[int, int, int, int]:
    left, top, right, bottom = (int(side * scale) for side in _sides(rect))
    return left, top, right, bottom
