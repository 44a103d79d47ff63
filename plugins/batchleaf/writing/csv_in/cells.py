"""Cells of a sheet as values of a record: days, numbers with a decimal comma, units of the heading."""

from __future__ import annotations

import datetime as dt
import re
from typing import Final

from batchleaf.measure.errors import MeasureError

_MONTHS: Final = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_NUMBERS: Final = re.compile(r"([0-9]{1,4})\s*([./-])\s*([0-9]{1,2})\s*\2\s*([0-9]{1,4})\.?")
_NAMED: Final = re.compile(
    r"(?:(?P<d>[0-9]{1,2})\.?[\s-]+(?P<m>[a-z]{3,9})\.?|(?P<n>[a-z]{3,9})\.?[\s-]+(?P<e>[0-9]{1,2}))"
    r",?[\s-]+(?P<y>[0-9]{4})",
    re.IGNORECASE,
)
_CLOCK: Final = re.compile(r"[T\s]+00:00(?::00(?:\.0+)?)?$")
_BARE: Final = re.compile(r"[0-9]+(?:\.[0-9]+)?|[0-9]+/[0-9]+|[0-9]+ [0-9]+/[0-9]+")
_THOUSANDS: Final = re.compile(r"[1-9][0-9]{0,2}(?:\.[0-9]{3})+")
_COMMA: Final = re.compile(r"(?<=[0-9]),(?=[0-9])")
_FORMULA_KEPT: Final = re.compile(r"'(?=\s*[=+\-@＝＋－＠])")


def without_mark(cell: str) -> str:
    """A text that would be a formula is often kept as text by a quotation mark before it."""
    return _FORMULA_KEPT.sub("", cell, count=1) if cell.startswith("'") else cell


def iso_day(text: str) -> str:
    """``14.3.2026`` and ``March 14, 2026`` as ``2026-03-14``. Raises :class:`MeasureError`.

    Where the day and the month could be each other nobody can tell which is which.
    """
    text = _CLOCK.sub("", text.strip())
    if named := _NAMED.fullmatch(text):
        return _named_day(text, named)
    found = _NUMBERS.fullmatch(text)
    if found is None:
        raise MeasureError(f"“{text}” is not a date; write the year first, like 2026-03-14")
    first, middle, last = found[1], found[3], found[4]
    if len(first) == 4 and len(last) <= 2:
        return _day(text, first, middle, last)
    if len(last) != 4 or len(first) > 2:
        raise MeasureError(f"“{text}” has no year of four figures; write it like 2026-03-14")
    if int(first) <= 12 and int(middle) <= 12 and int(first) != int(middle):
        one, other = f"{last}-{int(middle):02}-{int(first):02}", f"{last}-{int(first):02}-{int(middle):02}"
        raise MeasureError(f"“{text}” may be {one} or {other}; write the one it is")
    day, month = (middle, first) if int(middle) > 12 else (first, middle)
    return _day(text, last, month, day)


def _named_day(text: str, named: re.Match[str]) -> str:
    word = (named["m"] or named["n"])[:3].lower()
    if word not in _MONTHS:
        raise MeasureError(f"“{text}” names no month; write it like 2026-03-14")
    return _day(text, named["y"], str(_MONTHS.index(word) + 1), named["d"] or named["e"])


def _day(text: str, year: str, month: str, day: str) -> str:
    try:
        return dt.date(int(year), int(month), int(day)).isoformat()
    except ValueError:
        raise MeasureError(f"“{text}” is not a day of the calendar") from None


def with_points(text: str, *, decimal_comma: bool) -> str:
    """Numbers with a decimal point, where a sheet has commas: ``30,5 x 30,5`` is ``30.5 x 30.5``.

    Raises :class:`MeasureError` where a point may part thousands.
    """
    if not decimal_comma:
        return text
    if "," not in text and (unclear := _THOUSANDS.search(text)):
        whole, part = unclear[0].replace(".", ""), unclear[0].rstrip("0").rstrip(".")
        raise MeasureError(f"“{text}” may be {whole} or {part}; write {whole}, or {part.replace('.', ',')}")
    without = re.sub(r"(?<=[0-9])\.(?=[0-9]{3}(?:[.,]|$))", "", text) if "," in text else text
    return _COMMA.sub(".", without)


def with_unit(text: str, unit: str) -> str:
    """A bare number with the unit that its heading names."""
    return f"{text} {unit}" if unit and _BARE.fullmatch(text) else text


def is_bare(text: str) -> bool:
    """Whether a cell is a number and nothing else."""
    return bool(_BARE.fullmatch(text))
