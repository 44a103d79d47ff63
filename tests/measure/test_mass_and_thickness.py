"""What something weighs and how thick it is, as makers write it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.mass import GRAMS_PER_OUNCE, parse_mass
from batchleaf.measure.thickness import parse_thickness


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("0.3 mm", "0.3"),
        (".3mm", "0.3"),
        ("12 pt", "0.3048"),
        ("12 points", "0.3048"),
        ("12 mil", "0.3048"),
        ("0.012 in", "0.3048"),
        ('0.012"', "0.3048"),
        ("1/8 in", "3.175"),
        ("300 µm", "0.3"),
        ("300 microns", "0.3"),
        ("0.03 cm", "0.3"),
        ("0.007 in", "0.1778"),
    ],
)
def test_a_point_is_a_thousandth_of_an_inch(text: str, mm: str) -> None:
    """In mm, exactly; also what is thinner than anything that can be cut."""
    assert parse_thickness(text) == Fraction(mm)


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("0.4 g", "0.4"),
        ("400 mg", "0.4"),
        ("1 oz", "28.349523125"),
        ("3.5 oz", "99.2233309375"),
        ("3 1/2 oz", "99.2233309375"),
        ("1 lb", "453.59237"),
        ("1.2 kg", "1200"),
        ("2 grams", "2"),
    ],
)
def test_an_ounce_is_a_sixteenth_of_a_pound(text: str, grams: str) -> None:
    """In grams, exactly (international pound, 1 July 1959; NIST SP 447, appendix 5)."""
    assert parse_mass(text) == Fraction(grams)
    assert Fraction("453.59237") == GRAMS_PER_OUNCE * 16


@pytest.mark.parametrize(
    "text", ["", "pt", "3", "3 lb cover", "-1 mm", "1,000 mm", "0 mm", "9 m", "1/0 mm", "½"]
)
def test_what_is_no_thickness_is_told(text: str) -> None:
    """Nothing is guessed where no unit is written."""
    with pytest.raises(MeasureError, match=r"[a-z]{3}"):
        parse_thickness(text)


@pytest.mark.parametrize(
    "text", ["", "g", "3", "3 stone", "-1 g", "1,000 g", "0 g", "999999 kg", "1/0 g", "½"]
)
def test_what_is_no_weight_is_told(text: str) -> None:
    """As with a thickness."""
    with pytest.raises(MeasureError, match=r"[a-z]{3}"):
        parse_mass(text)
