"""Exact lengths and sizes.

Every length inside Batchleaf is a :class:`~fractions.Fraction` of millimetres.
One inch is 25.4 mm exactly (international yard, 1 July 1959; NIST SP 447,
appendix 5), so inches, thirds and millimetres add up without rounding.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.measure.errors import MeasureError

MM_PER_INCH: Final = Fraction(127, 5)
LONGEST: Final = Fraction(100_000)
"""Nothing on a craft table is longer than a hundred metres, in mm."""
SHORTEST: Final = Fraction(1, 5)
"""Nothing shorter can be cut, in mm."""


class Unit(StrEnum):
    """A unit of length that a record may be written in.

    The last two are for readers only: lengths that were written in the other unit, at the marks of a
    rule. No record names them.
    """

    MM = "mm"
    CM = "cm"
    INCH = "in"
    RULE_MM = "mm by rule"
    RULE_INCH = "in by rule"

    @property
    def in_mm(self) -> Fraction:
        """How many millimetres one of this unit is, exactly."""
        return _IN_MM[self]

    @property
    def word(self) -> str:
        """What stands behind a figure: ``mm``, ``cm``, ``in``."""
        return self.value.removesuffix(" by rule")

    @property
    def by_rule(self) -> bool:
        """Whether lengths are shown at the marks of a rule, and not as they were written."""
        return self.word != self.value

    @property
    def other(self) -> Unit:
        """The unit that is shown beside this one."""
        return Unit.MM if self in INCHES else Unit.INCH

    @property
    def for_readers(self) -> Unit:
        """The other unit, for a page in it throughout."""
        return Unit.RULE_MM if self is Unit.INCH else Unit.RULE_INCH


WRITTEN: Final = (Unit.MM, Unit.CM, Unit.INCH)
"""The units that a record may name."""
INCHES: Final = frozenset({Unit.INCH, Unit.RULE_INCH})
_IN_MM: Final = {
    Unit.MM: Fraction(1),
    Unit.CM: Fraction(10),
    Unit.INCH: MM_PER_INCH,
    Unit.RULE_MM: Fraction(1),
    Unit.RULE_INCH: MM_PER_INCH,
}


@dataclass(frozen=True, slots=True)
class Size:
    """A width and a height in mm; ``x`` runs along the first measure."""

    width: Fraction
    height: Fraction

    @property
    def area(self) -> Fraction:
        """Square millimetres."""
        return self.width * self.height

    @property
    def turned(self) -> Size:
        """The same piece after a quarter turn."""
        return Size(self.height, self.width)

    @property
    def upright(self) -> Size:
        """The same piece with its shorter side first: one name for one shape."""
        return self if self.width <= self.height else self.turned


_VULGAR: Final = {
    "¼": "1/4", "½": "1/2", "¾": "3/4", "⅐": "1/7", "⅑": "1/9", "⅒": "1/10",
    "⅓": "1/3", "⅔": "2/3", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
FRACTION_SIGNS: Final = "".join(_VULGAR)
"""Every sign that stands for a fraction by itself."""
_SPACES: Final = str.maketrans(dict.fromkeys("\u00a0\u2009\u202f\u2007\t", " "))
_UNIT_WORDS: Final = {
    "mm": Unit.MM, "millimetre": Unit.MM, "millimetres": Unit.MM, "millimeters": Unit.MM,
    "cm": Unit.CM, "centimetre": Unit.CM, "centimetres": Unit.CM, "centimeters": Unit.CM,
    "in": Unit.INCH, "inch": Unit.INCH, "inches": Unit.INCH,
    '"': Unit.INCH, "”": Unit.INCH, "“": Unit.INCH, "″": Unit.INCH, "''": Unit.INCH,
}  # fmt: skip
# At most six digits a number: bounded, so that no text can ask for a huge power.
_NUMBER: Final = re.compile(
    r"(?:(?P<whole>[0-9]{1,6})(?:[ -]+))?(?P<top>[0-9]{1,6})/(?P<bottom>[0-9]{1,6})"
    r"|(?P<decimal>[0-9]{1,6}(?:\.[0-9]{1,6})?|\.[0-9]{1,6})"
)
_IMPROPER: Final = re.compile(
    r"(?<![0-9][ -])(?<![0-9./])(?P<top>[0-9]{1,6})/(?P<bottom>[0-9]{1,6})(?![0-9/])"
)
_BETWEEN: Final = re.compile(r"\s*(?:[x×X*]|\bby\b)\s*")


def one_spelling(text: str) -> str:
    """``text`` with one spelling for each fraction, dash and space."""
    out = text.translate(_SPACES)
    for sign, spelt in _VULGAR.items():
        out = out.replace(sign, f" {spelt}")
    return out.replace("\u2044", "/").replace("\u2013", "-").strip()


def _split_unit(plain: str) -> tuple[str, str]:
    found = re.fullmatch(r"(?P<number>[0-9./ -]*[0-9])\s*(?P<unit>[^0-9\s./-]*)\.?", plain)
    if found is None:
        raise MeasureError(f"“{plain}” is not a length; write for example 4 1/4 in, 4.25 in or 108 mm")
    return found["number"], found["unit"].lower()


def parse_number(text: str) -> Fraction:
    """A plain number or mixed fraction: ``4``, ``4.25``, ``4 1/4``, ``4-1/4``, ``4¼``.

    Raises :class:`MeasureError` with a sentence for the maker.
    """
    plain = one_spelling(text)
    if re.fullmatch(r"[0-9]{1,6},[0-9]{1,6}", plain):
        raise MeasureError(f"“{text.strip()}” has a comma; write {plain.replace(',', '.')} with a point")
    found = _NUMBER.fullmatch(plain)
    if found is None:
        raise MeasureError(f"“{text.strip()}” is not a number; write for example 4, 4.25 or 4 1/4")
    if found["decimal"] is not None:
        whole, _, places = found["decimal"].partition(".")
        return Fraction(int((whole or "0") + places), 10 ** len(places))
    if int(found["bottom"]) == 0:
        raise MeasureError(f"“{text.strip()}” divides by nothing")
    if found["whole"] is None and int(found["top"]) >= int(found["bottom"]) > 1:
        raise MeasureError(_which_of_two(text.strip(), found["top"], found["bottom"]))
    return int(found["whole"] or 0) + Fraction(int(found["top"]), int(found["bottom"]))


def _which_of_two(text: str, top: str, bottom: str) -> str:
    """``11/2`` is five and a half, and as often a space is missing: one and a half."""
    whole, part = divmod(int(top), int(bottom))
    as_read = f"{whole} {part}/{bottom}" if part else str(whole)
    spaced = f"{top[:-1]} {top[-1]}/{bottom}"
    if len(top) > 1 and 0 < int(top[-1]) < int(bottom):
        return f"“{text}” may be {as_read} or {spaced}; write the one that is meant, with a space"
    return f"“{text}” is more than a whole; write {as_read}"


def with_wholes(text: str) -> str:
    """Each improper fraction of ``text`` with its whole apart, as programs do not write it.

    >>> with_wholes("17/2 x 11/3 in")
    '8 1/2 x 3 2/3 in'
    """
    return _IMPROPER.sub(_whole_apart, one_spelling(text))


def _whole_apart(found: re.Match[str]) -> str:
    top, bottom = int(found["top"]), int(found["bottom"])
    if not bottom or top < bottom:
        return found[0]
    whole, rest = divmod(top, bottom)
    return f"{whole} {rest}/{bottom}" if rest else str(whole)


def parse_length(text: str, unit: Unit) -> Fraction:
    """The length that ``text`` means, in mm; ``unit`` counts where the text names none.

    >>> parse_length("4-1/4", Unit.INCH)
    Fraction(2159, 20)

    Raises :class:`MeasureError`, also for what is too small to be cut.
    """
    return _length(text, unit, unit_written=False)


def _length(text: str, unit: Unit, *, unit_written: bool) -> Fraction:
    """The length; ``unit_written``: ``unit`` was written once, for this length and another."""
    if re.search(r"[0-9],[0-9]", text):
        raise MeasureError(f"“{text.strip()}” has a comma; write it with a point, like 4.25")
    if text.strip().startswith(("-", "\u2212")):
        raise MeasureError(f"“{text.strip()}” lies below nothing; a length is above 0")
    number, word = _split_unit(one_spelling(text))
    if word and word not in _UNIT_WORDS:
        raise MeasureError(f"“{word}” in “{text.strip()}” is not a unit of length; write mm, cm or in")
    length = parse_number(number) * (_UNIT_WORDS[word] if word else unit).in_mm
    if not 0 < length <= LONGEST:
        raise MeasureError(
            f"“{text.strip()}” is no length for a table; it has to lie above 0 and below 100 m"
        )
    _check_not_tiny(text.strip(), length, unit, unit_written=unit_written or bool(word))
    return length


def _check_not_tiny(text: str, length: Fraction, unit: Unit, *, unit_written: bool) -> None:
    """A length below a millimetre whose unit nobody wrote was rather meant in inches."""
    if length < 1 and not unit_written and unit is not Unit.INCH:
        raise MeasureError(
            f"“{text}” is {float(length):.3g} mm, too small to cut; is “unit: in” missing, or “in” after it?"
        )
    if length < SHORTEST:
        raise MeasureError(f"“{text}” is too small to cut; a length is at least {float(SHORTEST):g} mm")


def parse_size(text: str, unit: Unit) -> Size:
    """Two lengths with ``x``, ``×`` or ``by`` between: ``5 1/2 x 8 1/2 in``.

    A unit written once, at the end, counts for both.
    """
    lengths = parse_lengths(text, unit)
    if len(lengths) != 2:
        raise MeasureError(f"“{text.strip()}” is not a size; write two lengths with x between, like 44 x 70")
    return Size(*lengths)


def parse_lengths(text: str, unit: Unit) -> tuple[Fraction, ...]:
    """Lengths in mm with ``x``, ``×`` or ``by`` between: ``60 x 60 x 30``.

    A unit written once, at the end, counts for all. Raises :class:`MeasureError`.
    """
    pieces = _BETWEEN.split(one_spelling(text))
    if len(pieces) < 2 or not all(pieces):
        raise MeasureError(f"“{text.strip()}” is not a size; write two lengths with x between, like 44 x 70")
    named = unit_named(pieces[-1])
    return tuple(_length(piece, named or unit, unit_written=named is not None) for piece in pieces)


def unit_named(text: str) -> Unit | None:
    """The unit of length that ``text`` ends in, if it names one."""
    last = re.search(r"[^0-9\s./-]+$", text.strip())
    return _UNIT_WORDS.get(last[0].lower().rstrip(".")) if last else None
