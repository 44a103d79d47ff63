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
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.shapes import Label, Stroke
from batchleaf.views.drawing.sides import Side

_AIR: Final = 0.5
"""Line left on both sides of a figure in its break, in em."""
_TICK: Final = 0.2
"""Half the height of a tick, in em."""


@dataclass(frozen=True, slots=True)
class Measure:
    """``times`` equal lengths in a row, from ``start`` along a side."""

    start: Fraction
    length: Fraction
    times: int

    @property
    def whole(self) -> Fraction:
        """All of them together."""
        return self.length * self.times

    def figure(self, unit: Unit) -> str:
        """``210``, or ``5 × 12`` for five in a row."""
        one = show_length(self.length, unit)
        return one if self.times == 1 else f"{self.times} × {one}"


def draw_chain(
    canvas: Canvas, sheet: Rect, side: Side, stops: Sequence[Fraction], unit: Unit, out: float
) -> None:
    """Draw the chain with these ``stops`` so far ``out`` from ``side`` that rings fit before it."""
    em = canvas.lettering.em
    at = [float(stop) for stop in stops]
    measures = list(_measures(canvas, stops, unit))
    ends = [*(float(measure.start) for measure in measures), at[-1]]
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
        _write(canvas, sheet, side, measure, unit, out, stops[-1])


def _measures(canvas: Canvas, stops: Sequence[Fraction], unit: Unit) -> Iterator[Measure]:
    """One by one where figures fit, in runs of equals where they do not."""
    lengths = [(start, end - start) for start, end in pairwise(stops)]
    for length, run in groupby(lengths, key=lambda one: one[1]):
        starts = [start for start, _ in run]
        if _fits(canvas, Measure(starts[0], length, 1), unit):
            yield from (Measure(start, length, 1) for start in starts)
        else:
            yield Measure(starts[0], length, len(starts))


def _fits(canvas: Canvas, measure: Measure, unit: Unit) -> bool:
    needed = canvas.lettering.width(measure.figure(unit)) + _AIR * canvas.lettering.em
    return float(measure.whole) >= needed


def _write(
    canvas: Canvas, sheet: Rect, side: Side, measure: Measure, unit: Unit, out: float, end: Fraction
) -> None:
    figure = measure.figure(unit)
    middle = float(measure.start + measure.whole / 2)
    in_break = _figure(side, sheet, middle, out, figure)
    if _fits(canvas, measure, unit) and canvas.add_if_free(in_break):
        return
    past = (canvas.lettering.width(figure) / 2) + 0.45 * canvas.lettering.em
    if measure.start + measure.whole == end and canvas.add_if_free(
        _figure(side, sheet, float(end) + past, out, figure)
    ):
        return
    if measure.start == 0 and canvas.add_if_free(_figure(side, sheet, -past, out, figure)):
        return
    _write_further_out(canvas, sheet, side, middle, out, figure)


def _write_further_out(
    canvas: Canvas, sheet: Rect, side: Side, middle: float, out: float, figure: str
) -> None:
    em = canvas.lettering.em
    for row in range(1, canvas.rows + 1):
        further = out + 1.1 * em * row
        if canvas.add_if_free(_figure(side, sheet, middle, further, figure)):
            near = further - 0.55 * em
            canvas.add(Stroke("extension", (_line(side, sheet, (middle, out), (middle, near)),)))
            return


def _figure(side: Side, sheet: Rect, along: float, out: float, text: str) -> Label:
    x, y = side.point(sheet, along, out)
    return Label("figure", x, y, text, upright=side.is_level)


def _line(
    side: Side, sheet: Rect, start: tuple[float, float], end: tuple[float, float]
) -> tuple[float, float, float, float]:
    return (*side.point(sheet, *start), *side.point(sheet, *end))


def _tick(
    side: Side, sheet: Rect, along: float, out: float, half: float
) -> tuple[float, float, float, float]:
    x, y = side.point(sheet, along, out)
    return (x - half, y + half, x + half, y - half)
