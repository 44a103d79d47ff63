"""What was made in each month: the makes of its batches as piles of paper, seen from the edge."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, count
from typing import Final

from batchleaf.views.drawing.canvas import SIZE_OF_ROLE
from batchleaf.views.drawing.charts.field import Field, field_for, write_over
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke

PILE: Final = 0.66
"""Width of a pile, in months."""
THINNEST: Final = 4.0
"""Thinner makes are not told apart by lines."""
_INSET: Final = 2.0
"""The dotted edge of what was spoiled lies so far inside."""


@dataclass(frozen=True, slots=True)
class Pile:
    """One batch; ``letter`` is that of the list beside the chart, or empty."""

    letter: str
    finished: int
    spoiled: int


def draw_makes(
    months: Sequence[Sequence[Pile]],
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
) -> Drawing:
    """The batches of twelve months, one on the other; spoiled makes lie on top, with a dotted edge.

    Over each pile stands how many are finished. Where one of a month's batches is too
    thin for its letter, all of them stand over the pile, as ``c–e``.
    """
    begun = [sum(one.finished + one.spoiled for one in month) for month in months]
    field = field_for(map(Fraction, begun), whole=True)
    field.draw_rule()
    piles = [(place, month) for place, month in enumerate(months) if month]
    over: list[tuple[float, float, str]] = []
    for place, month in piles:
        _draw_pile(field, place, month)
        top = field.y(Fraction(sum(one.finished + one.spoiled for one in month)))
        over.append(((place + 0.5) * field.month, top, str(sum(one.finished for one in month))))
    field.draw_months()
    write_over(field, over)
    for (_, month), (x, y, _) in zip(piles, over, strict=True):
        _write_letters(field, month, x, y)
    return field.drawing(id, title, description)


def _draw_pile(field: Field, place: int, month: Sequence[Pile]) -> None:
    wide = PILE * field.month
    left = (place + 0.5) * field.month - wide / 2
    for one, start in zip(month, _starts(month), strict=True):
        if one.finished:
            top, bottom = field.y(start + one.finished), field.y(start)
            field.canvas.add(Box("piece", left, top, wide, bottom - top))
            edges = [field.y(start + i) for i in range(1, one.finished)]
            if edges and bottom - edges[0] >= THINNEST:
                field.canvas.add(Stroke("extension", tuple((left, y, left + wide, y) for y in edges)))
    finished = sum(one.finished for one in month)
    bottom, top = field.y(Fraction(finished)), field.y(Fraction(finished + sum(one.spoiled for one in month)))
    if bottom - top > 2 * _INSET:
        field.canvas.add(
            Box("waste", left + _INSET, top + _INSET, wide - 2 * _INSET, bottom - top - 2 * _INSET)
        )


def _starts(month: Sequence[Pile]) -> list[Fraction]:
    """How many finished makes lie under those of each batch."""
    return [Fraction(under) for under in accumulate((one.finished for one in month[:-1]), initial=0)]


def _write_letters(field: Field, month: Sequence[Pile], x: float, y: float) -> None:
    """Each in its batch where all have room; else together over the figure of the pile."""
    em = field.em
    middles = [
        (field.y(start) + field.y(start + one.finished)) / 2
        for one, start in zip(month, _starts(month), strict=True)
    ]
    labels = [
        Label("key halo on-sheet", x, middle, one.letter)
        for one, middle in zip(month, middles, strict=True)
        if one.letter
    ]
    heights = [-field.y(Fraction(one.finished)) for one in month]
    if all(high >= SIZE_OF_ROLE["key"] * em for high in heights):
        field.canvas.add(*labels)
    elif labels:
        text = _together([label.text for label in labels])
        rows = (Label("keys halo", x, y - (1.7 + 0.3 * row) * em, text) for row in count())
        next(row for row in rows if field.canvas.add_if_free(row))


def _together(letters: Sequence[str]) -> str:
    return "–".join(dict.fromkeys((letters[0], letters[-1])))
