"""Slips of a pen in amounts: a comma for thousands, less than nothing."""

from __future__ import annotations

import re
from typing import Final

from batchleaf.measure.errors import MeasureError

_THOUSANDS: Final = re.compile(r"(?<![0-9.,])[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])")
_BELOW: Final = re.compile(r"\s*[-−–]\s*[0-9.]")


def refuse_slips(text: str, example: str) -> None:
    """Raises :class:`MeasureError` where ``text`` has thousands with a comma, or is below nothing."""
    if thousands := _THOUSANDS.search(text):
        raise MeasureError(f"“{thousands[0]}” has a comma; write {thousands[0].replace(',', '')}")
    if _BELOW.match(text):
        raise MeasureError(f"“{text.strip()}” is below nothing; write for example {example}")
