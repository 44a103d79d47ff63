"""What was cut, as written: ``chalk-card 4 sheets, kept 60 x 60`` · ``ember-card 2 scraps 4 x 9``."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Final

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import FRACTION_SIGNS, Size, Unit, parse_size
from batchleaf.measure.slips import refuse_slips

_COUNT: Final = r"[0-9]{1,5}"
_COMMA: Final = re.compile(r"(?<![0-9]),|,(?![0-9])")
"""A comma between two figures belongs to a number, which says so itself."""


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


_SHEETS: Final = re.compile(
    rf"\s+(?P<count>{_COUNT})(?:\s+(?P<noun>(?!(?:scraps?|each)\b)[^\W\d_][\w-]*))?(?P<each>\s+each)?"
)
_SCRAP: Final = re.compile(rf"\s+(?:(?P<count>{_COUNT})\s+)?scraps?\s+(?P<size>\S.*)")
_NUMBERED: Final = re.compile(rf"(?P<who>\S+)\s+(?P<number>{_COUNT})(?P<rest>\s+{_COUNT}\s+[^\W\d_].*)")


def read_cut(text: str, unit: Unit, roles: Iterable[str] = ()) -> CutLine:
    """``chalk-card 4 sheets, kept 60 x 60`` · ``water 1 sheet each`` · ``ember scrap 4 x 9``.

    ``roles``: names that may be longer than one word. Raises :class:`MeasureError`.
    """
    taken, *kept = (" ".join(piece.split()) for piece in _COMMA.split(text))
    pieces = tuple(_read_kept(piece, unit) for piece in kept)
    for who, rest in _named_in(taken, roles):
        if scrap := _SCRAP.fullmatch(rest):
            size = parse_size(scrap["size"], unit)
            return CutLine(who, int(scrap["count"] or 1), "", each=False, scrap=size, kept=pieces)
        sheets = _SHEETS.fullmatch(rest)
        if sheets and int(sheets["count"]) and (sheets["noun"] or sheets["each"]):
            each, noun = bool(sheets["each"]), sheets["noun"] or ""
            return CutLine(who, int(sheets["count"]), noun, each, scrap=None, kept=pieces)
    raise MeasureError(_why_not(taken))


def _named_in(taken: str, roles: Iterable[str]) -> Iterator[tuple[str, str]]:
    """What a line may begin with, longest first, and what stands behind it."""
    first = taken.partition(" ")[0]
    for who in sorted({first, *roles}, key=len, reverse=True):
        if taken.startswith(f"{who} "):
            yield who, taken.removeprefix(who)


def _why_not(taken: str) -> str:
    amount = taken.partition(" ")[2]
    refuse_slips(amount, "4 sheets")
    if re.search(rf"\s[0-9]+[.,/][0-9]+\s|[{FRACTION_SIGNS}]", taken):
        return f"“{taken}” is not whole sheets; count them whole, and say what was left as kept"
    if re.search(r"\sscraps?$", taken):
        return f"“{taken}” does not say how large it is; write for example oat-card scrap 4 x 9"
    if numbered := _NUMBERED.fullmatch(taken):
        right = f"{numbered['who']}-{numbered['number']}{numbered['rest']}"
        return f"“{taken}” has two numbers; of a pad’s paper {numbered['number']}, write {right}"
    return (
        f"“{taken}” does not say what was cut; write for example oat-card 4 sheets, or oat-card scrap 4 x 9"
    )


_KEPT: Final = re.compile(
    rf"kept\s+(?:(?:(?P<parts>{_COUNT})\s+)?(?P<letter>[A-Z])"
    rf"|(?:(?P<pieces>{_COUNT})\s+of\s+)?(?P<size>[0-9.{FRACTION_SIGNS}].*))"
)


_NO_OF: Final = re.compile(rf"(?P<count>{_COUNT})\s+(?P<size>[0-9]+(?![0-9/])(?:\s+[0-9]+/[0-9]+)?\s*[x×].*)")


def _read_kept(text: str, unit: Unit) -> KeptLine:
    """The count of a size needs its “of”: in ``kept 4 1/2 x 12`` the 4 belongs to the size."""
    found = _KEPT.fullmatch(text)
    if found is None:
        raise MeasureError(
            f"“{text}” does not say what was kept; write for example kept 2 of 60 x 60, or kept 2 B"
        )
    if found["letter"]:
        return KeptLine(int(found["parts"] or 1), None, found["letter"])
    if not found["pieces"] and (of := _NO_OF.fullmatch(found["size"])):
        raise MeasureError(
            f"“{text}” has two numbers before the x; for {of['count']} of that size, write"
            f" kept {of['count']} of {of['size']}"
        )
    return KeptLine(int(found["pieces"] or 1), parse_size(found["size"], unit), "")
