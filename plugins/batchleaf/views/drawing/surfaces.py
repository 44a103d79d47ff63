"""What lies over one another, as paper: filled with its colour, marked with its pattern, outlined."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Final

from batchleaf.core.geometry.seen import Seen
from batchleaf.facts import ShownSide, Supply
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.cutouts import lines_within, piece_of
from batchleaf.views.drawing.marks import Area
from batchleaf.views.drawing.paper import Fill, Line, fills_of, marks_on
from batchleaf.views.drawing.shapes import Stroke

_OTHER: Final = {ShownSide.FRONT: ShownSide.BACK, ShownSide.BACK: ShownSide.FRONT}


PaperOf = Callable[[Seen], Fill]
"""What each thing that is seen is drawn with."""


def papers_of(supplies: Mapping[str, Supply]) -> PaperOf:
    """The paper of each thing, on the side that is seen."""

    def paper_of(seen: Seen) -> Fill:
        side = _OTHER[seen.part.side] if seen.reverse else seen.part.side
        fills = fills_of(seen.part, supplies, side)
        return fills[seen.copy % len(fills)]

    return paper_of


def blank(seen: Seen) -> Fill:
    """No paper: for finding out how large a drawing gets, since a pattern lies within its edges."""
    return Fill()


def draw_paper(canvas: Canvas, seen: Iterable[Seen], paper_of: PaperOf) -> None:
    """Each thing over those before it."""
    for one in seen:
        fill = paper_of(one)
        role = "layer" if one.index is not None else "base"
        canvas.add(piece_of(one, role + fill.edge, fill.colour))
        lines = tuple(marks_of(one, fill, canvas.lettering.scale))
        if lines:
            canvas.add(Stroke(f"pattern {fill.marks.value}", lines, fill.marks_colour))


def marks_of(seen: Seen, fill: Fill, scale: float) -> Iterator[Line]:
    """The marks of its pattern, where they lie and turned as it is; ``scale`` is in px to the mm."""
    yield from lines_within(_marks_of(seen, fill, scale), seen.outline)


def _marks_of(seen: Seen, fill: Fill, scale: float) -> Iterator[Line]:
    """On the whole of its rectangle."""
    area, turns = Area.of(seen.rect), seen.quarter_turns
    width, height = (area.height, area.width) if turns % 2 else (area.width, area.height)
    for x1, y1, x2, y2 in marks_on(width, height, fill.marks, scale):
        (left, top), (right, foot) = (_turned(x, y, width, height, turns) for x, y in ((x1, y1), (x2, y2)))
        yield (area.x + left, area.y + top, area.x + right, area.y + foot)


def _turned(x: float, y: float, width: float, height: float, quarter_turns: int) -> tuple[float, float]:
    """A point of an upright piece where it lies after so many quarter turns clockwise."""
    match quarter_turns % 4:
        case 1:
            return height - y, x
        case 2:
            return width - x, height - y
        case 3:
            return y, width - x
    return x, y
