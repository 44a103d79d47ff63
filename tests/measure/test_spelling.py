"""Lengths spelt out."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.lengths import LONGEST, SHORTEST, WRITTEN, Size, Unit, parse_length, parse_size
from batchleaf.measure.spelling import spell_length, spell_size, with_unit

LENGTHS = st.builds(
    lambda whole, top, bottom, unit: (whole + Fraction(top, bottom)) * unit.in_mm,
    st.integers(0, 3000),
    st.integers(1, 999),
    st.integers(1, 999),
    st.sampled_from(WRITTEN),
).filter(lambda length: SHORTEST <= length <= LONGEST)


@pytest.mark.parametrize(
    ("text", "unit", "spelt"),
    [
        ("4 1/4", Unit.INCH, "4 1/4 in"),
        ("4.25 in", Unit.INCH, "4 1/4 in"),
        ("3.47 in", Unit.INCH, "3.47 in"),
        ("1/3", Unit.INCH, "1/3 in"),
        ("92.5", Unit.MM, "92.5 mm"),
        ("210", Unit.MM, "210 mm"),
        ("4 1/3 in", Unit.MM, "110 1/15 mm"),
        ("105 mm", Unit.INCH, "105 mm"),
        ("20", Unit.CM, "20 cm"),
    ],
)
def test_spells_as_a_maker_writes(text: str, unit: Unit, spelt: str) -> None:
    """Fractions for the marks of an inch rule, decimals for millimetres, exact fractions for the rest."""
    assert spell_length(parse_length(text, unit), unit) == spelt


@given(length=LENGTHS, unit=st.sampled_from(WRITTEN), other=st.sampled_from(Unit))
def test_reads_back_as_the_same_length(length: Fraction, unit: Unit, other: Unit) -> None:
    """What is spelt out means exactly the same, whatever unit counts where it is read."""
    assert parse_length(spell_length(length, unit), other) == length


@given(width=LENGTHS, height=LENGTHS, unit=st.sampled_from(WRITTEN), other=st.sampled_from(Unit))
def test_sizes_read_back_too(width: Fraction, height: Fraction, unit: Unit, other: Unit) -> None:
    """A size keeps both of its measures, also where each needs a unit of its own."""
    size = Size(width, height)
    assert parse_size(spell_size(size, unit), other) == size


@pytest.mark.parametrize(
    ("text", "full"),
    [("44 x 70", "44 x 70 mm"), ("5 ½", "5 ½ mm"), ("5 1/2 in", "5 1/2 in"), ("3 x 4”", "3 x 4”")],
)
def test_writes_the_unit_that_counts(text: str, full: str) -> None:
    """A unit is added where none is written, and only there."""
    assert with_unit(text, Unit.MM) == full
