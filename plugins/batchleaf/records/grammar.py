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
from batchleaf.measure.lengths import FRACTION_SIGNS, Size, Unit, parse_size

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


def read_makes(text: str) -> tuple[int, int]:
    """``22 of 24``: finished and begun; ``22`` alone means nothing was spoiled."""
    found = re.fullmatch(rf"({_COUNT})(?:\s+of\s+({_COUNT}))?", text.strip())
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


def read_names(text: str) -> tuple[str, ...]:
    """``ripple-green, dusk-rose``: one supply or several."""
    return tuple(name for name in re.split(r"[,\s]+", text.strip()) if name)


@dataclass(frozen=True, slots=True)
class KeptLine:
    """``kept 2 of 60 x 60`` or ``kept 2 B``."""

    count: int
    size: Size | None
    letter: str


@dataclass(frozen=True, slots=True)
class CutLine:
    """What one line under ``cut`` says; ``who`` is a supply or a role, ``noun`` what was counted."""

    who: str
    count: int
    noun: str
    each: bool
    scrap: Size | None
    kept: tuple[KeptLine, ...]


_SHEETS = re.compile(rf"(?P<who>\S+)\s+(?P<count>{_COUNT})\s+(?P<noun>[^\W\d_][\w-]*)(?P<each>\s+each)?")
_SCRAP = re.compile(rf"(?P<who>\S+)\s+(?:(?P<count>{_COUNT})\s+)?scraps?\s+(?P<size>\S.*)")


def read_cut(text: str, unit: Unit) -> CutLine:
    """``chalk-card 4 sheets, kept 60 x 60`` · ``water 1 sheet each`` · ``ember scrap 4 x 9``."""
    taken, *kept = (piece.strip() for piece in text.split(","))
    pieces = tuple(_read_kept(piece, unit) for piece in kept)
    if scrap := _SCRAP.fullmatch(taken):
        count = int(scrap["count"] or 1)
        size = parse_size(scrap["size"], unit)
        return CutLine(scrap["who"], count, noun="", each=False, scrap=size, kept=pieces)
    if re.search(rf"\s[0-9]+[./][0-9]+\s|[{FRACTION_SIGNS}]", taken):
        raise MeasureError(f"“{taken}” is not whole sheets; count them whole, and say what was left as kept")
    if re.search(r"\sscraps?$", taken):
        raise MeasureError(f"“{taken}” does not say how large it is; write for example oat-card scrap 4 x 9")
    sheets = _SHEETS.fullmatch(taken)
    if sheets is None or int(sheets["count"]) == 0:
        raise MeasureError(
            f"“{taken}” does not say what was cut;"
            " write for example oat-card 4 sheets, or oat-card scrap 4 x 9"
        )
    return CutLine(
        sheets["who"],
        int(sheets["count"]),
        noun=sheets["noun"],
        each=bool(sheets["each"]),
        scrap=None,
        kept=pieces,
    )


_KEPT = re.compile(
    rf"kept\s+(?:(?:(?P<parts>{_COUNT})\s+)?(?P<letter>[A-Z])|(?:(?P<pieces>{_COUNT})\s+of\s+)?(?P<size>[0-9.{FRACTION_SIGNS}].*))"
)


def _read_kept(text: str, unit: Unit) -> KeptLine:
    """The count of a size needs its “of”: in ``kept 4 1/2 x 12`` the 4 belongs to the size."""
    found = _KEPT.fullmatch(text)
    if found is None:
        raise MeasureError(
            f"“{text}” does not say what was kept; write for example kept 2 of 60 x 60, or kept 2 B"
        )
    if found["letter"]:
        return KeptLine(int(found["parts"] or 1), None, found["letter"])
    return KeptLine(int(found["pieces"] or 1), parse_size(found["size"], unit), "")


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


def read_found(text: str) -> NamedAmount:
    """``chalk-card 7 sheets``: what was counted of a supply, which is always all there is."""
    found = read_use(text)
    if found.in_all:
        raise MeasureError(f"“{text}”: a count is always of all there is; leave out “in all”")
    return found


def read_step(text: str) -> tuple[str, int | None]:
    """``1:05 Cut and score``: the sentence and the seconds in the film."""
    found = re.fullmatch(r"((?:\d{1,2}:)?\d{1,2}:\d{2})\s+(.+)", text.strip())
    return (found[2], parse_film_time(found[1])) if found else (text.strip(), None)


@dataclass(frozen=True, slots=True)
class OrderLine:
    """``chalk-card 25 sheets 9.75``: the price is the text after the last amount word, or empty."""

    supply: str
    amount: str
    price: str


def read_order_line(text: str) -> OrderLine:
    """A line of an order: supply, amount, and after a comma what it cost.

    ``chalk-card 25 sheets, 9.75`` · ``found-card 6 sheets, price unknown``
    """
    taken, comma, price = (piece.strip() for piece in text.partition(","))
    supply, _, amount = taken.partition(" ")
    if not amount:
        raise MeasureError(f"“{text}” is no line of an order; write for example chalk-card 25 sheets, 9.75")
    if not comma:
        raise MeasureError(f"“{text}” has no price; write it after a comma, like chalk-card 25 sheets, 9.75")
    if not price:
        raise MeasureError(f"“{text}” has a comma and no price; write what it cost, or price unknown")
    return OrderLine(supply, amount.strip(), "" if price == "price unknown" else price)
