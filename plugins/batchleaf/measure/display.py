"""Lengths and areas as a maker reads them off a rule.

The unit a record was written in is shown exactly wherever a few figures can do
it. What cannot be, and the other unit, is rounded down, since a part cut too
large does not fit.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from batchleaf.measure.lengths import INCHES, Size, Unit

RULE_STEP: Final = {
    Unit.INCH: Fraction(1, 16),
    Unit.MM: Fraction(1, 2),
    Unit.CM: Fraction(1, 20),
    Unit.RULE_INCH: Fraction(1, 16),
    Unit.RULE_MM: Fraction(1, 2),
}
"""The finest division that a maker's rule carries, in its own unit."""
SHEET_STEP: Final = {
    Unit.INCH: Fraction(1, 16),
    Unit.MM: Fraction(1, 10),
    Unit.CM: Fraction(1, 100),
    Unit.RULE_INCH: Fraction(1, 16),
    Unit.RULE_MM: Fraction(1, 10),
}
"""How closely the size of a sheet as bought is told, in its own unit."""
_EXACT_BOTTOMS: Final = frozenset({1, 2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64})
MINUS: Final = "\u2212"
NBSP: Final = "\u00a0"


def show_length(length: Fraction, unit: Unit) -> str:
    """``length`` (mm) in ``unit``, without the unit's name: ``210``, ``92.5``, ``4 1/4``, ``4.37``.

    Exact for the fractions of an inch rule, and to a thousandth of an inch or a
    hundredth of a millimetre. Anything finer is cut off: inches, such as those of a
    305 mm sheet (12.0078…), at a mark of the rule, so ``12``. What a reader has chosen
    instead of the unit of the record is at a mark of its rule throughout.
    """
    inside = length / unit.in_mm
    if unit.by_rule:
        return _on_rule(length, unit)
    if unit is Unit.CM:
        return show_number(Fraction(int(inside * 1000), 1000), 3)
    if unit is Unit.MM:
        return _decimal(inside)
    if inside.denominator in _EXACT_BOTTOMS:
        return _mixed(inside)
    return show_number(inside, 3) if 1000 % inside.denominator == 0 else _mixed(rounded_down(inside, unit))


def show_other(length: Fraction, unit: Unit) -> str:
    """``length`` in the other unit, rounded down to a mark of its rule, with the unit's name.

    Beside what a reader has chosen stands what was written, as it is.
    """
    other = unit.other
    shown = show_length(length, other) if unit.by_rule else _on_rule(length, other)
    return f"{shown}{NBSP}{other.word}"


def show_size(size: Size, unit: Unit) -> str:
    """``210 × 148``, without the unit's name."""
    return f"{show_length(size.width, unit)}{NBSP}×{NBSP}{show_length(size.height, unit)}"


def show_other_size(size: Size, unit: Unit) -> str:
    """``8 1/4 × 5 13/16 in``: the other unit, rounded down, or what was written, as :func:`show_other`."""
    other = unit.other
    if unit.by_rule:
        return f"{show_size(size, other)}{NBSP}{other.word}"
    width, height = _on_rule(size.width, other), _on_rule(size.height, other)
    return f"{width}{NBSP}×{NBSP}{height}{NBSP}{other.word}"


def show_sheet_size(size: Size, unit: Unit) -> str:
    """``12 × 12``: a sheet as bought, without the unit's name; in a reader's unit to the nearest."""
    if not unit.by_rule:
        return show_size(size, unit)
    return f"{_nearest(size.width, unit)}{NBSP}×{NBSP}{_nearest(size.height, unit)}"


def show_other_sheet_size(size: Size, unit: Unit) -> str:
    """``304.8 × 304.8 mm``, ``about 8 1/4 × 11 11/16 in``: a sheet as bought in the other unit.

    To the nearest sixteenth or tenth: nobody cuts to it, so it is not rounded down as parts are.
    """
    other = unit.other
    width, height = _nearest(size.width, other), _nearest(size.height, other)
    step = SHEET_STEP[other] * other.in_mm
    about = "about " if size.width % step or size.height % step else ""
    return f"{about}{width}{NBSP}×{NBSP}{height}{NBSP}{other.word}"


def rounded_down(inside: Fraction, unit: Unit) -> Fraction:
    """``inside`` (already in ``unit``) down to the nearest mark of the rule."""
    step = RULE_STEP[unit]
    return inside // step * step


def show_number(number: Fraction, places: int = 4) -> str:
    """A plain number with a thousands comma and at most ``places`` decimals, none idle."""
    scale = 10**places
    whole, rest = divmod(abs(round(number * scale)), scale)
    decimals = f"{rest:0{places}d}".rstrip("0") if places else ""
    sign = MINUS if number < 0 and (whole or rest) else ""
    return f"{sign}{whole:,}.{decimals}" if decimals else f"{sign}{whole:,}"


def show_aligned(numbers: Sequence[Fraction], places: int = 2) -> list[str]:
    """Numbers for one column: with as many decimals, at most ``places``, as the one that needs most."""
    needed = next(n for n in range(places + 1) if n == places or all((x * 10**n) % 1 == 0 for x in numbers))
    return [_with_places(number, needed) for number in numbers]


def _with_places(number: Fraction, places: int) -> str:
    whole, point, decimals = show_number(number, places).partition(".")
    return f"{whole}.{decimals:0<{places}}" if places else f"{whole}{point}{decimals}"


def show_share(part: Fraction, whole: Fraction) -> str:
    """``part`` of ``whole`` in per cent, rounded half up: ``85 %``."""
    return f"{int(part * 100 / whole + Fraction(1, 2))}{NBSP}%" if whole else f"0{NBSP}%"


def _nearest(length: Fraction, unit: Unit) -> str:
    step = SHEET_STEP[unit]
    marks = (length / unit.in_mm / step + Fraction(1, 2)) // 1
    return _mixed(marks * step) if unit in INCHES else _decimal(marks * step)


def _on_rule(length: Fraction, unit: Unit) -> str:
    inside = rounded_down(length / unit.in_mm, unit)
    if not inside:
        return f"under{NBSP}{_mixed(RULE_STEP[unit]) if unit in INCHES else _decimal(RULE_STEP[unit])}"
    return _mixed(inside) if unit in INCHES else _decimal(inside)


def _mixed(number: Fraction) -> str:
    whole, rest = divmod(number, 1)
    if not rest:
        return str(whole)
    fraction = f"{rest.numerator}/{rest.denominator}"
    return f"{whole}{NBSP}{fraction}" if whole else fraction


def _decimal(number: Fraction) -> str:
    """At most two decimals, cut off and not rounded up."""
    hundredths = int(number * 100)
    whole, rest = divmod(hundredths, 100)
    return f"{whole}.{rest:02d}".rstrip("0").rstrip(".") if rest else str(whole)
