"""What stands where a batch has no photo: its first sheet, cut, or else the colours of its papers."""

from __future__ import annotations

from typing import Final

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.figures import BatchFigures
from batchleaf.views.drawing.shapes import Box
from batchleaf.views.sentence import Supplies

_BAND: Final = 40.0
_BAND_LENGTH: Final = 160.0


def stand_in(batch: BatchFigures, supplies: Supplies) -> tuple[Box, ...]:
    """Boxes of which the first is the frame; none where nothing is known of the paper."""
    return _first_sheet(batch, supplies) or _bands(batch, supplies)


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
