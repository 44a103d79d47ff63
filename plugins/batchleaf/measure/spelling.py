"""Lengths spelt out in full: the text reads back as exactly the same length."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from batchleaf.measure.lengths import Size, Unit, one_spelling, unit_named

_AS_DECIMAL: Final = frozenset({5, 10, 20, 25, 50, 100})
"""Bottoms of fractions that are no mark of an inch rule, and end within two decimals."""


def spell_number(number: Fraction, unit: Unit) -> str | None:
    """``4``, ``4.25`` or ``4 1/3``, or ``None`` where six figures, all that is read, do not hold it."""
    hundredths = number * 100
    metric = unit is not Unit.INCH and hundredths.denominator == 1
    if metric or number.denominator in _AS_DECIMAL:
        whole, rest = divmod(int(hundredths), 100)
        return f"{whole}.{rest:02d}".rstrip("0").rstrip(".")
    whole, part = divmod(number, 1)
    if max(len(str(figures)) for figures in (whole, part.numerator, part.denominator)) > 6:
        return None
    return " ".join(str(one) for one in (whole, part) if one)


def spell_length(length: Fraction, unit: Unit) -> str:
    """``length`` (mm) with its unit: ``108 mm``; in another unit where ``unit`` cannot hold it exactly.

    Raises :class:`ValueError` for a length that no unit holds in six figures.
    """
    # An A6 card in inches has fractions that nobody reads; its millimetres are whole.
    units = sorted((unit, *Unit), key=lambda one: not _is_on_a_rule(length / one.in_mm))
    for one in units:
        spelt = spell_number(length / one.in_mm, one)
        if spelt is not None:
            return f"{spelt} {one.value}"
    raise ValueError(f"{length} mm has no exact spelling")


def _is_on_a_rule(number: Fraction) -> bool:
    """Whether a rule has a mark for it, or two decimals say it."""
    return number.denominator <= 64 or number.denominator == 100


def spell_size(size: Size, unit: Unit) -> str:
    """``44 x 70 mm``; each measure with its own unit where they differ."""
    return spell_lengths((size.width, size.height), unit)


def spell_lengths(lengths: Sequence[Fraction], unit: Unit) -> str:
    """``60 x 60 x 30 mm``; each measure with its own unit where they differ."""
    spelt = [spell_length(length, unit).rpartition(" ") for length in lengths]
    units = {own for *_, own in spelt}
    if len(units) == 1:
        return f"{' x '.join(number for number, *_ in spelt)} {units.pop()}"
    return " x ".join("".join(one) for one in spelt)


def with_unit(text: str, unit: Unit) -> str:
    """A length or a size as written, with the unit that counts for it: ``44 x 70`` is ``44 x 70 mm``."""
    return text if unit_named(one_spelling(text)) else f"{text} {unit.value}"
