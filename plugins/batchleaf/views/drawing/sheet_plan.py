"""A sheet plan as a draughtsman draws it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from batchleaf.measure.lengths import Size, Unit
from batchleaf.views.drawing.callouts import Callout, from_nearest_side
from batchleaf.views.drawing.canvas import FIGURE_PX, GROWTH, WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.chains import draw_chain
from batchleaf.views.drawing.letters import draw_letters, outside, unwritten
from batchleaf.views.drawing.marks import Area, draw_grain, draw_kept, draw_waste
from batchleaf.views.drawing.rings import draw_callouts, draw_word_outside
from batchleaf.views.drawing.scores import draw_scores
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.drawing.sheet_to_draw import SheetToDraw
from batchleaf.views.drawing.sides import Side
from batchleaf.views.drawing.standing import stand

LARGEST_SCALE: Final = 1.8
"""px to the mm: a small sheet is not blown up beyond this."""
_FEW_ROWS: Final = 2
"""Rows of figures beyond a chain, where the column is narrow for the plan."""
_SMALLER: Final = 12
"""Tries at an ever smaller scale, down to two fifths; then a drawing is as wide as it must be."""
_CHAIN: Final = 0.8
"""How far out a chain stands from the sheet or from its rings, in em."""
_MARGIN: Final = 3.2
"""Room that rings and one chain take on a side, in em."""


def common_scale(sheets: Sequence[Size]) -> float:
    """The px to the mm at which all ``sheets`` of a page fit their column, measures and all."""
    widest = max((float(sheet.width) for sheet in sheets), default=1.0)
    room = WIDEST_PX["large"] - 2 * _MARGIN * FIGURE_PX * GROWTH["large"]
    return min(LARGEST_SCALE, room / widest)


def draw_sheet_plan(
    sheet: SheetToDraw,
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
    unit: Unit,
    scale: float,
) -> Drawing:
    """One sheet with its cuts in order, its parts, what is kept and what is waste.

    ``scale`` (px to the mm) is the page's; a plan with so much beside it that it would not fit
    its column is drawn smaller, and names no part outside whose letter it has inside.
    """
    for canvas in _attempts(sheet.area, scale):
        if _fits(_drawn(canvas, sheet, unit)):
            break
    return canvas.drawing(id, title, description)


def _attempts(sheet: Area, scale: float) -> Iterator[Canvas]:
    """First at the page's scale with all its figures; then with few rows of them, smaller and smaller.

    Those on which the sheet and its chain at the left have no room are passed over, but for the last.
    """
    canvases = [Canvas(Lettering(scale, width_class)) for width_class in ("middle", "large")]
    for _ in range(_SMALLER):
        canvases.append(Canvas(Lettering(scale, "large"), rows=_FEW_ROWS))
        scale *= 0.92
    *tried, last = canvases
    yield from (one for one in tried if _is_room(one.lettering, sheet.width + _CHAIN * one.lettering.em))
    yield last


def _fits(canvas: Canvas) -> bool:
    around = canvas.extent
    return _is_room(canvas.lettering, around.right - around.left)


def _is_room(lettering: Lettering, width: float) -> bool:
    return width * lettering.scale <= WIDEST_PX[lettering.width_class]


def _drawn(canvas: Canvas, sheet: SheetToDraw, unit: Unit) -> Canvas:
    canvas.add(sheet.area.box("sheet"), *(part.area.box("part") for part in sheet.parts))
    unnamed = [rect for rect in sheet.kept if not draw_kept(canvas, rect, unit)]
    draw_waste(canvas, sheet.waste)
    canvas.add(sheet.area.box("outline"), *sheet.cuts)
    draw_scores(canvas, sheet.scored)
    _draw_outside(canvas, sheet, _callouts(canvas, sheet), unit)
    for rect in unnamed:
        callout = from_nearest_side(sheet.sheet, rect, "keep")
        draw_word_outside(canvas, sheet.area, callout, canvas.lettering.em)
    if sheet.fibres:
        draw_grain(canvas, sheet.area, sheet.fibres)
    return canvas


def _callouts(canvas: Canvas, sheet: SheetToDraw) -> list[Callout]:
    """Draws the letters that have room on the sheet; returns what is named beside it."""
    nameless = draw_letters(canvas, sheet.parts)
    busy = {one.side for one in sheet.callouts}
    if canvas.rows == _FEW_ROWS:
        nameless = unwritten(canvas, nameless)
        busy = {Side.LEFT, Side.RIGHT}  # width is what is short
    letters = [outside(canvas, sheet.sheet, group, sheet.standing, busy) for group in nameless]
    return [*sheet.callouts, *letters]


def _draw_outside(canvas: Canvas, sheet: SheetToDraw, callouts: Sequence[Callout], unit: Unit) -> None:
    """Rings before chains, so that a figure finds the room that rings leave."""
    by_side = {
        side: stand(canvas, [one for one in callouts if one.side is side], float(side.length(sheet.sheet)))
        for side in Side
    }
    for side in Side:
        draw_callouts(canvas, sheet.area, by_side[side])
    for side, found in sheet.chains.items():
        rings = max((one.far for one in by_side[side]), default=0.0)
        draw_chain(canvas, sheet.area, side, found, unit, rings + _CHAIN * canvas.lettering.em)
