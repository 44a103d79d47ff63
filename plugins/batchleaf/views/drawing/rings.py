"""Numbers in rings outside the sheet, at the end where each cut begins.

A run of cuts has one ring with its first and last number, and a bracket over its lines
at the sheet's edge. At the left and right it is read from below, as measures are.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import count
from typing import Final

from batchleaf.views.drawing.callouts import Callout
from batchleaf.views.drawing.canvas import IN_A_CIRCLE, Canvas
from batchleaf.views.drawing.marks import Area
from batchleaf.views.drawing.shapes import Label, Ring, Stroke
from batchleaf.views.drawing.sides import Side
from batchleaf.views.drawing.standing import Standing

_ELBOW: Final = 0.12
"""Distance between a row of rings and the bend of lines that lead to it, in em."""
_BRACKET_END: Final = 0.3
"""How far the ends of a bracket come down to the sheet, in em."""


def draw_callouts(canvas: Canvas, sheet: Area, standing: Sequence[Standing]) -> None:
    """Draw the rings (and letters) of one side, with the lines that lead to them."""
    elbow = min((one.near for one in standing), default=0.0) - _ELBOW * canvas.lettering.em
    for one in standing:
        if one.callout.end > one.callout.start:
            canvas.add(*_bracket(canvas, sheet, one))
        else:
            canvas.add(*_lead(sheet, one, elbow))
    canvas.add_on_top(*(mark for one in standing for mark in _marks(sheet, one)))


def draw_word_outside(canvas: Canvas, sheet: Area, one: Callout, out: float) -> None:
    """Name a piece beyond everything on its side, on a thin line."""
    em = canvas.lettering.em
    for row in count(1):
        far = out + 1.1 * em * row
        x, y = one.side.point(sheet, one.start, far)
        if canvas.add_if_free(Label("kept halo", x, y, one.text, upright=one.side.is_level)):
            to = (one.start, far - 0.55 * em)
            canvas.add(Stroke("extension", (_between(one.side, sheet, (one.start, -one.inside), to),)))
            return


def _lead(sheet: Area, one: Standing, elbow: float) -> Iterable[Stroke]:
    """From the beginning of the cut into its ring: straight out first, then aside."""
    told = one.callout
    to = (one.along, one.out if told.is_cut else one.near)
    reach = "reach" if told.is_cut else "extension"
    if told.inside > 0:
        yield Stroke(reach, (_between(told.side, sheet, (told.start, -told.inside), (told.start, 0)),))
    yield Stroke(
        "cut" if told.is_cut and not told.inside else reach,
        (
            _between(told.side, sheet, (told.start, 0), (told.start, elbow)),
            _between(told.side, sheet, (told.start, elbow), to),
        ),
    )


def _bracket(canvas: Canvas, sheet: Area, one: Standing) -> Iterable[Stroke]:
    """Over all lines of a run; where its cuts begin inside the sheet, dots lead down to the outer ones."""
    told, side, out = one.callout, one.callout.side, one.bracket
    low = out - _BRACKET_END * canvas.lettering.em
    ends = (told.start, told.end)
    if low + told.inside > 0:
        yield Stroke("reach", tuple(_between(side, sheet, (end, -told.inside), (end, low)) for end in ends))
    from_ = min(max(one.along, told.start), told.end)
    yield Stroke(
        "bracket",
        (
            _between(side, sheet, (told.start, out), (told.end, out)),
            *(_between(side, sheet, (end, low), (end, out)) for end in ends),
            _between(side, sheet, (from_, out), (one.along, one.out)),
        ),
    )


def _between(
    side: Side, sheet: Area, start: tuple[float, float], end: tuple[float, float]
) -> tuple[float, float, float, float]:
    return (*side.point(sheet, *start), *side.point(sheet, *end))


def _marks(sheet: Area, one: Standing) -> Iterable[Ring | Label]:
    told = one.callout
    x, y = told.side.point(sheet, one.along, one.out)
    upright = told.side.is_level or len(told.text) <= IN_A_CIRCLE
    if told.is_cut:
        yield Ring("ring", x, y, len(told.text), upright)
        yield Label("no", x, y, told.text, upright)
    else:
        yield Label("letter small halo", x, y, told.text, upright)
