"""At the table: what the page for the phone holds of an archive, which is its name and its unit.

It is the same in both editions, since nothing of any record is in it.
"""

from __future__ import annotations

from typing import Final

from batchleaf.measure.lengths import Unit
from batchleaf.views import site_map
from batchleaf.views.masthead import Masthead
from batchleaf.views.pages.at_the_table import TablePage, UsualSize

_INCHES: Final = "in"
_METRIC: Final = "mm cm"
_USUAL: Final = (
    UsualSize("12 × 12", "12 × 12 in", _INCHES),
    UsualSize("Letter", "8 1/2 × 11 in", _INCHES),
    UsualSize("11 × 17", "11 × 17 in", _INCHES),
    UsualSize("8 × 8", "8 × 8 in", _INCHES),
    UsualSize("6 × 6", "6 × 6 in", _INCHES),
    UsualSize("A4", "210 × 297 mm", f"{_INCHES} {_METRIC}"),
    UsualSize("A3", "297 × 420 mm", _METRIC),
    UsualSize("A5", "148 × 210 mm", _METRIC),
    UsualSize("12 × 12 in", "12 × 12 in", _METRIC),
    UsualSize("Letter", "8 1/2 × 11 in", _METRIC),
)
"""The A series is that of ISO 216; Letter and 11 × 17 are ANSI's A and B; the squares are the trade's."""
_SIGNS: Final = (
    ("⅛", "one eighth"),
    ("¼", "a quarter"),
    ("⅜", "three eighths"),
    ("½", "a half"),
    ("⅝", "five eighths"),
    ("¾", "three quarters"),
    ("⅞", "seven eighths"),
)
_METRIC_WORDS: Final = {Unit.MM: "mm", Unit.CM: "cm"}


def table_page(unit: Unit, masthead: Masthead) -> TablePage:
    """The page of an archive whose unit is ``unit``; the other one can be chosen."""
    metric = unit if unit in _METRIC_WORDS else Unit.MM
    units = ((Unit.INCH.value, "inches"), (metric.value, _METRIC_WORDS[metric]))
    return TablePage(
        masthead.name, site_map.href(site_map.TABLE, site_map.HOME), unit.value, units, _USUAL, _SIGNS
    )
