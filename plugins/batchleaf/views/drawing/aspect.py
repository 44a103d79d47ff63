"""A make as it is seen from one side, in its measures, with the letters of its parts beside it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.aspects import Aspect, Crease
from batchleaf.core.geometry.seen import Seen
from batchleaf.measure.lengths import Unit
from batchleaf.measure.outlines import Outline
from batchleaf.views.drawing.canvas import Canvas, Lettering
from batchleaf.views.drawing.chains import draw_chain
from batchleaf.views.drawing.cutouts import edges_of, lines_within
from batchleaf.views.drawing.leaders import draw_leaders
from batchleaf.views.drawing.marks import Area
from batchleaf.views.drawing.paper import Line
from batchleaf.views.drawing.room import Room, draw_room
from batchleaf.views.drawing.shapes import Stroke
from batchleaf.views.drawing.sides import Side
from batchleaf.views.drawing.surfaces import PaperOf, draw_paper

_CHAIN: Final = 0.8
"""How far out a chain of measures stands, in em."""
_PAST: Final = 0.45
"""How far a fold at an edge runs past it, in em."""
_GLINTS: Final = ((1.6, 0.0), (2.0, 0.5), (1.7, 1.1))
"""Where they start and end from the corner, in em."""
ZERO: Final = Fraction(0)


@dataclass(frozen=True, slots=True)
class Shown:
    """One aspect with all that is seen of it.

    ``measured``: its size stands on it. ``behind``: what is seen through its holes alone.
    ``rooms`` stay bare.
    """

    aspect: Aspect
    seen: tuple[Seen, ...]
    measured: bool
    rooms: tuple[Room, ...] = ()
    behind: tuple[Seen, ...] = ()


def draw_aspect(shown: Shown, paper_of: PaperOf, unit: Unit, lettering: Lettering) -> Canvas:
    """Its paper, edges and folds; its finished size; a letter for each part that is seen."""
    canvas, aspect = Canvas(lettering), shown.aspect
    first_part = next((i for i, one in enumerate(shown.seen) if one.index is not None), len(shown.seen))
    nearest = [one for one in shown.seen if one.index is None][-1]
    round_ = [one for one in shown.seen if one.goes_round]
    draw_paper(canvas, (*shown.behind, *shown.seen[:first_part]), paper_of)
    draw_folds(canvas, aspect.creases, _PAST * lettering.em, paper_of(nearest).edge)
    draw_paper(canvas, [one for one in shown.seen[first_part:] if not one.goes_round], paper_of)
    sheets = [one for one in shown.seen if one.index is None and one.rect in aspect.nearest.sheets]
    draw_edges(canvas, aspect, sheets[-len(aspect.nearest.sheets) :])
    if paper_of(nearest).clear:
        draw_glints(canvas, aspect, nearest.outline)
    for room in shown.rooms:
        under = [one for one in shown.seen if one.rect.holds(room.rect)] or [nearest]
        draw_room(canvas, room, paper_of(under[-1]).shade)
    draw_paper(canvas, round_, paper_of)
    if shown.measured:
        _draw_measures(canvas, aspect, unit)
    sides = (Side.RIGHT,) if shown.measured else (Side.LEFT, Side.RIGHT)
    draw_leaders(canvas, shown.seen, aspect.size, sides)
    return canvas


def draw_edges(canvas: Canvas, aspect: Aspect, sheets: Sequence[Seen]) -> None:
    """The edges of each sheet, but for those where it is folded."""
    folded = [_line(crease) for crease in aspect.creases if crease.at_edge]
    for sheet in sheets:
        if sheet.outline is not None:
            canvas.add(*edges_of(sheet.outline, "outline", folded))
            continue
        x, y, right, bottom = map(float, (sheet.rect.x, sheet.rect.y, sheet.rect.right, sheet.rect.bottom))
        edges = ((x, y, right, y), (right, y, right, bottom), (x, bottom, right, bottom), (x, y, x, bottom))
        canvas.add(Stroke("outline", tuple(edge for edge in edges if edge not in folded)))


def draw_glints(canvas: Canvas, aspect: Aspect, outline: Outline | None) -> None:
    """Short slanting lines in the upper right corner, as on glass: it is not told by colour alone."""
    em = canvas.lettering.em
    for sheet in aspect.nearest.sheets:
        right, top = float(sheet.right) - 0.5 * em, float(sheet.y) + 0.5 * em
        lines = ((right - a * em, top + b * em, right - b * em, top + a * em) for a, b in _GLINTS)
        seen = tuple(lines_within(lines, outline))
        if seen:
            canvas.add(Stroke("glint", seen))


def draw_folds(canvas: Canvas, creases: Sequence[Crease], past: float, edge: str) -> None:
    """Dash-dot lines on the paper, whose ``edge`` says how dark it is; they run ``past`` its edges."""
    for role, at_edge in ((f"fold{edge}", False), ("fold", True)):
        lines = tuple(_longer(one, past if at_edge else 0.0) for one in creases if one.at_edge is at_edge)
        if lines:
            canvas.add(Stroke(role, lines))
    ends = tuple(end for one in creases if not one.at_edge for end in _beyond(one, past))
    if ends:
        canvas.add(Stroke("fold", ends))


def _line(crease: Crease) -> Line:
    return float(crease.x1), float(crease.y1), float(crease.x2), float(crease.y2)


def _longer(crease: Crease, by: float) -> Line:
    x1, y1, x2, y2 = _line(crease)
    return (x1, y1 - by, x2, y2 + by) if x1 == x2 else (x1 - by, y1, x2 + by, y2)


def _beyond(crease: Crease, by: float) -> tuple[Line, Line]:
    """The two ends that stand out over the paper."""
    (x1, y1, x2, y2), (a, b, c, d) = _line(crease), _longer(crease, by)
    return (a, b, x1, y1), (x2, y2, c, d)


def _draw_measures(canvas: Canvas, aspect: Aspect, unit: Unit) -> None:
    """Its width above it and its height at the left."""
    size = aspect.size
    whole = Area(0.0, 0.0, float(size.width), float(size.height))
    out = _CHAIN * canvas.lettering.em + (_PAST * canvas.lettering.em if aspect.creases else 0.0)
    draw_chain(canvas, whole, Side.TOP, (ZERO, size.width), unit, out)
    draw_chain(canvas, whole, Side.LEFT, (ZERO, size.height), unit, out)
