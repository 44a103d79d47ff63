"""A sheet plan as a draughtsman draws it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.facts import Grain
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.callouts import Callout, callouts_of_cuts, from_nearest_side
from batchleaf.views.drawing.canvas import FIGURE_PX, GROWTH, WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.chains import draw_chain
from batchleaf.views.drawing.letters import draw_letters, outside, unwritten
from batchleaf.views.drawing.marks import Area, draw_grain, draw_kept, draw_waste
from batchleaf.views.drawing.rings import draw_callouts, draw_word_outside
from batchleaf.views.drawing.scores import Scores, draw_scores, panels_of
from batchleaf.views.drawing.shapes import Drawing, Stroke
from batchleaf.views.drawing.sides import Side, stops, waste_of
from batchleaf.views.drawing.standing import stand

LARGEST_SCALE: Final = 1.8
"""px to the mm: a small sheet is not blown up beyond this."""
_FEW_ROWS: Final = 2
"""Rows of figures beyond a chain, where the column is narrow for the plan."""
_SMALLER: Final = 12
"""Tries at an ever smaller scale, down to two fifths; then a drawing is as wide as it must be."""
_MARGIN: Final = 3.2
"""Room that rings and one chain take on a side, in em."""


def common_scale(sheets: Sequence[Size]) -> float:
    """The px to the mm at which all ``sheets`` of a page fit their column, measures and all."""
    widest = max((float(sheet.width) for sheet in sheets), default=1.0)
    room = WIDEST_PX["large"] - 2 * _MARGIN * FIGURE_PX * GROWTH["large"]
    return min(LARGEST_SCALE, room / widest)


def draw_sheet_plan(
    laid_out: LaidOut,
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
    letters: Mapping[str, str],
    kept: tuple[Rect, ...],
    scores: Scores,
    grain: Grain,
    unit: Unit,
    scale: float,
) -> Drawing:
    """One sheet with its cuts in order, its parts, what is kept and what is waste.

    ``letters`` and ``scores`` go by part id. ``scale`` (px to the mm) is the page's;
    a plan with so much beside it that it would not fit its column is drawn smaller, and
    names no part outside whose letter it has inside.
    """
    subject = _Subject(laid_out, letters, kept, scores, grain, unit, _chains(laid_out, kept))
    for canvas in _attempts(scale):
        if _fits(_drawn(canvas, subject)):
            break
    return canvas.drawing(id, title, description)


@dataclass(frozen=True, slots=True)
class _Subject:
    """What is drawn, whatever the scale."""

    laid_out: LaidOut
    letters: Mapping[str, str]
    kept: tuple[Rect, ...]
    scores: Scores
    grain: Grain
    unit: Unit
    chains: Mapping[Side, tuple[Fraction, ...]]


def _attempts(scale: float) -> Iterator[Canvas]:
    """First at the page's scale with all its figures; then with few rows of them, smaller and smaller."""
    yield Canvas(Lettering(scale, "middle"))
    yield Canvas(Lettering(scale, "large"))
    for _ in range(_SMALLER):
        yield Canvas(Lettering(scale, "large"), rows=_FEW_ROWS)
        scale *= 0.92


def _fits(canvas: Canvas) -> bool:
    around, lettering = canvas.extent, canvas.lettering
    return (around.right - around.left) * lettering.scale <= WIDEST_PX[lettering.width_class]


def _drawn(canvas: Canvas, subject: _Subject) -> Canvas:
    laid_out, letters, kept = subject.laid_out, subject.letters, subject.kept
    sheet, waste = laid_out.sheet, waste_of(laid_out, kept)
    canvas.add(Area.of(sheet).box("sheet"), *(Area.of(part.rect).box("part") for part in laid_out.parts))
    unnamed = [rect for rect in kept if not draw_kept(canvas, rect, subject.unit)]
    draw_waste(canvas, waste)
    canvas.add(Area.of(sheet).box("outline"), *map(_cut_line, laid_out.cuts))
    draw_scores(canvas, laid_out.parts, subject.scores)
    nameless = draw_letters(canvas, laid_out.parts, letters, subject.scores)
    standing = [part.rect for part in laid_out.parts] + list(kept)
    callouts = callouts_of_cuts(laid_out.cuts, sheet, standing)
    busy = {one.side for one in callouts}
    if canvas.rows == _FEW_ROWS:
        nameless = unwritten(canvas, nameless, letters)
        busy = {Side.LEFT, Side.RIGHT}  # width is what is short
    callouts += [
        outside(canvas, sheet, group, letters[group[0].part], subject.scores, standing, busy)
        for group in nameless
    ]
    _draw_outside(canvas, subject, callouts)
    for rect in unnamed:
        draw_word_outside(canvas, sheet, from_nearest_side(sheet, rect, "keep"), canvas.lettering.em)
    panels = [panel for part in laid_out.parts for panel in panels_of(part, subject.scores)]
    draw_grain(canvas, sheet, panels, waste, subject.grain)
    return canvas


def _draw_outside(canvas: Canvas, subject: _Subject, callouts: Sequence[Callout]) -> None:
    """Rings before chains, so that a figure finds the room that rings leave."""
    sheet = subject.laid_out.sheet
    length = {side: float(side.length(sheet)) for side in Side}
    by_side = {
        side: stand(canvas, [one for one in callouts if one.side is side], length[side]) for side in Side
    }
    for side in Side:
        draw_callouts(canvas, sheet, by_side[side])
    for side, found in subject.chains.items():
        rings = max((one.far for one in by_side[side]), default=0.0)
        draw_chain(canvas, sheet, side, found, subject.unit, rings + 0.8 * canvas.lettering.em)


def _chains(laid_out: LaidOut, kept: tuple[Rect, ...]) -> dict[Side, tuple[Fraction, ...]]:
    """Stops by side; right and bottom only where they say what left and top do not."""
    found = {side: stops(side, laid_out, kept) for side in Side}
    repeats = [side for side in (Side.RIGHT, Side.BOTTOM) if set(found[side]) <= set(found[side.opposite])]
    return {side: at for side, at in found.items() if side not in repeats}


def _cut_line(cut: CutStep) -> Stroke:
    piece = Area.of(cut.piece)
    if cut.axis is Axis.X:
        x = piece.x + float(cut.setting)
        return Stroke("cut", ((x, piece.y, x, piece.y + piece.height),))
    y = piece.y + float(cut.setting)
    return Stroke("cut", ((piece.x, y, piece.x + piece.width, y),))
