"""What an open bottle still holds, in words: nobody weighs glue."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from batchleaf.facts import Supply
from batchleaf.measure.display import show_number
from batchleaf.views.words import counted, listed, number_of, number_word

_HALF: Final = Fraction(1, 2)
_LOW: Final = Fraction(1, 4)


def there_is(quantity: Fraction, supply: Supply) -> str:
    """How much there is: its level where it is kept so, else a number."""
    return level(quantity, supply) if supply.by_level else number_of(quantity, supply)


def level(quantity: Fraction, supply: Supply) -> str:
    """``1 full bottle``, ``a bottle, half full``, ``2 full bottles and one low``, ``none``."""
    whole, rest = divmod(quantity, 1)
    full = f"{counted(int(whole), f'full {supply.unit}', f'full {supply.units}')}" if whole else ""
    if not rest:
        return full or "none"
    return listed([full, f"one {_open(rest)}"]) if full else f"{_a(supply.unit)}, {_open(rest)}"


def part_of_one(quantity: Fraction, supply: Supply) -> str:
    """``half a bottle``, ``a bottle and a half``, ``a quarter of a bottle``."""
    whole, rest = divmod(quantity, 1)
    parts = {_HALF: "half", _LOW: "a quarter", 3 * _LOW: "three quarters"}
    if not whole and rest in parts:
        return f"{parts[rest]} {'' if rest == _HALF else 'of '}{_a(supply.unit)}"
    if rest in parts:
        several = _a(supply.unit) if whole == 1 else f"{number_word(int(whole))} {supply.units}"
        return f"{several} and {'a half' if rest == _HALF else parts[rest]}"
    if not rest:
        return _a(supply.unit) if whole == 1 else f"{number_word(int(whole))} {supply.units}"
    return f"{show_number(quantity, 2)} {supply.name_of_unit(quantity)}"


def _open(rest: Fraction) -> str:
    """The nearest word; half a bottle is nobody's exact measure."""
    if rest == _HALF:
        return "half full"
    return "low" if rest <= _LOW else "less than half full" if rest < _HALF else "more than half full"


def _a(noun: str) -> str:
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"
