"""Parts at their true size, to lay on the paper or to mark it by.

A rectangle that is folded once needs no template: its measures say it all. A part with an outline
of its own would need one whether it is folded or not: :func:`has_template` is where that is said,
and what draws a part flat is handed in at one place, :func:`_drawn`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import Origin, Part, Project, Score
from batchleaf.measure.display import show_size
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.blank import Named, draw_blank
from batchleaf.views.drawing.canvas import FIGURE_PX, Lettering
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.notes.on_paper import GAP, HEIGHT, LETTERING, WIDTH
from batchleaf.views.pages import PrintedDrawing, TemplateView
from batchleaf.views.scoring import faces_of, how_to_score
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
    return part.origin is not Origin.READY and len(part.scores) > 1


def template_views(project: Project) -> tuple[TemplateView, ...]:
    """Those that fit on a side, each the way it lies best."""
    found = (_fitted(part, project) for part in project.parts if has_template(part))
    return tuple(view for view in found if view is not None)


def larger_than_a_side(project: Project) -> tuple[str, ...]:
    """``A base is 16 × 5 in flat and larger than a side of this sheet: mark it by its measures.``"""
    unit = project.unit
    return tuple(
        f"{part.letter} {part.name} is {show_size(part.size, unit)}{NBSP}{unit.value} flat, larger than a"
        " side of this sheet: mark it by its measures."
        for part in project.parts
        if has_template(part) and _fitted(part, project) is None
    )


def _fitted(part: Part, project: Project) -> TemplateView | None:
    faces = tuple(faces_of(part, project))
    for way, named in ((part, faces), (turned(part), tuple(_turned_faces(part, faces)))):
        drawn = _drawn(way, named, project)
        if _fits(drawn):
            return _view(part, project, drawn)
    return None


def _fits(drawn: PrintedDrawing) -> bool:
    words = 0.0 if _is_beside(drawn) else _WORDS
    return drawn.width <= WIDTH and drawn.height + words <= HEIGHT - _HEAD


def _is_beside(drawn: PrintedDrawing) -> bool:
    return drawn.width + GAP + _BESIDE <= WIDTH


def _view(part: Part, project: Project, drawn: PrintedDrawing) -> TemplateView:
    size = f"{show_size(part.size, project.unit)}{NBSP}{project.unit.value}"
    return TemplateView(
        title=f"{part.letter} {part.name}",
        sentence=f"{size} flat. {how_to_score(part, project.unit)}",
        printed=drawn,
        beside=_is_beside(drawn),
    )


def _drawn(part: Part, faces: tuple[Named, ...], project: Project) -> PrintedDrawing:
    lettering = Lettering(FIGURE_PX / LETTERING, "narrow")
    size = f"{show_size(part.size, project.unit)}{NBSP}{project.unit.value}"
    drawing: Drawing = draw_blank(part, faces, project.unit, lettering).drawing(
        f"template-{part.letter.lower()}",
        f"Template of {part.letter}, {part.name}, at its true size",
        f"{capitalised(part.name)} {part.letter}, flat, {size}. Its faces: {listed([n for n, _ in faces])}.",
    )
    return PrintedDrawing(drawing, _TRUE, LETTERING)


def turned(part: Part) -> Part:
    """The flat part after a quarter turn to the right, and its scores with it."""
    height = part.size.height
    scores = tuple(
        Score(runs_down=False, at=score.at)
        if score.runs_down
        else Score(runs_down=True, at=height - score.at)
        for score in part.scores
    )
    # A box is scored first along the walls that it tells its height by.
    ordered = tuple(sorted(scores, key=lambda score: score.at))
    return replace(part, size=part.size.turned, scores=ordered)


def _turned_faces(part: Part, faces: tuple[Named, ...]) -> Iterator[Named]:
    height: Fraction = part.size.height
    for name, rect in faces:
        yield name, Rect(height - rect.y - rect.height, rect.x, rect.height, rect.width)
