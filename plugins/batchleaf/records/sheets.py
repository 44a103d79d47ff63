"""What a sheet is: its sides, its trim, its colours, the papers of a pad."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Direction, PaperSide, Trim
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.colours import Colour
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_length
from batchleaf.records.grammar import read_unit

_EDGES: Final = ("left", "right", "top", "bottom")
_DIRECTION: Final = re.compile(r"(?P<look>.*?)[,\s]*\b(?P<way>one|two|any)[\s-]?way", re.IGNORECASE)
_MEANT_FOR_ONE: Final = re.compile(r"(?:\S+\s+){0,2}(?:\S*ways?|turn(?:s|ed|ing)?)(?:\s+\S+)?", re.IGNORECASE)
"""What stands behind a comma and speaks of ways or turning."""
_CANNOT_BE_A_LOOK: Final = re.compile(
    r"(?:side|both|three|four|either|every|no)[\s-]?ways?|(?:no|not|do not|don.t|may|can)?\s*turn(?:s|ed)?",
    re.IGNORECASE,
)


def read_side(text: str) -> PaperSide:
    """``rows of small fish, one-way``: what a side looks like, and how its pattern lies.

    Raises :class:`MeasureError` where the last words were meant for a direction and are none.
    """
    if said := _DIRECTION.fullmatch(text):
        return PaperSide(said["look"].strip(), Direction(f"{said['way'].lower()}-way"))
    _, comma, last = (piece.strip() for piece in text.rpartition(","))
    meant = _MEANT_FOR_ONE if comma else _CANNOT_BE_A_LOOK
    if meant.fullmatch(last):
        raise MeasureError(f"“{last}” is not how a pattern lies; write one-way, two-way or any-way")
    return PaperSide(text)


def read_trim(text: str, sheet: Size, unit: Unit) -> Trim:
    """``left 3, bottom 10``: what is cut off each edge. Raises :class:`MeasureError`."""
    edges: dict[str, Fraction] = {}
    for piece in (piece.strip() for piece in text.split(",")):
        edge, _, length = piece.partition(" ")
        if edge.lower() not in _EDGES or not length.strip():
            raise MeasureError(
                f"“{piece}” is no edge with what is cut off it; write for example top 1/2 in,"
                " or left 3, bottom 10"
            )
        if edge.lower() in edges:
            raise MeasureError(f"“{edge.lower()}” is trimmed twice here; once is enough")
        edges[edge.lower()] = parse_length(length, unit)
    trim = Trim(**edges)
    if trim.left + trim.right >= sheet.width or trim.top + trim.bottom >= sheet.height:
        raise MeasureError(f"a trim of “{text}” leaves nothing of the sheet")
    return trim


@dataclass(frozen=True, slots=True)
class Colours:
    """What a record says of colours; ``about``: they were picked from a photo, or by eye."""

    colours: tuple[str, ...] = ()
    about: bool = False


def read_colours(text: str) -> Colours:
    """``#c3d6cf #2f4858``, ``about #c3d6cf``: the main one first. Raises :class:`MeasureError`."""
    first, *rest = re.split(r"[,\s]+", text.strip())
    about = first.lower() == "about"
    if about and not rest:
        raise MeasureError(f"“{text}” names no colour; write for example about #c3d6cf, in quotes")
    found = rest if about else [first, *rest]
    return Colours(tuple(dict.fromkeys(str(Colour.of(colour)) for colour in found)), about)


def read_designs(text: str) -> tuple[int, int]:
    """``12 x 2``: twelve papers, two sheets of each. Raises :class:`MeasureError`."""
    found = re.fullmatch(r"([0-9]{1,3})\s*[x×]\s*([0-9]{1,3})", text)
    if found is None or not int(found[1]) or not int(found[2]):
        raise MeasureError(
            f"“{text}” does not say how many papers a pad holds, and how often; write for example 12 x 2"
        )
    return int(found[1]), int(found[2])


def read_counted_unit(text: str, size: Size | None) -> tuple[str, str]:
    """What the supply is counted in, one and several. Raises :class:`MeasureError`."""
    unit, units = read_unit(text)
    if size and is_measured(unit):
        raise MeasureError(
            f"a supply with a size is counted, and “{unit}” is a measure; leave unit out,"
            " and write the measure behind the size"
        )
    return unit, units


def read_pack(text: str, unit: str, designs: int) -> int:
    """How many a pack holds. Raises :class:`MeasureError`."""
    if not re.fullmatch(r"[0-9]{1,5}", text) or not int(text):
        raise MeasureError(f"“{text}” is not how many a pack holds; write a whole number, like 25")
    if unit == "pack":
        raise MeasureError("this supply is counted in packs already; leave pack out, or write another unit")
    if designs:
        raise MeasureError("a pack of a pad is the pad, and designs says what it holds; leave pack out")
    return int(text)
