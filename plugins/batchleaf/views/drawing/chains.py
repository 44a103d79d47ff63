"""Chains of measures along the sides of a sheet.

A chain starts and ends at the sheet's corners, so its figures add up to the sheet.
Ends are 45° ticks; figures stand in a break of the line, read from below and from
the right. A length too short for its figure writes it past the end of the chain,
or further out on a thin line, or not at all where no row is left for it.
Neighbours of one length share a figure, 5 × 12, and what leads down from its ends.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby, pairwise
from typing import Final

from batchleaf.measure.display import show_length
from batchleaf.measure.lengths import Unit
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.marks import Area
from batchleaf.views.drawing.shapes import Label, Stroke
from batchleaf.views.drawing.sides import Side

_AIR: Final = 0.5
"""Line left on both sides of a figure in its break, in em."""
_TICK: Final = 0.2
"""Half the height of a tick, in em."""


@dataclass(frozen=True, slots=True)
class _Measure:
    """One length along a side, or several equal ones in a row; ``figure``: ``210``, or ``5 × 12``."""

    start: float
    end: float
    figure: str

    @property
    def middle(self) -> float:
        """Where its figure stands, if it can."""
        return (self.start + self.end) / 2


def draw_chain(
    canvas: Canvas, sheet: Area, side: Side, stops: Sequence[Fraction], unit: Unit, out: float
) -> None:
    """Draw the chain with these ``stops`` so far ``out`` from ``side`` that rings fit before it."""
    em = canvas.lettering.em
    at = [float(stop) for stop in stops]
    measures = list(_measures(canvas, stops, unit))
    ends = [*(measure.start for measure in measures), at[-1]]
    canvas.add(
        Stroke("extension", tuple(_line(side, sheet, (u, 0.2 * em), (u, out + 0.2 * em)) for u in ends)),
        Stroke(
            "measure",
            (
                _line(side, sheet, (at[0], out), (at[-1], out)),
                *(_tick(side, sheet, u, out, _TICK * em) for u in at),
            ),
        ),
    )
    for measure in measures:
        _write(canvas, sheet, side, measure, out, at[-1])


def _measures(canvas: Canvas, stops: Sequence[Fraction], unit: Unit) -> Iterator[_Measure]:
    """One by one where figures fit, in runs of equals where they do not."""
    for length, run in groupby(pairwise(stops), key=lambda ends: ends[1] - ends[0]):
        figure = show_length(length, unit)
        each = [_Measure(float(start), float(end), figure) for start, end in run]
        if len(each) == 1 or _fits(canvas, each[0]):
            yield from each
        else:
            yield _Measure(each[0].start, each[-1].end, f"{len(each)} × {figure}")


def _fits(canvas: Canvas, measure: _Measure) -> bool:
    needed = canvas.lettering.width(measure.figure) + _AIR * canvas.lettering.em
    return measure.end - measure.start >= needed


def _write(canvas: Canvas, sheet: Area, side: Side, measure: _Measure, out: float, end: float) -> None:
    figure = measure.figure
    in_break = _figure(side, sheet, measure.middle, out, figure)
    if _fits(canvas, measure) and canvas.add_if_free(in_break):
        return
    past = (canvas.lettering.width(figure) / 2) + 0.45 * canvas.lettering.em
    if measure.end == end and canvas.add_if_free(_figure(side, sheet, end + past, out, figure)):
        return
    if measure.start == 0 and canvas.add_if_free(_figure(side, sheet, -past, out, figure)):
        return
    _write_further_out(canvas, sheet, side, measure.middle, out, figure)


def _write_further_out(
    canvas: Canvas, sheet: Area, side: Side, middle: float, out: float, figure: str
) -> None:
    em = canvas.lettering.em
    for row in range(1, canvas.rows + 1):
        further = out + 1.1 * em * row
        if canvas.add_if_free(_figure(side, sheet, middle, further, figure)):
            near = further - 0.55 * em
            canvas.add(Stroke("extension", (_line(side, sheet, (middle, out), (middle, near)),)))
            return


def _figure(side: Side, sheet: Area, along: float, out: float, text: str) -> Label:
    x, y = side.point(sheet, along, out)
    return Label("figure", x, y, text, upright=side.is_level)


def _line(
    side: Side, sheet: Area, start: tuple[float, float], end: tuple[float, float]
) -> tuple[float, float, float, float]:
    return (*side.point(sheet, *start), *side.point(sheet, *end))


def _tick(
    side: Side, sheet: Area, along: float, out: float, half: float
) -> tuple[float, float, float, float]:
    x, y = side.point(sheet, along, out)
    return (x - half, y + half, x + half, y - half)
