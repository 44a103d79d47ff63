"""Numbers in rings outside the sheet, at the end where each cut begins.

Where cuts lie closer than their rings are wide, the rings are pushed apart as little
as possible (least squares under a smallest distance) and a line leads from the cut
to its ring; where one row is not enough, they stand in two or more.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import count
from typing import Final

from batchleaf.core.cutting.plan import Axis, Rect
from batchleaf.core.cutting.steps import CutStep
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.shapes import Label, Ring, Stroke
from batchleaf.views.drawing.sides import Side

_BEFORE: Final = 0.3
"""Distance between the sheet and its nearest rings, in em."""
_BETWEEN: Final = 0.08
"""Smallest distance between two rings, in em."""
_MOST_IN_A_STACK: Final = 3
"""Cuts on one line that all show their number; of more, the first and the last do."""
_ALWAYS_NUMBERED: Final = 6
"""So few lines of cuts are all numbered, in a further row where letters take the first ones."""
_LONGEST_IN_RING: Final = 2
"""Longer numbers stand without a ring."""
_INSET: Final = 0.5
"""How far rings keep from a corner, so that those of two sides stay apart, in em."""


@dataclass(frozen=True, slots=True)
class Callout:
    """Something named outside the sheet: cuts on one line by number, a small part by its letter.

    ``along`` is its place on ``side``, ``inside`` how deep in the sheet it begins.
    ``texts`` are the numbers of the cuts on the line; of many, the first and the last.
    """

    side: Side
    along: float
    inside: float
    texts: tuple[str, ...]
    is_cut: bool


def spread(wanted: Sequence[float], distance: float, low: float, high: float) -> tuple[float, ...]:
    """Places nearest to ``wanted`` (sorted) that are ``distance`` apart, between ``low`` and ``high``.

    Isotonic regression by pooling neighbours (Ayer et al. 1955, Annals of Mathematical
    Statistics 26, 641) on the places less the room before them; then cut to the bounds,
    which keeps it the nearest solution.
    """
    pools: list[tuple[float, int]] = []
    for i, place in enumerate(wanted):
        mean, size = place - i * distance, 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean, size = (mean * size + before * many) / (size + many), size + many
        pools.append((mean, size))
    most = max(low, high - (len(wanted) - 1) * distance)
    free = [min(max(mean, low), most) for mean, size in pools for _ in range(size)]
    return tuple(place + i * distance for i, place in enumerate(free))


def callouts_of_cuts(cuts: Iterable[CutStep], sheet: Rect, standing: Sequence[Rect]) -> list[Callout]:
    """One for all cuts on a line: from the side that the first of them reaches most easily."""
    on_line: dict[tuple[Axis, Fraction], list[CutStep]] = {}
    for cut in cuts:
        start = cut.piece.x if cut.axis is Axis.X else cut.piece.y
        on_line.setdefault((cut.axis, start + cut.setting), []).append(cut)
    return [_callout(along, line, sheet, standing) for (_, along), line in on_line.items()]


def _callout(along: Fraction, line: Sequence[CutStep], sheet: Rect, standing: Sequence[Rect]) -> Callout:
    sides = (Side.TOP, Side.BOTTOM) if line[0].axis is Axis.X else (Side.LEFT, Side.RIGHT)
    blocking = [rect for rect in standing if sides[0].span(rect)[0] < along < sides[0].span(rect)[1]]

    def hindrance(side: Side) -> tuple[bool, Fraction]:
        begins = min(side.depth(sheet, cut.piece)[0] for cut in line)
        return any(side.depth(sheet, rect)[1] <= begins for rect in blocking), begins

    side = min(sides, key=hindrance)
    numbers = sorted(cut.n for cut in line)
    shown = numbers if len(numbers) <= _MOST_IN_A_STACK else [numbers[0], numbers[-1]]
    return Callout(side, float(along), float(hindrance(side)[1]), tuple(map(str, shown)), is_cut=True)


def fitting(canvas: Canvas, callouts: Sequence[Callout], length: float) -> list[Callout]:
    """The callouts of one side that its rows can take, in order along it.

    Letters go first; of too many cuts, some evenly spread ones are numbered. Where rows
    are few, a line of cuts shows its first and last number, or the first alone.
    """
    room = length - 2 * _INSET * canvas.lettering.em
    in_a_row = 1 + int(max(0.0, room) // _pitch(canvas))
    ordered = sorted(callouts, key=lambda one: (one.along, one.inside, one.texts))
    letters = [one for one in ordered if not one.is_cut]
    most = max(_ALWAYS_NUMBERED, in_a_row * canvas.rows - len(letters))
    cuts = _evenly([one for one in ordered if one.is_cut], most)
    stack = max(1, canvas.rows // math.ceil((len(letters) + len(cuts)) / in_a_row)) if ordered else 1
    return [
        replace(one, texts=_shortened(one.texts, stack)) for one in ordered if not one.is_cut or one in cuts
    ]


def _evenly(callouts: list[Callout], most: int) -> list[Callout]:
    if len(callouts) <= most:
        return callouts
    return [callouts[i * len(callouts) // most] for i in range(most)]


def _shortened(texts: tuple[str, ...], most: int) -> tuple[str, ...]:
    if len(texts) <= most:
        return texts
    return (texts[0], texts[-1]) if most > 1 else texts[:1]


def rows_needed(canvas: Canvas, callouts: Sequence[Callout], length: float) -> int:
    """How many rows of rings these callouts of one side take."""
    room = max(0.0, length - 2 * _INSET * canvas.lettering.em)
    return max(1, math.ceil(len(callouts) / (1 + int(room // _pitch(canvas)))))


def room_for(canvas: Canvas, callouts: Sequence[Callout], length: float) -> float:
    """How far out from the sheet the rings of one side reach, in mm."""
    if not callouts:
        return 0.0
    rows = rows_needed(canvas, callouts, length) * _stack(callouts)
    return _BEFORE * canvas.lettering.em + rows * _pitch(canvas)


def _stack(callouts: Sequence[Callout]) -> int:
    """Rings that one callout of the side stacks at most."""
    return max(len(one.texts) for one in callouts)


def draw_callouts(canvas: Canvas, sheet: Rect, callouts: Sequence[Callout]) -> None:
    """Draw the rings (and letters) that fit one side, with the lines that lead to them."""
    if not callouts:
        return
    side = callouts[0].side
    length = float(side.length(sheet))
    rows, pitch = rows_needed(canvas, callouts, length), _pitch(canvas)
    inset = min(_INSET * canvas.lettering.em, length / 2)
    places = spread([one.along for one in callouts], pitch / rows, inset, length - inset)
    marks: list[Ring | Label] = []
    for i, (one, place) in enumerate(zip(callouts, places, strict=True)):
        first = _BEFORE * canvas.lettering.em + canvas.lettering.ring + (i % rows) * _stack(callouts) * pitch
        canvas.add(*_lead(canvas, sheet, one, place, first))
        marks += _marks(canvas, sheet, one, place, first)
    canvas.add(*marks)


def draw_word_outside(canvas: Canvas, sheet: Rect, one: Callout, out: float) -> None:
    """Name a piece beyond everything on its side, on a thin line."""
    em = canvas.lettering.em
    for row in count(1):
        far = out + 1.1 * em * row
        x, y = one.side.point(sheet, one.along, far)
        if canvas.add_if_free(Label("kept halo", x, y, one.texts[0], upright=one.side.is_level)):
            to = (one.along, far - 0.55 * em)
            canvas.add(Stroke("extension", (_between(one.side, sheet, (one.along, -one.inside), to),)))
            return


def _pitch(canvas: Canvas) -> float:
    return 2 * canvas.lettering.ring + _BETWEEN * canvas.lettering.em


def _lead(canvas: Canvas, sheet: Rect, one: Callout, place: float, out: float) -> Iterable[Stroke]:
    """From the beginning of the cut to its ring: straight out first, then aside."""
    reach = "reach" if one.is_cut else "extension"
    elbow = _BEFORE * canvas.lettering.em * 0.6
    last = out + (len(one.texts) - 1) * _pitch(canvas)
    if last > out:
        yield Stroke(reach, (_between(one.side, sheet, (place, out), (place, last)),))
    if one.inside > 0:
        yield Stroke(reach, (_between(one.side, sheet, (one.along, -one.inside), (one.along, 0)),))
    yield Stroke(
        "cut" if one.is_cut and not one.inside else reach,
        (
            _between(one.side, sheet, (one.along, 0), (one.along, elbow)),
            _between(one.side, sheet, (one.along, elbow), (place, out)),
        ),
    )


def _between(
    side: Side, sheet: Rect, start: tuple[float, float], end: tuple[float, float]
) -> tuple[float, float, float, float]:
    return (*side.point(sheet, *start), *side.point(sheet, *end))


def _marks(canvas: Canvas, sheet: Rect, one: Callout, place: float, first: float) -> Iterable[Ring | Label]:
    """A ring for each number, the first nearest to the sheet."""
    for row, text in enumerate(one.texts):
        x, y = one.side.point(sheet, place, first + row * _pitch(canvas))
        if not one.is_cut:
            yield Label("letter small halo", x, y, text)
        elif len(text) > _LONGEST_IN_RING:
            yield Label("no halo", x, y, text)
        else:
            yield Ring("ring", x, y)
            yield Label("no", x, y, text)
