"""What is drawn of a sheet plan, at whatever scale and in whatever unit: worked out once, exactly.

Here exact lengths become those of a drawing. How large lettering is decides about the rest.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.facts import Grain
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.callouts import Callout, callouts_of_cuts
from batchleaf.views.drawing.letters import Lettered
from batchleaf.views.drawing.marks import Area, Fibres, fibres_of
from batchleaf.views.drawing.scores import Scored, Scores, scored
from batchleaf.views.drawing.shapes import Stroke
from batchleaf.views.drawing.sides import Side, Sight, stops, waste_of


@dataclass(frozen=True, slots=True)
class SheetToDraw:
    """One sheet with its cuts, its parts, what is kept and what is waste.

    ``standing``: parts and kept pieces, as they are seen from each side. ``chains``: the stops of the
    measures along each side that has any. ``fibres``: ``None`` where nobody knows how they run.
    """

    sheet: Rect
    area: Area
    parts: tuple[Lettered, ...]
    scored: tuple[Scored, ...]
    kept: tuple[Rect, ...]
    waste: tuple[Area, ...]
    cuts: tuple[Stroke, ...]
    standing: Mapping[Side, Sequence[Sight]]
    callouts: tuple[Callout, ...]
    chains: Mapping[Side, tuple[Fraction, ...]]
    fibres: Fibres | None


def sheet_to_draw(
    laid_out: LaidOut, *, letters: Mapping[str, str], kept: tuple[Rect, ...], scores: Scores, grain: Grain
) -> SheetToDraw:
    """``letters`` and ``scores`` go by part id."""
    sheet, waste = laid_out.sheet, waste_of(laid_out, kept)
    parts = tuple(Lettered.of(part, letters[part.part], sheet, scores) for part in laid_out.parts)
    standing = {
        side: [*(part.seen[side] for part in parts), *(side.sight(sheet, piece) for piece in kept)]
        for side in Side
    }
    return SheetToDraw(
        sheet=sheet,
        area=Area.of(sheet),
        parts=parts,
        scored=tuple(scored(laid_out.parts, scores)),
        kept=kept,
        waste=tuple(map(Area.of, waste)),
        cuts=tuple(map(_cut_line, laid_out.cuts)),
        standing=standing,
        callouts=tuple(callouts_of_cuts(laid_out.cuts, sheet, standing)),
        chains=_chains(laid_out, kept),
        fibres=fibres_of(sheet, [face for part in parts for face in part.faces], waste, grain),
    )


def _chains(laid_out: LaidOut, kept: tuple[Rect, ...]) -> dict[Side, tuple[Fraction, ...]]:
    """Stops by side; right and bottom only where they say what left and top do not."""
    found = {side: stops(side, laid_out, kept) for side in Side}
    repeats = [side for side in (Side.RIGHT, Side.BOTTOM) if set(found[side]) <= set(found[side.opposite])]
    return {side: at for side, at in found.items() if side not in repeats}


def _cut_line(cut: CutStep) -> Stroke:
    piece = Area.of(cut.piece)
    if cut.axis is Axis.X:
        x = piece.x + float(cut.setting)
        return Stroke("cut", ((x, piece.y, x, piece.y + piece.height),))
    y = piece.y + float(cut.setting)
    return Stroke("cut", ((piece.x, y, piece.x + piece.width, y),))
