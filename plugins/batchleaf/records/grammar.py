"""The short lines of a record, read: ``22 of 24``, ``chalk-card 4 sheets, kept 60 x 60``.

Each reader takes one text and returns what it says, still by name: whether a
supply exists is known only when all records are read. Raises
:class:`MeasureError` with a sentence.
"""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import dataclass

from batchleaf.measure.amounts import plural
from batchleaf.measure.durations import parse_film_time
from batchleaf.measure.errors import MeasureError

_COUNT = r"[0-9]{1,5}"


def read_date(text: str) -> dt.date:
    """``2026-03-14``; the year first, so that no month is taken for a day."""
    if short := re.fullmatch(r"([0-9]{4})-([0-9]{1,2})-([0-9]{1,2})", text):
        text = f"{short[1]}-{int(short[2]):02d}-{int(short[3]):02d}"
    else:
        raise MeasureError(f"“{text}” is not a date; write the year first, like 2026-03-14")
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise MeasureError(f"“{text}” is not a day of the calendar") from None


def read_count(text: str) -> int:
    """A whole number above nothing."""
    if not re.fullmatch(_COUNT, text.strip()) or int(text) < 1:
        raise MeasureError(f"“{text}” is not a whole number from 1 to 99999; write for example 2")
    return int(text)


def read_extra(text: str) -> int:
    """A whole number, perhaps none."""
    if not re.fullmatch(_COUNT, text.strip()):
        raise MeasureError(f"“{text}” is not a whole number from 0 to 99999; write for example 1")
    return int(text)


def read_makes(text: str) -> tuple[int, int]:
    """``22 of 24``: finished and begun; ``22`` alone means nothing was spoiled."""
    found = re.fullmatch(rf"({_COUNT})(?:(?:\s+(?:out\s+)?of\s+|\s*/\s*)({_COUNT}))?", text.strip())
    if found is None:
        raise MeasureError(f"“{text}” says no number of makes up to 99999; write for example 22 of 24")
    finished, begun = int(found[1]), int(found[2] or found[1])
    if finished > begun:
        raise MeasureError(f"{finished} of {begun} cannot be: more were finished than were begun")
    if begun == 0:
        raise MeasureError("no make was begun; write how many are meant, like 0 of 24")
    return finished, begun


def read_thing(text: str) -> tuple[str, str]:
    """``bookmark`` or ``box, boxes``: one, and several."""
    one, comma, several = (word.strip() for word in text.partition(","))
    if not one or "," in several or (comma and not several):
        raise MeasureError(
            f"“{text}” does not name one, or one and several; write for example box, or box, boxes"
        )
    return one, several or plural(one)


def read_unit(text: str) -> tuple[str, str]:
    """``sheet``, ``m`` or ``leaf, leaves``: the word a supply is counted in, and its plural."""
    one, several = read_thing(text)
    if not re.fullmatch(r"[^\W\d_][\w-]*", one) or not re.fullmatch(r"[^\W\d_][\w-]*", several):
        raise MeasureError(f"“{text}” is not one word to count in; write for example sheet, or leaf, leaves")
    if "," not in text and re.search(r"[^suia]s$", one):
        raise MeasureError(
            f"“{one}” is several; write one, like sheet, or one and several, like leaf, leaves"
        )
    return one, several


def read_part_key(text: str) -> tuple[str, str]:
    """``B water strip``: the letter and the name; the letter may be left out."""
    found = re.fullmatch(r"([A-Z])\s+(.+)", text.strip())
    return (found[1], found[2]) if found else ("", text.strip())


@dataclass(frozen=True, slots=True)
class NamedAmount:
    """A supply and the text of its amount; ``in_all`` for the batch, not for one make."""

    supply: str
    amount: str
    in_all: bool


def read_use(text: str) -> NamedAmount:
    """``jute-cord 140 mm``, ``jute-cord 3.5 m in all``, ``sea-ink``."""
    supply, _, amount = text.strip().partition(" ")
    whole = re.fullmatch(r"(?:(.*)\s)?in all", amount.strip())
    if whole and not whole[1]:
        raise MeasureError(f"“{text}” does not say how much in all; write for example jute-cord 3.5 m in all")
    return NamedAmount(supply, (whole[1] if whole else amount).strip(), in_all=bool(whole))


def read_step(text: str) -> tuple[str, int | None]:
    """``1:05 Cut and score``: the sentence and the seconds in the film."""
    found = re.fullmatch(r"((?:\d{1,2}:)?\d{1,2}:\d{2})\s+(.+)", text.strip())
    return (found[2], parse_film_time(found[1])) if found else (text.strip(), None)
