"""What stands where a batch has no photo: one make as it looks, or its first sheet, or its colours."""

from __future__ import annotations

from typing import Final

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.figures import BatchFigures
from batchleaf.core.geometry.lying import put_together
from batchleaf.views.drawing.canvas import Canvas, Lettering
from batchleaf.views.drawing.shapes import Box, Cutout, Stroke
from batchleaf.views.drawing.surfaces import draw_paper, papers_of
from batchleaf.views.first_make import as_first_made
from batchleaf.views.sentence import Supplies
from batchleaf.views.together import front_of

_BAND: Final = 40.0
_BAND_LENGTH: Final = 160.0
_LONGEST_PX: Final = 260.0
"""About how long it is on the screen, for the distance of its marks."""


def stand_in(batch: BatchFigures, supplies: Supplies) -> tuple[Box | Cutout | Stroke, ...]:
    """Boxes of which the first is the frame, with marks; none where nothing is known of it."""
    return _front(batch, supplies) or _first_sheet(batch, supplies) or _bands(batch, supplies)


def _front(batch: BatchFigures, supplies: Supplies) -> tuple[Box | Cutout | Stroke, ...]:
    """One make from the side that is seen first, where its record names a base."""
    made = put_together(as_first_made(batch))
    if made is None:
        return ()
    shown = front_of(made, supplies)
    size = shown.aspect.size
    longest = float(max(size.width, size.height))
    canvas = Canvas(Lettering(_LONGEST_PX / longest, "middle"))
    draw_paper(canvas, (*shown.behind, *shown.seen), papers_of(supplies))
    frame = Box("frame", 0.0, 0.0, float(size.width), float(size.height))
    return (frame, *(shape for shape in canvas.shapes if isinstance(shape, Box | Cutout | Stroke)))


def _first_sheet(batch: BatchFigures, supplies: Supplies) -> tuple[Box, ...]:
    """The sheet of the first plan with its parts, in the colour of the paper."""
    cutting = batch.cutting
    if cutting is None or not cutting.plans:
        return ()
    plan = cutting.plans[0]
    colour = supplies[cutting.sheets[plan.stock].supply].colour
    laid = lay_out(plan, cutting.job)
    sheet = Box("frame", 0.0, 0.0, float(laid.sheet.width), float(laid.sheet.height))
    parts = (placed.rect for placed in laid.parts)
    return (
        sheet,
        *(Box("part", float(r.x), float(r.y), float(r.width), float(r.height), colour) for r in parts),
    )


def _bands(batch: BatchFigures, supplies: Supplies) -> tuple[Box, ...]:
    """One band for each colour that its papers have."""
    papers = dict.fromkeys(slug for part in batch.project.parts for slug in part.papers)
    colours = [colour for slug in papers for colour in supplies[slug].colours]
    if not colours:
        return ()
    bands = (Box("part", n * _BAND, 0.0, _BAND, _BAND_LENGTH, colour) for n, colour in enumerate(colours))
    return (Box("frame", 0.0, 0.0, len(colours) * _BAND, _BAND_LENGTH), *bands)
