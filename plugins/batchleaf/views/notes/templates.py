"""Parts at their true size, to lay on the paper or to mark it by.

A rectangle that is folded once, or not at all, needs no template: its measures say it all.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from batchleaf.facts import Origin, Part, Project
from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Unit
from batchleaf.views.drawing.blank import draw_blank
from batchleaf.views.drawing.canvas import FIGURE_PX, Lettering
from batchleaf.views.drawing.shapes import Box, Cutout, Drawing, Label, Path, Polygon, Ring, Shape, Stroke
from batchleaf.views.notes.on_paper import GAP, HEIGHT, LETTERING, WIDTH
from batchleaf.views.pages import PrintedDrawing, TemplateView
from batchleaf.views.scoring import faces_of, how_to_score
from batchleaf.views.shape_in_words import size_and_shape
from batchleaf.views.words import NBSP, capitalised, listed

_TRUE: Final = 1.0
_BESIDE: Final = 36.0
"""The least width for words at the right of a template."""
_HEAD: Final = 30.0
"""What the heading of a side and the rule to check its size take."""
_WORDS: Final = 14.0
"""What the words of a template take where they stand above it."""


def has_template(part: Part) -> bool:
    """Whether a part is more than a rectangle that is folded once."""
    return part.origin is not Origin.READY and (len(part.scores) > 1 or not part.shape.is_rectangle)


def template_views(project: Project) -> tuple[TemplateView, ...]:
    """Those that fit on a side, each the way it lies best."""
    found = (_fitted(part, project) for part in project.parts if has_template(part))
    return tuple(view for view in found if view is not None)


def larger_than_a_side(project: Project) -> tuple[str, ...]:
    """``A base is 16 × 5 in flat, larger than a side of this sheet: mark it by its measures.``"""
    large = (part for part in project.parts if has_template(part) and _fitted(part, project) is None)
    return tuple(_marked_by_measures(part, project.unit) for part in large)


def _marked_by_measures(part: Part, unit: Unit) -> str:
    size = f"{show_size(part.size, unit)}{NBSP}{unit.word}"
    called = f"{part.letter} {part.name}"
    told = f"{called} is {size} flat, larger than a side of this sheet: mark it by its measures."
    return f"{told} {how_to_score(part, unit)}" if part.scores else told


def _fitted(part: Part, project: Project) -> TemplateView | None:
    drawing = _drawn(part, project)
    ways = (PrintedDrawing(way, _TRUE, LETTERING) for way in (drawing, turned(drawing)))
    return next((_view(part, project, way) for way in ways if _fits(way)), None)


def _fits(drawn: PrintedDrawing) -> bool:
    words = 0.0 if _is_beside(drawn) else _WORDS
    return drawn.width <= WIDTH and drawn.height + words <= HEIGHT - _HEAD


def _is_beside(drawn: PrintedDrawing) -> bool:
    return drawn.width + GAP + _BESIDE <= WIDTH


def _view(part: Part, project: Project, drawn: PrintedDrawing) -> TemplateView:
    return TemplateView(
        title=f"{part.letter} {part.name}",
        sentence=_in_words(part, project),
        printed=drawn,
        beside=_is_beside(drawn),
    )


def _in_words(part: Part, project: Project) -> str:
    shown = f"{capitalised(size_and_shape(part, part.size, project.unit))}."
    return f"{shown} {how_to_score(part, project.unit)}" if part.scores else shown


def _drawn(part: Part, project: Project) -> Drawing:
    faces = tuple(faces_of(part, project)) if part.scores else ()
    lettering = Lettering(FIGURE_PX / LETTERING, "narrow")
    shown = size_and_shape(part, part.size, project.unit)
    names = f" Its faces: {listed([name for name, _ in faces])}." if faces else ""
    return draw_blank(part, faces, project.unit, lettering).drawing(
        f"template-{part.letter.lower()}",
        f"Template of {part.letter}, {part.name}, at its true size",
        f"{capitalised(part.name)} {part.letter}, flat: {shown}.{names}",
    )


def turned(drawing: Drawing) -> Drawing:
    """A drawing after a quarter turn to the left: what was upright is read from below, and the other way."""
    right = drawing.x + drawing.width
    return replace(
        drawing,
        x=drawing.y,
        y=-right,
        width=drawing.height,
        height=drawing.width,
        shapes=tuple(_turned(shape) for shape in drawing.shapes),
    )


def _turned(shape: Shape) -> Shape:
    match shape:
        case Box():
            return replace(shape, x=shape.y, y=-shape.x - shape.width, width=shape.height, height=shape.width)
        case Polygon():
            return replace(shape, corners=tuple((y, -x) for x, y in shape.corners))
        case Stroke():
            return replace(shape, lines=tuple((y1, -x1, y2, -x2) for x1, y1, x2, y2 in shape.lines))
        case Cutout():
            return replace(shape, paths=tuple(_turned_path(path) for path in shape.paths))
        case Ring() | Label():
            return replace(shape, x=shape.y, y=-shape.x, upright=not shape.upright)


def _turned_path(path: Path) -> Path:
    start = (path.start[1], -path.start[0])
    return replace(path, start=start, pieces=tuple(tuple((y, -x) for x, y in one) for one in path.pieces))
