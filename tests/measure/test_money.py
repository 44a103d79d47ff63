"""Reading, sharing and showing money."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.errors import MeasureError
from batchleaf.measure.money import Currency, parse_money, rounded, share

EURO = Currency.of("EUR")


@pytest.mark.parametrize(
    ("code", "digits"), [("USD", 2), ("EUR", 2), ("GBP", 2), ("JPY", 0), ("KWD", 3), ("IQD", 3)]
)
def test_minor_units_are_those_of_iso_4217(code: str, digits: int) -> None:
    """ISO 4217, list one: the digits of the minor unit (IQD is where other tables differ)."""
    assert Currency.of(code).digits == digits


@pytest.mark.parametrize(
    ("exact", "minor"),
    [("267.5", 268), ("100.5", 101), ("267.49", 267), ("0.5", 1), ("-1.5", -1), ("-1.7", -2), ("-0.2", 0)],
)
def test_halves_are_rounded_up(exact: str, minor: int) -> None:
    """Council Regulation (EC) No 1103/97, article 5: 2.675 becomes 2.68, 1.005 becomes 1.01."""
    assert rounded(Fraction(exact)) == minor


def test_a_hundred_shared_in_three_is_33_34_and_twice_33_33() -> None:
    """The remainder goes to the first of equals, and nothing is lost."""
    assert share(10000, [Fraction(1)] * 3) == (3334, 3333, 3333)


@given(
    st.integers(0, 10**7),
    st.lists(st.fractions(min_value=0, max_value=1000, max_denominator=97), min_size=1, max_size=12),
)
def test_shares_sum_to_the_whole(total: int, weights: list[Fraction]) -> None:
    """Whatever the weights, all minor units are given, and none is off by a whole one."""
    shares = share(total, weights)
    whole = sum(weights)
    if not whole:
        assert set(shares) == {0}
        return
    assert sum(shares) == total
    assert all(abs(part - total * weight / whole) < 1 for part, weight in zip(shares, weights, strict=True))


@pytest.mark.parametrize(
    ("text", "minor"), [("9.75", 975), ("€9.75", 975), ("9.75 EUR", 975), ("12", 1200), ("0.5", 50)]
)
def test_an_amount_is_read_with_or_without_its_currency(text: str, minor: int) -> None:
    """The sign and the code of the archive's own currency may stand beside the figure."""
    assert parse_money(text, EURO) == minor


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("1,250.00", "“1,250.00” has a comma; write 1250.00"),
        ("5,40", "“5,40” has a comma; write 5.40"),
        ("$9.75", "“$9.75” is in $, and all money here is in EUR; write what it was in EUR"),
        ("9.755", "“9.755” has more decimals than EUR has (2)"),
        ("9.75 usd", "“9.75 usd” is in USD, and all money here is in EUR; write what it was in EUR"),
        ("9.75 now", "“9.75 now” is no amount of money in EUR; write for example 9.75"),
        ("-3", "“-3” is below nothing; write for example 9.75"),
    ],
)
def test_another_currency_or_a_comma_is_told(text: str, sentence: str) -> None:
    """Nothing is guessed about money."""
    with pytest.raises(MeasureError) as raised:
        parse_money(text, EURO)
    assert str(raised.value) == sentence


def test_money_is_shown_with_its_digits() -> None:
    """Columns carry figures alone, sentences the sign; a yen has no decimals."""
    assert EURO.show(-1273456) == "−12,734.56"
    assert EURO.plain(-1273456) == "-12734.56"
    assert EURO.show_with_sign(73) == "0.73\u00a0€"
    assert Currency.of("JPY").show(1500) == "1,500"


def test_nothing_has_no_sign() -> None:
    """A minus stands before less than nothing alone, down to the last minor unit."""
    euro, yen = Currency.of("EUR"), Currency.of("JPY")
    assert [euro.plain(minor) for minor in (-1, 0, 1)] == ["-0.01", "0.00", "0.01"]
    assert [yen.plain(minor) for minor in (-1, 0, 1)] == ["-1", "0", "1"]
