"""What an open bottle still holds, by eye: ``half``, ``2 and low``. Nobody weighs glue."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from batchleaf.facts import Supply
from batchleaf.measure.errors import MeasureError

LEVELS: Final = {"full": Fraction(1), "half": Fraction(1, 2), "low": Fraction(1, 4), "empty": Fraction(0)}
"""Word → how much of one it stands for. The quarter is the house's own reading of “low”."""
_WORD: Final = "|".join(LEVELS)
_LEVEL: Final = re.compile(
    rf"(?:(?P<full>[0-9]{{1,4}})(?:\s+full)?(?:\s+(?P<noun>(?!and\b)[^\W\d_][\w-]*))?\s*(?:\s+and|,)\s+)?"
    rf"(?:an?\s+|one\s+)?(?P<level>{_WORD})(?:\s+full)?(?:\s+(?P<last>[^\W\d_][\w-]*))?",
    re.IGNORECASE,
)


def is_level(text: str) -> bool:
    """Whether an amount is written as a level."""
    return _LEVEL.fullmatch(text.strip()) is not None


def read_level(text: str, supply: Supply) -> Fraction:
    """How many of the supply's unit a level stands for: ``half`` → 1/2, ``2 and low`` → 2 1/4.

    Raises :class:`MeasureError` where the supply is not kept by level.
    """
    found = _LEVEL.fullmatch(text.strip())
    if found is None:
        raise MeasureError(f"“{text}” is no level; write {', '.join(LEVELS)}, or 2 and half")
    if not supply.by_level:
        raise MeasureError(
            f"“{text.strip()}” is a level, and {supply.slug} is counted in {supply.units};"
            f" write how many, or write by: level in the drawer"
        )
    for noun in (found["noun"], found["last"]):
        if noun and noun.lower() not in (supply.unit, supply.units):
            raise MeasureError(f"“{noun}” is not what {supply.slug} is counted in; write {supply.units}")
    return int(found["full"] or 0) + LEVELS[found["level"].lower()]
