"""A base in its long form: measures instead of names."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.facts import Fold, folded_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.spelling import spell_length, spell_lengths
from batchleaf.records.bases import BaseLine


def spelt_base(base: BaseLine, unit: Unit) -> str:
    """``card 210 x 148 mm, side fold``: reads back as the same base."""
    pieces = [f"{base.thing} {spell_lengths(_measures(base), unit)}"]
    match base.fold:
        case Fold.BOX:
            pieces += _lid(base, unit)
        case Fold.ACCORDION:
            pieces.append(f"accordion of {len(base.scores) + 1}")
        case _:
            pieces.append(base.fold.value)
    return ", ".join([*pieces, *(["ready-made"] if base.ready else [])])


def _measures(base: BaseLine) -> tuple[Fraction, ...]:
    if base.fold is not Fold.BOX:
        return base.size.width, base.size.height
    bottom = folded_size(base.size, base.scores)
    return bottom.width, bottom.height, base.scores[0].at


def _lid(base: BaseLine, unit: Unit) -> list[str]:
    if base.lid is None:
        return []
    room = folded_size(base.lid.size, base.lid.scores).width - folded_size(base.size, base.scores).width
    return [f"lid {spell_length(base.lid.scores[0].at, unit)}", f"room {spell_length(room, unit)}"]
