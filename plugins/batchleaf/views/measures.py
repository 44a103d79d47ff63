"""The reader's choice between inches and millimetres."""

from __future__ import annotations

from typing import Final

from batchleaf.measure.lengths import Unit
from batchleaf.views.pages.measures import MeasuresView

_CALLED: Final = {"mm": "millimetres", "cm": "centimetres", "in": "inches"}
_ROUNDED: Final = {
    Unit.RULE_MM: "Rounded from {}: down to half a millimetre, sheets to the nearest tenth.",
    Unit.RULE_INCH: "Rounded from {}: down to a sixteenth, sheets to the nearest.",
}


def measures_view(written: Unit) -> MeasuresView:
    """``written``: the unit of the record."""
    other = written.for_readers
    return MeasuresView(
        written=(written.word, _CALLED[written.word]),
        other=(other.word, _CALLED[other.word]),
        rounded=_ROUNDED[other].format(_CALLED[written.word]),
    )
