"""The price of one unit over time: a point for each purchase, a step that holds until the next."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain, count, pairwise
from typing import Final

from batchleaf.views.drawing.canvas import Extent
from batchleaf.views.drawing.charts.field import Field, Line, field_for
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke

HEIGHT: Final = 120.0
_POINT: Final = 0.24
"""Half the width of a point's mark, in em."""


@dataclass(frozen=True, slots=True)
class PricePoint:
    """One purchase: ``price`` in units of the rule; ``said``: what is written at it, or nothing.

    ``rough``: the price is a guess.
    """

    date: dt.date
    price: Fraction
    said: str = ""
    rough: bool = False


def draw_prices(
    points: Sequence[PricePoint],
    ends: tuple[str, str],
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
) -> Drawing:
    """``points`` in order of date, two or more; ``ends``: how the first and the last day are written."""
    field = field_for((point.price for point in points), height=HEIGHT)
    places = [(_x(field, point.date, points), field.y(point.price)) for point in points]
    field.draw_rule()
    field.canvas.add(Stroke("stepped", tuple(_steps(places))))
    _draw_time(field, points, ends)
    for point, (x, y) in zip(points, places, strict=True):
        _draw_point(field, x, y, rough=point.rough)
    said = [(x, y, point.said) for point, (x, y) in zip(points, places, strict=True) if point.said]
    _write(field, said, [_around(line) for line in _steps(places)])
    return field.drawing(id, title, description)


def _x(field: Field, date: dt.date, points: Sequence[PricePoint]) -> float:
    """Days are of one length; all purchases on one day stand in the middle."""
    first, last = points[0].date, points[-1].date
    if first == last:
        return field.width / 2
    inner = field.width - 2 * field.em
    return field.em + (date - first).days / (last - first).days * inner


def _steps(places: Sequence[tuple[float, float]]) -> Iterator[Line]:
    for (x, y), (next_x, next_y) in pairwise(places):
        yield (x, y, next_x, y)
        yield (next_x, y, next_x, next_y)


def _draw_time(field: Field, points: Sequence[PricePoint], ends: tuple[str, str]) -> None:
    """The base line with the first and the last day, and the years that begin between them."""
    em, canvas = field.em, field.canvas
    first, last = points[0].date, points[-1].date
    canvas.add(Stroke("base", ((0, 0, field.width, 0),)))
    at = [_x(field, day, points) for day in dict.fromkeys((first, last))]
    years = [dt.date(year, 1, 1) for year in range(first.year + 1, last.year + 1)]
    starts = [(_x(field, day, points), str(day.year)) for day in years]
    canvas.add(Stroke("tick", tuple((x, 0, x, 0.3 * em) for x in at)))
    canvas.add(Label("quiet start" if len(at) > 1 else "quiet", at[0], 0.95 * em, ends[0]))
    if len(at) > 1:
        canvas.add(Label("quiet end", at[1], 0.95 * em, ends[1]))
    if starts:
        canvas.add(Stroke("tick", tuple((x, 0, x, 0.5 * em) for x, _ in starts)))
    for x, year in starts:
        any(canvas.add_if_free(Label("quiet", x, row * em, year)) for row in (0.95, 2.05))


def _draw_point(field: Field, x: float, y: float, *, rough: bool) -> None:
    """A tick through the line, as at the end of a measure; a guess is a small open square."""
    half = _POINT * field.em
    if rough:
        field.canvas.add(Box("piece", x - half / 1.5, y - half / 1.5, half / 0.75, half / 0.75))
    else:
        field.canvas.add(Stroke("point", ((x - half, y + half, x + half, y - half),)))


def _around(line: Line) -> Extent:
    x1, y1, x2, y2 = line
    return Extent(min(x1, x2), min(y1, y2) - 1, max(x1, x2), max(y1, y2) + 1)


def _write(field: Field, said: Sequence[tuple[float, float, str]], steps: Sequence[Extent]) -> None:
    """Thin lines first, so that none goes over a word."""
    labels: list[Label] = []
    for x, y, text in said:
        taken = [*steps, *(field.canvas.lettering.extent(label) for label in labels)]
        label = _place(field, x, y, text, taken)
        if label.y < -field.height:
            field.canvas.add(Stroke("extension", ((x, y, x, label.y + 0.6 * field.em),)))
        labels.append(label)
    field.canvas.add(*labels)


def _place(field: Field, x: float, y: float, text: str, taken: Sequence[Extent]) -> Label:
    """Over its point or under it where it lies on no line and no word, else further up."""
    em, lettering = field.em, field.canvas.lettering
    half = lettering.width(text) / 2
    if x < half:
        role, along = "halo start", max(x - 0.3 * em, 0.0)
    elif x > field.width - half:
        role, along = "halo end", min(x + 0.3 * em, field.width + 0.6 * em)
    else:
        role, along = "halo", x
    near = [y - 0.75 * em, *([y + 0.8 * em] if y < -1.4 * em else [])]
    far = (-field.height - row * 1.1 * em for row in count(1))
    ways = (Label(role, along, at, text) for at in chain(near, far))
    return next(way for way in ways if not any(lettering.extent(way).meets(other) for other in taken))
