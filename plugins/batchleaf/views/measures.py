"""The reader's choice between inches and millimetres."""

from __future__ import annotations

from typing import Final

from batchleaf.measure.lengths import Unit
from batchleaf.views.pages.measures import MeasuresView

CALLED: Final = {"mm": "millimetres", "cm": "centimetres", "in": "inches"}
"""What stands behind a figure → what the unit is called."""
_ROUNDED: Final = {
    Unit.RULE_MM: "Rounded from {}: down to half a millimetre, sheets to the nearest tenth.",
    Unit.RULE_INCH: "Rounded from {}: down to a sixteenth, sheets to the nearest.",
}


def measures_view(written: Unit) -> MeasuresView:
    """``written``: the unit of the record."""
    other = written.for_readers
    return MeasuresView(
        written=(written.word, CALLED[written.word]),
        other=(other.word, CALLED[other.word]),
        rounded=rounded_from(written),
    )


def rounded_from(written: Unit) -> str:
    """How lengths are rounded for a reader who has chosen the other unit than that of the record."""
    return _ROUNDED[written.for_readers].format(CALLED[written.word])
