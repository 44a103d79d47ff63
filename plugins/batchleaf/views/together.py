"""How one make is put together, as the page of its batch shows it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Final

from batchleaf.core.figures import BatchFigures
from batchleaf.core.geometry.aspects import Aspect, AspectKind
from batchleaf.core.geometry.aspects_of_folds import aspects_of
from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.seen import seen_in, seen_through_holes
from batchleaf.facts import Fold, Project, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.views.aspect_in_words import aspect_in_words, caption_of, has_parts, layers_in_words
from batchleaf.views.drawing.apart import Layer, draw_apart, extent_of_base
from batchleaf.views.drawing.aspect import Shown, draw_aspect
from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.drawing.surfaces import blank, papers_of
from batchleaf.views.first_make import as_first_made
from batchleaf.views.layers_apart import stacks_of
from batchleaf.views.lying_in_words import where_it_lies
from batchleaf.views.pages import FigureView, LyingRow, TogetherView
from batchleaf.views.rooms import rooms_in, rooms_in_words
from batchleaf.views.words import uncapitalised

Supplies = Mapping[str, Supply]
LARGEST_SCALE: Final = 2.2
"""px to the mm: a small tag is not blown up beyond this."""
_SMALLER: Final = 0.94
_HIGHEST_PX: Final = 420.0
_ROW_PX: Final = 850.0
"""Two drawings side by side are no wider together, where that leaves them large enough."""
_LARGE_ENOUGH: Final = 1.2
"""px to the mm."""
_FOR_NAMES: Final = 0.8
"""How much smaller layers may be drawn so that their names have room."""
_LONGEST_NAME: Final = 20
"""In characters; longer ones stand in the list alone."""
_OPENED: Final = (Fold.SIDE, Fold.TOP, Fold.GATE)
"""Cards that are opened, and whose inside is shown though nothing lies there."""


def first_together(batch: BatchFigures, supplies: Supplies) -> TogetherView | None:
    """As :func:`together_view`, of the first make as it was collated."""
    project = as_first_made(batch)
    view = together_view(project, supplies)
    if view is None or project == batch.project:
        return view
    return replace(view, note=f"Drawn with the papers of the first {project.thing}.")


def together_view(project: Project, supplies: Supplies) -> TogetherView | None:
    """Drawings and places of one make; ``None`` where no part lies on a base."""
    made = put_together(project)
    if made is None or not made.lying:
        return None
    shown = [
        replace(one, rooms=rooms_in(one.aspect, made, supplies, project.unit))
        for one in shown_aspects(made, supplies)
    ]
    captions = [caption_of(one.aspect, made) for one in shown]
    drawings = [
        canvas.drawing(
            f"together-{number}",
            f"One {project.thing}: {uncapitalised(caption)}",
            aspect_in_words(one, made, project, supplies),
        )
        for number, (canvas, caption, one) in enumerate(
            zip(_at_one_scale(shown, supplies, project.unit), captions, shown, strict=True), 1
        )
    ]
    figures = tuple(FigureView(drawing, caption) for drawing, caption in zip(drawings, captions, strict=True))
    return TogetherView(
        figures=figures,
        layers=tuple(_apart(made, project, supplies)),
        rows=tuple(_rows(made, project.unit)),
        rooms=rooms_in_words(made, supplies, project.unit),
    )


def front_view(batch: BatchFigures, supplies: Supplies) -> Drawing | None:
    """What is seen first of the first make, alone; ``None`` where nothing is known of it."""
    project = as_first_made(batch)
    made = put_together(project)
    if made is None:
        return None
    shown = front_of(made, supplies)
    caption = uncapitalised(caption_of(shown.aspect, made))
    canvas = _at_one_scale([shown], supplies, project.unit)[0]
    return canvas.drawing(
        "front", f"One {project.thing}: {caption}", aspect_in_words(shown, made, project, supplies)
    )


def _apart(made: MadeUp, project: Project, supplies: Supplies) -> Iterator[FigureView]:
    for number, stack in enumerate(stacks_of(made), 1):
        where = f", {stack.face}" if stack.face else ""
        drawing = _fitted_apart(stack.layers, supplies).drawing(
            f"apart-{number}",
            f"One {project.thing}: layers apart{where}",
            layers_in_words(stack.layers, supplies),
        )
        yield FigureView(drawing, f"Layers apart{where}, from the base up")


def _fitted_apart(layers: Sequence[Layer], supplies: Supplies) -> Canvas:
    """As large as its column lets it be; names stand in it where it does not shrink much for them."""
    nameless = [replace(layer, name="") for layer in layers]
    bare = _largest_apart(nameless)
    if all(len(layer.name) <= _LONGEST_NAME for layer in layers):
        named = _largest_apart(layers)
        if named.scale >= _FOR_NAMES * bare.scale:
            return draw_apart(layers, papers_of(supplies), named)
    return draw_apart(nameless, papers_of(supplies), bare)


def _largest_apart(layers: Sequence[Layer]) -> Lettering:
    width, height = extent_of_base(layers)
    for scale in _scales(width, height, WIDEST_PX["middle"]):
        for width_class in _with_room(width * scale, "narrow", "middle"):
            canvas = draw_apart(layers, blank, Lettering(scale, width_class))
            if _width(canvas) <= WIDEST_PX[width_class] and _height(canvas) <= _HIGHEST_PX:
                return canvas.lettering
    raise ValueError("no scale is small enough")


def _scales(width: float, height: float, widest: float) -> Iterator[float]:
    """Scales in px to the mm: from the largest at which so many mm fit, less and less."""
    scale = min(LARGEST_SCALE, widest / width, _HIGHEST_PX / height)
    while True:
        yield scale
        scale *= _SMALLER


def _with_room(width: float, *width_classes: str) -> Iterator[str]:
    """Those that hold so many px, whatever stands beside them."""
    return (one for one in width_classes if width <= WIDEST_PX[one])


def shown_aspects(made: MadeUp, supplies: Supplies) -> list[Shown]:
    """What is seen first, the inside of what is opened, and every other side that has parts."""
    return [_shown(aspect, made, supplies) for aspect in aspects_of(made) if _is_shown(aspect, made)]


def front_of(made: MadeUp, supplies: Supplies) -> Shown:
    """What is seen first of a make."""
    return _shown(aspects_of(made)[0], made, supplies)


def _shown(aspect: Aspect, made: MadeUp, supplies: Supplies) -> Shown:
    clear = {base.letter for base in made.bases if any(supplies[slug].see_through for slug in base.papers)}
    measured = aspect.kind in (AspectKind.FRONT, AspectKind.WALL)
    behind = () if clear else seen_through_holes(aspect, made)
    return Shown(aspect, seen_in(aspect, made, clear), measured, behind=behind)


def _is_shown(aspect: Aspect, made: MadeUp) -> bool:
    if aspect.kind is AspectKind.FRONT:
        return True
    opened = aspect.kind is AspectKind.INSIDE and made.bases[0].fold in _OPENED
    return opened or has_parts(aspect, made)


def _at_one_scale(shown: Sequence[Shown], supplies: Supplies, unit: Unit) -> list[Canvas]:
    """All of them as large as one scale lets them be in their column."""
    sizes = [one.aspect.size for one in shown]
    width, height = float(max(size.width for size in sizes)), float(max(size.height for size in sizes))
    for scale in _scales(width, height, WIDEST_PX["large"]):
        tried = [_fitted(one, unit, scale) for one in shown]
        found = [canvas for canvas in tried if canvas is not None]
        if len(found) == len(shown) and _fit_together(found):
            papers = papers_of(supplies)
            return [
                draw_aspect(one, papers, unit, canvas.lettering)
                for one, canvas in zip(shown, found, strict=True)
            ]
    raise ValueError("no scale is small enough")


def _fitted(shown: Shown, unit: Unit, scale: float) -> Canvas | None:
    for width_class in _with_room(float(shown.aspect.size.width) * scale, "narrow", "middle", "large"):
        canvas = draw_aspect(shown, blank, unit, Lettering(scale, width_class))
        if _width(canvas) <= WIDEST_PX[width_class]:
            return canvas
    return None


def _fit_together(canvases: Sequence[Canvas]) -> bool:
    scale = canvases[0].lettering.scale
    if any(_height(one) > _HIGHEST_PX for one in canvases):
        return False
    return scale < _LARGE_ENOUGH or sum(map(_width, canvases[:2])) <= _ROW_PX


def _width(canvas: Canvas) -> float:
    return (canvas.extent.right - canvas.extent.left) * canvas.lettering.scale


def _height(canvas: Canvas) -> float:
    return (canvas.extent.bottom - canvas.extent.top) * canvas.lettering.scale


def _rows(made: MadeUp, unit: Unit) -> Iterator[LyingRow]:
    """One for each part, the lowest first."""
    for letter in dict.fromkeys(made.lying[index].part.letter for index in made.order):
        copies = [one for one in made.lying if one.part.letter == letter]
        yield LyingRow(letter, copies[0].part.name, where_it_lies(made, copies, unit))
