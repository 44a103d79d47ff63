"""Amounts of a supply: counted things and measured stuff, each in the supply's own unit."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import one_spelling, parse_number
from batchleaf.measure.slips import refuse_slips

_MEASURED: Final[dict[str, tuple[str, Fraction]]] = {
    "mm": ("length", Fraction(1)),
    "cm": ("length", Fraction(10)),
    "m": ("length", Fraction(1000)),
    "in": ("length", Fraction(127, 5)),
    "ft": ("length", Fraction(127, 5) * 12),
    "yd": ("length", Fraction(127, 5) * 36),
    "ml": ("volume", Fraction(1)),
    "cl": ("volume", Fraction(10)),
    "l": ("volume", Fraction(1000)),
    "g": ("mass", Fraction(1)),
    "kg": ("mass", Fraction(1000)),
}
"""Unit → what it measures, and how much of that in the smallest unit."""


_SPELT: Final = {
    "millimetre": "mm", "millimeter": "mm", "centimetre": "cm", "centimeter": "cm",
    "metre": "m", "meter": "m", "inch": "in", "inche": "in", '"': "in", "”": "in", "″": "in",
    "foot": "ft", "feet": "ft", "′": "ft", "yard": "yd", "litre": "l", "liter": "l",
    "millilitre": "ml", "milliliter": "ml", "gram": "g", "kilogram": "kg",
}  # fmt: skip
"""Other words and signs for a unit, without the s of the plural."""


def _unit_of(word: str) -> str:
    """The unit that a word means: ``inches`` is ``in``; a word that is none stays as it is."""
    return _SPELT.get(word.lower().rstrip(".").removesuffix("s"), word.rstrip("."))


_WORD: Final = r"(?:[^\W\d_][\w-]*\.?|[\"”″′])"


def is_measured(unit: str) -> bool:
    """True for a metre or a gram, False for a counted thing such as a sheet."""
    return unit in _MEASURED


def measure_of(unit: str) -> str:
    """``length``, ``volume`` or ``mass``; nothing for a counted thing."""
    return _MEASURED[unit][0] if is_measured(unit) else ""


def mm_in(unit: str) -> Fraction:
    """How many mm one of a unit of length is. Raises :class:`ValueError` for any other unit."""
    if measure_of(unit) != "length":
        raise ValueError(f"{unit} is no unit of length")
    return _MEASURED[unit][1]


def plural(noun: str) -> str:
    """The usual English plural of a counted thing: sheets, boxes. A unit of measure stays as it is."""
    if is_measured(noun):
        return noun
    if re.search(r"(s|x|z|ch|sh)$", noun):
        return f"{noun}es"
    if re.search(r"[^aeiou]y$", noun):
        return f"{noun[:-1]}ies"
    return f"{noun}s"


def unit_in(text: str) -> str:
    """The unit that an amount is written in, in the singular; nothing where it names none."""
    found = re.search(rf"{_WORD}$", one_spelling(text))
    if found is None:
        return ""
    word = _unit_of(found[0])
    return word if is_measured(word) else word.removesuffix("s")


def parse_amount(text: str, unit: str, units: str) -> Fraction:
    """How many of ``unit`` the text says; what is counted may go without its word.

    ``140 mm`` of something kept in metres is 7/50. Raises :class:`MeasureError`.
    """
    refuse_slips(text, f"4 {units}")
    found = re.fullmatch(rf"(?P<number>[0-9.][0-9./ -]*?)\s*(?P<word>{_WORD})?", one_spelling(text))
    if found is None:
        raise MeasureError(f"“{text.strip()}” is no amount; write for example 4 {units}")
    number, word = parse_number(found["number"]), _unit_of(found["word"] or unit)
    if found["word"] is None and is_measured(unit):
        raise MeasureError(f"“{text.strip()}” has no unit; write what it is in, like {text.strip()} {unit}")
    if word in (unit, units) or found["word"] in (unit, units):
        return number
    if is_measured(word) and is_measured(unit) and _MEASURED[word][0] == _MEASURED[unit][0]:
        return number * _MEASURED[word][1] / _MEASURED[unit][1]
    how_many = f"; write how many {units} that is" if is_measured(unit) and not is_measured(word) else ""
    raise MeasureError(f"“{text.strip()}” is in {word}, and this supply is kept in {units}{how_many}")
