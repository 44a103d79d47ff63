"""Reading amounts, and times."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.measure.amounts import parse_amount, plural, unit_in
from batchleaf.measure.durations import parse_film_time, parse_minutes, show_film_time, show_minutes
from batchleaf.measure.errors import MeasureError


@pytest.mark.parametrize(
    ("text", "unit", "amount"),
    [("140 mm", "m", "7/50"), ("4 sheets", "sheet", "4"), ("1 sheet", "sheet", "1"), ("2", "piece", "2"),
     ("24 in", "m", "0.6096"), ("2 1/2 ft", "in", "30"), ("5 ml", "l", "1/200"),
     ("2⅖ m", "m", "2.4"), ("⅐ m", "m", "1/7"), (".5\u00a0m", "m", "1/2")],
)  # fmt: skip
def test_an_amount_is_turned_into_the_supplys_unit(text: str, unit: str, amount: str) -> None:
    """Exactly, whatever unit of the same kind it was written in."""
    assert parse_amount(text, unit, plural(unit)) == Fraction(amount)


@pytest.mark.parametrize(
    ("text", "unit", "sentence"),
    [
        ("4 pads", "sheet", "“4 pads” is in pads, and this supply is kept in sheets"),
        ("4 g", "m", "“4 g” is in g, and this supply is kept in m"),
        ("some", "sheet", "“some” is no amount; write for example 4 sheets"),
    ],
)
def test_another_kind_of_unit_is_told(text: str, unit: str, sentence: str) -> None:
    """Grams are no metres, and pads are no sheets."""
    with pytest.raises(MeasureError) as raised:
        parse_amount(text, unit, plural(unit))
    assert str(raised.value) == sentence


@pytest.mark.parametrize(
    ("one", "several"), [("sheet", "sheets"), ("box", "boxes"), ("m", "m"), ("lady", "ladies")]
)
def test_things_have_their_plural(one: str, several: str) -> None:
    """Units of measure stay as they are."""
    assert plural(one) == several


@pytest.mark.parametrize(
    ("text", "minutes"),
    [
        ("3 h 10", 190),
        ("3:10", 190),
        ("3.5 h", 210),
        ("0.25 hours", 15),
        ("3 h", 180),
        ("50 min", 50),
        ("2 h 50 min", 170),
        ("75 minutes", 75),
        ("1 Hour 5", 65),
    ],
)
def test_time_at_the_table(text: str, minutes: int) -> None:
    """Hours and minutes as a maker writes them, shown the same way."""
    assert parse_minutes(text) == minutes
    assert parse_minutes(show_minutes(minutes)) == minutes


@pytest.mark.parametrize(("text", "seconds"), [("1:05", 65), ("0:00", 0), ("1:02:40", 3760)])
def test_time_in_a_film(text: str, seconds: int) -> None:
    """Minutes and seconds, with hours where there are any."""
    assert parse_film_time(text) == seconds
    assert show_film_time(seconds) == text


@pytest.mark.parametrize(("text", "unit"), [("4 sheets", "sheet"), ("2½ m", "m"), ("½", ""), ("3", "")])
def test_the_unit_of_an_amount(text: str, unit: str) -> None:
    """In the singular; a sign for a fraction is none."""
    assert unit_in(text) == unit
