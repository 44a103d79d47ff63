"""A small line: how one number went from batch to batch; its first and last figure stand beside it."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.views.drawing.shapes import Drawing, Stroke

_WIDTH: Final = 168.0
_HEIGHT: Final = 30.0
_EDGE: Final = 4.0
_POINT: Final = 3.0
"""Half the width of the mark at a point. All in px, at a scale of one."""


def draw_trend(values: Sequence[Fraction], *, id: str, title: str, description: str) -> Drawing:  # noqa: A002
    """``values`` in their order, two or more, over a base line that is nothing."""
    highest = max(values) or Fraction(1)
    step = _WIDTH / (len(values) - 1)
    places = [(at * step, -float(value / highest) * _HEIGHT) for at, value in enumerate(values)]
    line = tuple((x, y, next_x, next_y) for (x, y), (next_x, next_y) in pairwise(places))
    points = tuple((x - _POINT, y + _POINT, x + _POINT, y - _POINT) for x, y in places)
    return Drawing(
        id=id,
        title=title,
        description=description,
        x=-_EDGE,
        y=-_HEIGHT - _EDGE,
        width=_WIDTH + 2 * _EDGE,
        height=_HEIGHT + 2 * _EDGE,
        scale=1.0,
        width_class="unlettered",
        shapes=(Stroke("base", ((0.0, 0.0, _WIDTH, 0.0),)), Stroke("stepped", line), Stroke("point", points)),
    )
