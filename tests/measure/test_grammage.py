"""The weight of paper, against published figures."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.grammage import grammage_of, parse_grammage


@pytest.mark.parametrize(
    ("text", "published", "within"),
    [
        # A paper guide of Xerox, table A-2, multiplies by rounded factors: 1.4802 and 2.7042.
        ("90 lb offset", "133.218", "0.02"),
        ("100 lb cover", "270.42", "0.02"),
        # Worked out from the basic sizes, to the hundredth.
        ("65 lb cover", "175.77", "0.005"),
        ("80 lb cover", "216.33", "0.005"),
        ("110 lb index", "198.88", "0.005"),
        ("20 lb bond", "75.19", "0.005"),
    ],
)
def test_pounds_with_their_basis(text: str, published: str, within: str) -> None:
    """Pounds of 500 sheets of the basic size, in g/m²."""
    assert abs(parse_grammage(text) - Fraction(published)) <= Fraction(within)


def test_a_letter_sheet_of_20_lb_bond_weighs_a_hundredth_of_a_pound() -> None:
    """500 sheets of 17 x 22 in weigh 20 lb, and each gives four letter sheets (identity)."""
    square_metres = Fraction("8.5") * 11 * Fraction("0.0254") ** 2
    assert grammage_of(Fraction(20), "bond") * square_metres == Fraction("4.5359237")


@pytest.mark.parametrize("text", ["216 g/m²", "216 g/m2", "216gsm", "216 g", "216", "216 G/M²"])
def test_grams_are_taken_as_they_are_written(text: str) -> None:
    """With or without the square metre."""
    assert parse_grammage(text) == 216


@pytest.mark.parametrize(
    "text", ["80 lb cover", "80lb cover", "80# Cover", "80 lbs. cover", "80 pounds cover"]
)
def test_pounds_are_spelt_in_many_ways(text: str) -> None:
    """As packets have it."""
    assert parse_grammage(text) == grammage_of(Fraction(80), "cover")


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("80 lb", "“80 lb” has no basis: cover, text or index? write for example 80 lb cover"),
        ("80#", "“80#” has no basis: cover, text or index? write for example 80 lb cover"),
        ("80 lb linen", "“linen” is no basis of pounds; write cover, text, index, bristol, bond or tag"),
        ("heavy", "“heavy” is no weight of paper; write for example 216 g/m², or 80 lb cover"),
        ("0 g/m²", "“0 g/m²” is no weight of paper; it lies between 5 and 5000 g/m²"),
        ("80 kg", "“80 kg” is no weight of paper; write for example 216 g/m², or 80 lb cover"),
        ("999999 lb cover", "“999999 lb cover” is no weight of paper; it lies between 5 and 5000 g/m²"),
        ("x lb cover", "“x” is not a number; write for example 4, 4.25 or 4 1/4"),
        (" lb cover", "“lb cover” does not say how many pounds; write for example 80 lb cover"),
    ],
)
def test_what_is_no_weight(text: str, sentence: str) -> None:
    """A sentence that says what to write."""
    with pytest.raises(MeasureError) as told:
        parse_grammage(text)
    assert str(told.value) == sentence
