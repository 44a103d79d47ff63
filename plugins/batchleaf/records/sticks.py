"""How much of an adhesive sticks one part, as the drawer says it."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Coat, Dots, Sides, Sticks, Strips
from batchleaf.measure.amounts import measure_of, mm_in, parse_amount
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit, parse_size
from batchleaf.records.grammar import read_count
from batchleaf.records.shape_problems import one_of

_PER: Final = re.compile(r"(?P<amount>\S.*?)\s+per\s+(?P<area>\S.*?)(?:[,\s]\s*at least\s+(?P<least>\S.*))?")
_BY_MEASURE: Final = {
    "length": Sides.TWO_LONG.value,
    "volume": "1 ml per 100 x 100 mm",
    "mass": "1 g per 100 x 100 mm",
    "": "1 per 20 x 30 mm, at least 4",
}
"""What may be written for a supply, by what its unit measures.

Four are common practice for foam: one under each corner.
"""


@dataclass(frozen=True, slots=True)
class PerArea:
    """``1 per 20 x 30 mm, at least 4`` in its pieces; ``least`` is empty where none is written."""

    amount: str
    area: str
    least: str


def per_area(text: str) -> PerArea | None:
    """So much for an area, or ``None`` where a text says no such thing."""
    found = _PER.fullmatch(text.strip())
    return PerArea(found["amount"], found["area"], found["least"] or "") if found else None


def example_for(unit: str) -> str:
    """What ``sticks`` may say of a supply that is kept in ``unit``."""
    return _BY_MEASURE[measure_of(unit)]


def read_sticks(text: str, unit: str, units: str, length_unit: Unit) -> Sticks:
    """``two long sides``, ``1 per 20 x 30 mm, at least 4`` or ``1 ml per 100 x 100 mm``.

    Which of them fits follows from the unit that the supply is kept in; ``length_unit``
    counts where an area names none. Raises :class:`MeasureError`.
    """
    if measure_of(unit) == "length":
        return Strips(_sides(text, unit), mm_in(unit))
    found = per_area(text)
    if found is None:
        kept = "kept" if measure_of(unit) else "counted"
        raise MeasureError(
            f"“{text}” does not say how much of it sticks a part, and this supply is {kept} in {units};"
            f" write for example {example_for(unit)}"
        )
    return _by_area(found, unit, units, length_unit)


def _sides(text: str, unit: str) -> Sides:
    words = " ".join(text.lower().split())
    if words in list(Sides):
        return Sides(words)
    raise MeasureError(
        f"“{text}” does not say which sides of a part get a strip, and this supply is kept in {unit};"
        f" write {one_of(Sides)}"
    )


def _by_area(found: PerArea, unit: str, units: str, length_unit: Unit) -> Coat | Dots:
    measured = measure_of(unit) != ""
    if measured and found.least:
        raise MeasureError(f"only what is counted has a least number; leave out “at least {found.least}”")
    amount = parse_amount(found.amount, unit, units)
    area = parse_size(found.area, length_unit)
    if not amount:
        raise MeasureError(f"“{found.amount}” is nothing; leave sticks out where it sticks no parts")
    if measured:
        return Coat(amount, area)
    if amount.denominator > 1:
        raise MeasureError(
            f"“{found.amount}” is no whole number of {units}; write for how large an area one is,"
            f" like {example_for(unit)}"
        )
    return Dots(int(amount), area, read_count(found.least or "1"))
