"""Times: minutes at the table, and moments in a film."""

from __future__ import annotations

import re
from fractions import Fraction

from batchleaf.measure.errors import MeasureError


def parse_minutes(text: str) -> int:
    """``3 h 10``, ``3:10``, ``3.5 h``, ``50 min`` or ``2 h 50 min`` in whole minutes.

    Raises :class:`MeasureError`.
    """
    if clock := re.fullmatch(r"(\d{1,3}):([0-5]\d)(?:\s*h(?:ours?)?)?", text.strip(), re.IGNORECASE):
        return int(clock[1]) * 60 + int(clock[2])
    if part := re.fullmatch(r"(\d{1,3})\.(\d{1,2})\s*h(?:ours?)?", text.strip(), re.IGNORECASE):
        return int(part[1]) * 60 + round(Fraction(int(part[2]), 10 ** len(part[2])) * 60)
    found = re.fullmatch(
        r"(?:(\d{1,3})\s*(?:h|hours?))?\s*(?:(\d{1,4})\s*(?:min|minutes?)?)?", text.strip(), re.IGNORECASE
    )
    if found is None or not (found[1] or found[2]):
        raise MeasureError(f"“{text.strip()}” is no time at the table; write for example 1 h 15 or 50 min")
    return int(found[1] or 0) * 60 + int(found[2] or 0)


def parse_seconds(text: str) -> int:
    """``10 s``, ``1 min`` or ``1 min 30 s`` in whole seconds. Raises :class:`MeasureError`."""
    found = re.fullmatch(
        r"(?:([0-9]{1,3})\s*min(?:utes?)?)?\s*(?:([0-9]{1,4})\s*(?:s|sec(?:onds?)?))?",
        text.strip(),
        re.IGNORECASE,
    )
    seconds = int(found[1] or 0) * 60 + int(found[2] or 0) if found else 0
    if not seconds:
        raise MeasureError(f"“{text.strip()}” is no time of one stroke; write for example 10 s or 1 min")
    return seconds


def show_minutes(minutes: int) -> str:
    """``2 h 50``, ``3 h`` or ``50 min``, with spaces that do not break."""
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest}\u00a0min"
    return f"{hours}\u00a0h\u00a0{rest:02d}" if rest else f"{hours}\u00a0h"


def parse_film_time(text: str) -> int:
    """``1:05`` or ``1:02:40`` in seconds from the start. Raises :class:`MeasureError`."""
    found = re.fullmatch(r"(?:(\d{1,2}):)?(\d{1,2}):([0-5]\d)", text.strip())
    if found is None:
        raise MeasureError(f"“{text.strip()}” is no time in a film; write for example 1:05")
    return int(found[1] or 0) * 3600 + int(found[2]) * 60 + int(found[3])


def show_film_time(seconds: int) -> str:
    """``1:05``, ``1:02:40``."""
    hours, rest = divmod(seconds, 3600)
    minutes, seconds = divmod(rest, 60)
    return f"{hours}:{minutes:02d}:{seconds:02d}" if hours else f"{minutes}:{seconds:02d}"
