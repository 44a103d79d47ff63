"""The layers of a make apart, drawn for the room that the printed sheet has for them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from batchleaf.core.geometry.lying import put_together
from batchleaf.facts import Project
from batchleaf.views.aspect_in_words import layers_in_words
from batchleaf.views.drawing.apart import Layer, draw_apart
from batchleaf.views.drawing.canvas import FIGURE_PX, Lettering
from batchleaf.views.drawing.surfaces import blank, papers_of
from batchleaf.views.layers_apart import stacks_of
from batchleaf.views.notes.on_paper import LETTERING
from batchleaf.views.pages import PrintedDrawing, PrintedFigure
from batchleaf.views.together import Supplies

_LARGEST: Final = 0.5
_SMALLER: Final = 0.92
_TRIES: Final = 30
"""Down to a twelfth of the largest; what is too large even then stands out of its room."""


@dataclass(frozen=True, slots=True)
class LayersRoom:
    """So much room each stack of layers has, in mm of paper; ``named``: with their names."""

    widest: float
    highest: float
    named: bool


WIDE: Final = LayersRoom(82.0, 72.0, named=True)
CLOSE: Final = LayersRoom(60.0, 56.0, named=False)


def layers_apart(project: Project, supplies: Supplies, room: LayersRoom) -> tuple[PrintedFigure, ...]:
    """One drawing for each side of the make that has parts."""
    return tuple(_figures(project, supplies, room))


def _figures(project: Project, supplies: Supplies, room: LayersRoom) -> Iterator[PrintedFigure]:
    made = put_together(project)
    if made is None or not made.lying:
        return
    for number, stack in enumerate(stacks_of(made), 1):
        where = f", {stack.face}" if stack.face else ""
        layers = _called(stack.layers, room)
        scale = _largest(layers, room)
        canvas = draw_apart(layers, papers_of(supplies), _lettering(scale))
        drawing = canvas.drawing(
            f"apart-{number}",
            f"One {project.thing}: layers apart{where}",
            layers_in_words(stack.layers, supplies),
        )
        yield PrintedFigure(PrintedDrawing(drawing, scale, LETTERING), f"Layers apart{where}")


def _called(layers: Sequence[Layer], room: LayersRoom) -> Sequence[Layer]:
    return layers if room.named else [replace(layer, name="") for layer in layers]


def _lettering(scale: float) -> Lettering:
    """``scale``: in mm of paper to the mm; letters do not shrink with it."""
    return Lettering(scale * FIGURE_PX / LETTERING, "narrow")


def _largest(layers: Sequence[Layer], room: LayersRoom) -> float:
    """The largest scale that fits."""
    scale = _LARGEST
    for _ in range(_TRIES):
        around = draw_apart(layers, blank, _lettering(scale)).extent
        if (around.right - around.left) * scale <= room.widest and (
            around.bottom - around.top
        ) * scale <= room.highest:
            break
        scale *= _SMALLER
    return scale
