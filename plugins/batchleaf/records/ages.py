"""How old somebody is: ``2 years`` · ``18 months`` · ``6``."""

from __future__ import annotations

import re
from typing import Final

from batchleaf.measure.errors import MeasureError

_AGE: Final = re.compile(r"(?P<count>[0-9]{1,3})\s*(?P<unit>years?|months?)?", re.IGNORECASE)
OLDEST: Final = 120
"""In years."""


def read_age(text: str) -> int:
    """In whole months; a bare number is of years. Raises :class:`MeasureError`."""
    said = _AGE.fullmatch(text.strip())
    if said is None:
        raise MeasureError(f"“{text}” is not an age; write for example 2 years or 18 months")
    months = int(said["count"]) * (1 if (said["unit"] or "").lower().startswith("month") else 12)
    if months > OLDEST * 12:
        raise MeasureError(f"nobody is “{text}” old; write for example 2 years or 18 months")
    return months
