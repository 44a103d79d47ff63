"""A flat blank: its outline, where it is scored and folded, where it is cut in, what each face becomes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.steps import PlacedPart
from batchleaf.core.geometry.outlined import of_blank
from batchleaf.facts import Fold, Part
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.canvas import Canvas, Lettering
from batchleaf.views.drawing.chains import draw_chain
from batchleaf.views.drawing.cutouts import as_drawn, cutout
from batchleaf.views.drawing.marks import Area
from batchleaf.views.drawing.scores import draw_scores, scored
from batchleaf.views.drawing.shapes import Label, Stroke
from batchleaf.views.drawing.sides import Side

_CHAIN: Final = 0.8
"""How far out a chain of measures stands, in em."""
_PLACES: Final = (0.5, 0.32, 0.7, 0.2, 0.82)
"""Where on a face its name may stand, as shares of its height."""
_SHORT_OF_THE_CORNER: Final = 1.75
"""How far along each edge the corner of a cover is cut off, as a share of what is turned in."""
ZERO: Final = Fraction(0)

Named = tuple[str, Rect]
"""What a face becomes, and where it lies on the blank."""


def draw_blank(part: Part, faces: Sequence[Named], unit: Unit, lettering: Lettering) -> Canvas:
    """The blank with its faces by name; its measures from score to score, and of the whole."""
    canvas = Canvas(lettering)
    sheet = Rect(ZERO, ZERO, part.size.width, part.size.height)
    area = Area.of(sheet)
    outline = of_blank(part)
    if outline is None:
        canvas.add(area.box("part"), area.box("outline"))
    else:
        # Cut to its shape once it is folded: until then it is scored from edge to edge.
        canvas.add(area.box("waste"), cutout(outline, "part", "", as_drawn))
        canvas.add(cutout(outline, "outline", "", as_drawn))
    draw_scores(canvas, scored([PlacedPart(part.letter, sheet, turned=False)], {part.letter: part.scores}))
    cuts = tuple(corner_cuts(part))
    if cuts:
        canvas.add(Stroke("cut", cuts))
    for name, rect in faces:
        _draw_name(canvas, name, Area.of(rect))
    out = _CHAIN * lettering.em
    draw_chain(canvas, area, Side.TOP, _stops(part, runs_down=True), unit, out)
    draw_chain(canvas, area, Side.LEFT, _stops(part, runs_down=False), unit, out)
    return canvas


def corner_cuts(part: Part) -> Iterator[tuple[float, float, float, float]]:
    """A box is cut into each corner along one of its two scores, as far as the other; so are flaps.

    The corners of a cover are cut off aslant.
    """
    width, height = float(part.size.width), float(part.size.height)
    if part.fold is Fold.COVER:
        yield from _aslant(width, height, float(part.scores[0].at))
    elif part.fold in (Fold.BOX, Fold.SLIPCASE):
        deep = float(min(score.at for score in part.scores if not score.runs_down))
        for x in (float(score.at) for score in part.scores if score.runs_down):
            yield (x, 0.0, x, deep)
            yield (x, height - deep, x, height)


def _aslant(width: float, height: float, edge: float) -> Iterator[tuple[float, float, float, float]]:
    """A little outside of where the scores cross, so that no board shows at a corner (common practice)."""
    off = edge * _SHORT_OF_THE_CORNER
    for x, inwards in ((0.0, off), (width, -off)):
        yield (x, off, x + inwards, 0.0)
        yield (x, height - off, x + inwards, height)


def _stops(part: Part, *, runs_down: bool) -> tuple[Fraction, ...]:
    length = part.size.width if runs_down else part.size.height
    return (ZERO, *sorted(score.at for score in part.scores if score.runs_down is runs_down), length)


def _draw_name(canvas: Canvas, name: str, area: Area) -> None:
    """Upright in the middle of its face, else aside, else read from below; else nowhere."""
    x, y = area.x + area.width / 2, area.y + area.height / 2
    upright = Label("quiet halo on-sheet", x, y, name)
    ways = [replace(upright, y=area.y + share * area.height) for share in _PLACES]
    ways += [replace(upright, x=area.x + share * area.width, upright=False) for share in _PLACES]
    for way in ways:
        if canvas.add_if_free(way, within=area.extent):
            return
