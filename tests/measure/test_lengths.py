"""Reading and showing lengths."""

from __future__ import annotations

import contextlib
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.display import (
    RULE_STEP,
    show_aligned,
    show_length,
    show_number,
    show_other,
    show_other_sheet_size,
    show_other_size,
    show_sheet_size,
    show_size,
)
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import (
    MM_PER_INCH,
    WRITTEN,
    Size,
    Unit,
    parse_length,
    parse_lengths,
    parse_number,
    parse_size,
    with_wholes,
)

NBSP = "\u00a0"


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ('4 1/4"', "17/4"),
        ("4-1/4", "17/4"),
        ("4¼", "17/4"),
        ("4 1/4 in", "17/4"),
        ("4.25", "17/4"),
        ("5 ½”", "11/2"),
        ('1/8"', "1/8"),
        ("1⁄4", "1/4"),
        ("3 2/3", "11/3"),
        ("4\u00a01/4", "17/4"),
        ("4\u20091/4 inches", "17/4"),
        (".5", "1/2"),
        ("108 mm", "540/127"),
    ],
)
def test_a_length_is_read_as_the_trade_writes_it(text: str, inches: str) -> None:
    """4-1/4 is 4.25 and not 3.75; a unit that is written counts (common practice)."""
    assert parse_length(text, Unit.INCH) == Fraction(inches) * MM_PER_INCH


def test_an_inch_is_exactly_25_4_mm() -> None:
    """International yard, 1 July 1959 (NIST SP 447, appendix 5)."""
    assert parse_length("1 in", Unit.MM) == Fraction("25.4")


def test_a_third_of_eleven_inches_loses_nothing() -> None:
    """Three thirds of a letter sheet are the letter sheet."""
    assert 3 * parse_length("3 2/3", Unit.INCH) == parse_length("11", Unit.INCH)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("4,25", "“4,25” has a comma; write it with a point, like 4.25"),
        ("4 1/4 ft", "“ft” in “4 1/4 ft” is not a unit of length; write mm, cm or in"),
        ("0", "“0” is no length for a table; it has to lie above 0 and below 100 m"),
        ("1/0", "“1/0” divides by nothing"),
        ("four", "“four” is not a length; write for example 4 1/4 in, 4.25 in or 108 mm"),
        ("-4", "“-4” lies below nothing; a length is above 0"),
        ("1e9", "“1e9” is not a length; write for example 4 1/4 in, 4.25 in or 108 mm"),
        ("3/4", "“3/4” is 0.75 mm, too small to cut; is “unit: in” missing, or “in” after it?"),
        ("0.1 mm", "“0.1 mm” is too small to cut; a length is at least 0.2 mm"),
        ("11/2", "“11/2” may be 5 1/2 or 1 1/2; write the one that is meant, with a space"),
        ("105/8", "“105/8” may be 13 1/8 or 10 5/8; write the one that is meant, with a space"),
        ("23/4 in", "“23/4” may be 5 3/4 or 2 3/4; write the one that is meant, with a space"),
        ("9/8 in", "“9/8” is more than a whole; write 1 1/8"),
        ("8/4 in", "“8/4” is more than a whole; write 2"),
        ("9999999", "“9999999” is not a number; write for example 4, 4.25 or 4 1/4"),
    ],
)
def test_what_is_no_length_is_told_in_a_sentence(text: str, sentence: str) -> None:
    """Nothing is guessed, and nothing hangs on a huge number."""
    with pytest.raises(MeasureError) as raised:
        parse_length(text, Unit.MM)
    assert str(raised.value) == sentence


@pytest.mark.parametrize("text", ["5-1/2 x 8-1/2 in", "5 1/2 × 8 1/2 in", "5½ by 8½ in", '5.5" x 8.5"'])
def test_a_size_takes_the_signs_of_the_trade(text: str) -> None:
    """A unit written once, at the end, counts for both measures."""
    assert parse_size(text, Unit.MM) == Size(Fraction("139.7"), Fraction("215.9"))


@pytest.mark.parametrize(
    ("text", "unit", "width"),
    [("0.5 x 20 mm", Unit.MM, "0.5"), ("0.2 mm x 20", Unit.MM, "0.2"), ("1/64 x 2", Unit.INCH, "0.396875")],
)
def test_a_thin_strip_with_its_unit_is_meant(text: str, unit: Unit, width: str) -> None:
    """Only where nobody wrote a unit, less than a millimetre is asked about."""
    assert parse_size(text, unit).width == Fraction(width)


@pytest.mark.parametrize(
    ("text", "unit", "shown"),
    [
        ("4.37", Unit.INCH, "4.37"),
        ("0.125", Unit.INCH, "1/8"),
        ("305 mm", Unit.INCH, "12"),
        ("210 mm", Unit.INCH, f"8{NBSP}1/4"),
        ("4.375", Unit.CM, "4.375"),
        ("1/8 in", Unit.MM, "3.17"),
    ],
)
def test_the_own_unit_is_exact_or_cut_off(text: str, unit: Unit, shown: str) -> None:
    """A thousandth of an inch is shown; 305 mm are 12.0078… in and 210 mm 8.2677… in (25.4 mm an inch)."""
    assert show_length(parse_length(text, unit), unit) == shown


@given(st.integers(200, 2_000_000), st.sampled_from(WRITTEN))
def test_the_own_unit_is_never_rounded_up(thousandths: int, unit: Unit) -> None:
    """A part cut as shown fits."""
    length = Fraction(thousandths, 1000) * MM_PER_INCH / 7
    text = show_length(length, unit)
    assert text == "0" or parse_length(f"{text.replace(',', '')} {unit.value}", unit) <= length


@given(st.integers(1, 64 * 400))
def test_inches_in_sixty_fourths_survive_being_shown_and_read(sixty_fourths: int) -> None:
    """What is shown in inches is read as the same length."""
    length = Fraction(sixty_fourths, 64) * MM_PER_INCH
    assert parse_length(show_length(length, Unit.INCH), Unit.INCH) == length


@given(st.fractions(min_value=2, max_value=2000, max_denominator=64), st.sampled_from(WRITTEN))
def test_the_other_unit_is_never_rounded_up(length: Fraction, unit: Unit) -> None:
    """A part cut too large does not fit, so the shown length is at most the true one, and close to it."""
    shown = parse_length(show_other(length, unit), Unit.MM)
    assert shown <= length < shown + MM_PER_INCH / 8


@pytest.mark.parametrize(
    ("text", "unit", "shown"),
    [
        ("12 x 12", Unit.INCH, "304.8 × 304.8 mm"),
        ("8 1/2 x 11", Unit.INCH, "215.9 × 279.4 mm"),
        ("305 x 305", Unit.MM, "about 12 × 12 in"),
        ("210 x 297", Unit.MM, "about 8 1/4 × 11 11/16 in"),
        ("297 x 420", Unit.MM, "about 11 11/16 × 16 9/16 in"),
        ("14.8 x 21", Unit.CM, "about 5 13/16 × 8 1/4 in"),
    ],
)
def test_a_sheet_as_bought_is_told_as_near_as_can_be(text: str, unit: Unit, shown: str) -> None:
    """Nobody cuts to it: 420 mm are 16.535 in, nearer to 9/16 than to 1/2, which a part would be."""
    assert show_other_sheet_size(parse_size(text, unit), unit).replace(NBSP, " ") == shown


def test_less_than_a_mark_of_the_rule_is_said_so() -> None:
    """A hair is not nothing."""
    assert show_other(Fraction(1), Unit.MM) == f"under{NBSP}1/16{NBSP}in"


@given(st.text(max_size=30))
def test_any_text_is_a_length_or_a_sentence(text: str) -> None:
    """No text raises anything but a sentence for the maker."""
    with contextlib.suppress(MeasureError):
        assert parse_length(text, Unit.MM) > 0


def test_lengths_are_shown_as_on_a_rule() -> None:
    """Figures do not break over a line; thirds of an inch stay thirds."""
    letter = Size(Fraction("215.9"), Fraction("279.4") / 3)
    assert show_size(letter, Unit.INCH) == f"8{NBSP}1/2{NBSP}×{NBSP}3{NBSP}2/3"
    assert show_other_size(letter, Unit.INCH) == f"215.5{NBSP}×{NBSP}93{NBSP}mm"
    assert show_number(Fraction("-12345.678"), 2) == "−12,345.68"


def test_numbers_of_a_column_end_alike() -> None:
    """As many decimals as one of them needs, at most two; none where all are whole."""
    assert show_aligned([Fraction(33), Fraction("25.08"), Fraction("-1.8")]) == ["33.00", "25.08", "−1.80"]
    assert show_aligned([Fraction(1, 3), Fraction(1200)]) == ["0.33", "1,200.00"]
    assert show_aligned([Fraction("0.5"), Fraction(2)]) == ["0.5", "2.0"]
    assert show_aligned([Fraction(1200), Fraction(-4)]) == ["1,200", "−4"]
    assert show_aligned([]) == []


@pytest.mark.parametrize(
    ("text", "written", "shown"),
    [
        ("4 1/4 x 1/8", Unit.INCH, "107.5 × 3"),
        ("12 x 12", Unit.INCH, "304.5 × 304.5"),
        ("108 x 1", Unit.MM, "4 1/4 × under 1/16"),
        ("10.5 x 14.85", Unit.CM, "4 1/8 × 5 13/16"),
    ],
)
def test_a_reader_sees_the_marks_of_the_other_rule(text: str, written: Unit, shown: str) -> None:
    """As small as it stands beside the unit of the record, and named as that unit is."""
    size, other = parse_size(text, written), written.for_readers
    assert show_size(size, other).replace(NBSP, " ") == shown
    assert show_other_size(size, written).replace(NBSP, " ") == f"{shown} {other.word}"
    assert other.word in ("mm", "in")


@given(st.fractions(min_value=Fraction(1, 5), max_value=1000, max_denominator=160), st.sampled_from(WRITTEN))
def test_a_cut_size_is_never_rounded_up(length: Fraction, written: Unit) -> None:
    """What a reader cuts is at most what was written, and less by less than a mark."""
    other = written.for_readers
    shown = show_length(length, other).replace(NBSP, " ")
    if not shown.startswith("under "):
        cut = parse_number(shown) * other.in_mm
        assert cut <= length < cut + RULE_STEP[other] * other.in_mm


def test_a_sheet_as_bought_is_told_to_the_nearest() -> None:
    """Nobody cuts to it; in the unit of the record it is as written."""
    foot, metric = Size(Fraction("304.8"), Fraction("304.8")), Size(Fraction(305), Fraction(200))
    assert show_sheet_size(foot, Unit.INCH.for_readers) == f"304.8{NBSP}×{NBSP}304.8"
    assert show_sheet_size(metric, Unit.MM.for_readers) == f"12{NBSP}×{NBSP}7{NBSP}7/8"
    assert show_sheet_size(metric, Unit.MM) == f"305{NBSP}×{NBSP}200"


def test_beside_what_a_reader_chose_stands_what_was_written() -> None:
    """Not rounded: it is what the maker cut."""
    assert show_other(Fraction("107.95"), Unit.RULE_MM) == f"4{NBSP}1/4{NBSP}in"
    assert (
        show_other_size(Size(Fraction("92.25"), Fraction(30)), Unit.RULE_INCH)
        == f"92.25{NBSP}×{NBSP}30{NBSP}mm"
    )


@pytest.mark.parametrize(
    ("text", "wholes"),
    [
        ("17/2 x 11/3 in", "8 1/2 x 3 2/3 in"),
        ("8/4 x 4/4", "2 x 1"),
        ("3/4", "3/4"),
        ("5/0", "5/0"),
    ],
)
def test_an_improper_fraction_has_its_whole_apart(text: str, wholes: str) -> None:
    """As programs write them; a proper one stays, and one that divides by nothing is told by its reader."""
    assert with_wholes(text) == wholes


def test_a_size_has_an_area() -> None:
    """Its width times its height, exactly."""
    assert Size(Fraction(17, 2), Fraction(11)).area == Fraction(187, 2)


def test_a_unit_at_the_end_counts_for_all() -> None:
    """Of two measures and of three; each may name its own as well."""
    inch = MM_PER_INCH
    assert parse_lengths("2 x 3 x 1/2 in", Unit.MM) == (2 * inch, 3 * inch, inch / 2)
    assert parse_lengths("2 x 3 in", Unit.MM) == (2 * inch, 3 * inch)
    assert parse_lengths("2 in x 30 mm x 4 mm", Unit.INCH) == (2 * inch, Fraction(30), Fraction(4))
