"""A base in its long form: measures instead of names."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from batchleaf.facts import Fold, folded_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.spelling import spell_length, spell_lengths
from batchleaf.records.around import EDGE, Around
from batchleaf.records.bases import BaseLine
from batchleaf.records.cut_to_shape import spell_shape


def spelt_base(base: BaseLine, unit: Unit) -> str:
    """``card 210 x 148 mm, side fold``: reads back as the same base."""
    if base.around:
        return ", ".join(_around(base.around, unit))
    pieces = [f"{base.thing} {spell_lengths(_measures(base), unit)}"]
    match base.fold:
        case Fold.BOX:
            pieces += _lid(base, unit)
        case Fold.ACCORDION:
            pieces.append(f"accordion of {len(base.scores) + 1}")
        case _:
            pieces.append(base.fold.value)
    if not base.shape.is_rectangle:
        pieces.append(spell_shape(base.shape, unit))
    return ", ".join([*pieces, *(["ready-made"] if base.ready else [])])


def _around(around: Around, unit: Unit) -> Iterator[str]:
    inside = around.inside.width, around.inside.height, *([around.depth] if around.depth else [])
    yield f"{around.thing} for {spell_lengths(inside, unit)}"
    yield f"room {spell_length(around.room, unit)}"
    if around.edge:
        yield f"{EDGE[around.fold]} {spell_length(around.edge, unit)}"


def _measures(base: BaseLine) -> tuple[Fraction, ...]:
    if base.fold is not Fold.BOX:
        return base.size.width, base.size.height
    bottom = folded_size(base.size, base.scores, Fold.BOX)
    return bottom.width, bottom.height, base.scores[0].at


def _lid(base: BaseLine, unit: Unit) -> list[str]:
    if base.lid is None:
        return []
    room = base.room_of(base.lid) or Fraction(0)
    return [f"lid {spell_length(base.lid.scores[0].at, unit)}", f"room {spell_length(room, unit)}"]
