"""What is shown, or written by the rules of the records, is read as the same."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from fractions import Fraction
from typing import Any, Final

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.measure.amounts import parse_amount, plural
from batchleaf.measure.display import show_length, show_size
from batchleaf.measure.durations import parse_film_time, parse_minutes, show_film_time, show_minutes
from batchleaf.measure.lengths import LONGEST, SHORTEST, WRITTEN, Size, Unit, parse_length, parse_size
from batchleaf.measure.money import Currency, parse_money
from batchleaf.records.cut_lines import KeptLine, read_cut
from batchleaf.records.grammar import read_count, read_date, read_makes, read_unit
from records.odd_texts import Draw

UNITS: Final = st.sampled_from(WRITTEN)
FINEST: Final = {Unit.MM: (100,), Unit.CM: (1000,), Unit.INCH: (1000, 64, 3, 12)}
"""Parts of a unit that are shown exactly."""
COUNTS: Final = st.integers(1, 99_999)


@st.composite
def exact_lengths(draw: Draw, unit: Unit) -> Fraction:
    """A length in mm that its own unit shows without rounding."""
    step = unit.in_mm / draw(st.sampled_from(FINEST[unit]))
    return step * draw(st.integers(-(-SHORTEST // step), LONGEST // step))


def lengths() -> st.SearchStrategy[tuple[Unit, Fraction]]:
    """A unit, and a length that it shows exactly."""
    return UNITS.flatmap(lambda unit: st.tuples(st.just(unit), exact_lengths(unit)))


def check_length(case: tuple[Unit, Fraction]) -> None:
    """A length shown exactly; the comma of thousands is for the eye."""
    unit, length = case
    assert parse_length(f"{show_length(length, unit).replace(',', '')} {unit.value}", Unit.CM) == length


def check_size(case: tuple[Unit, Fraction]) -> None:
    """A size shown exactly, its unit written once."""
    unit, length = case
    size = Size(length, unit.in_mm)
    assert parse_size(f"{show_size(size, unit).replace(',', '')} {unit.value}", Unit.CM) == size


def check_money(case: tuple[str, int]) -> None:
    """Plain, and with its sign or code."""
    code, minor = case
    currency = Currency.of(code)
    plain = currency.plain(minor)
    for text in (plain, f"{plain} {code}", f"{currency.sign}{plain}", f" {plain}\u00a0{currency.sign}"):
        assert parse_money(text, currency) == minor


def check_times(case: tuple[int, int]) -> None:
    """Minutes at the table, seconds in a film."""
    minutes, seconds = case
    assert parse_minutes(show_minutes(minutes)) == minutes
    assert parse_film_time(show_film_time(seconds)) == seconds


def check_date(day: dt.date) -> None:
    """Year first; a nought before month and day may be left out."""
    assert read_date(day.isoformat()) == read_date(f"{day.year:04d}-{day.month}-{day.day}") == day


def check_makes(counts: tuple[int, int]) -> None:
    """Finished of begun."""
    few, many = sorted(counts)
    assert read_makes(f"{few} of {many}") == (few, many)
    assert read_makes(f"{many}") == (many, many)
    assert read_count(str(few)) == few


def check_unit(word: str) -> None:
    """One and several, and the one from an amount."""
    several = plural(word)
    assert read_unit(f"{word}, {several}") == (word, several)
    assert parse_amount(f"2 1/2 {several}", word, several) == Fraction(5, 2)


def check_cut(case: tuple[int, int, tuple[Unit, Fraction]]) -> None:
    """What was taken and what was kept."""
    count, kept, (unit, length) = case
    shown = f"{show_length(length, unit).replace(',', '')} x 1 {unit.value}"
    line = read_cut(f"oat-card {count} sheets each, kept {kept} of {shown}, kept {kept} B", Unit.MM)
    assert (line.who, line.count, line.noun, line.each) == ("oat-card", count, "sheets", True)
    assert line.kept == (KeptLine(kept, Size(length, unit.in_mm), ""), KeptLine(kept, None, "B"))
    scrap = read_cut(f"oat-card {count} scraps {shown}", Unit.MM)
    assert (scrap.count, scrap.scrap) == (count, Size(length, unit.in_mm))


LAWS: Final[dict[str, tuple[st.SearchStrategy[Any], Callable[[Any], None]]]] = {
    "length": (lengths(), check_length),
    "size": (lengths(), check_size),
    "money": (st.tuples(st.sampled_from(["EUR", "JPY", "KWD"]), st.integers(0, 10**9 - 1)), check_money),
    "times": (st.tuples(st.integers(0, 999 * 60 + 59), st.integers(0, 99 * 3600 + 3599)), check_times),
    "date": (st.dates(), check_date),
    "makes": (st.tuples(COUNTS, COUNTS), check_makes),
    "unit": (st.from_regex(r"[a-z]{1,12}([a-rt-z]|[aiu]s)", fullmatch=True), check_unit),
    "cut": (st.tuples(COUNTS, COUNTS, lengths()), check_cut),
}


@pytest.mark.parametrize("law", LAWS)
def test_what_is_written_is_read_as_the_same(law: str) -> None:
    """Nothing is lost on the way there and back."""
    values, check = LAWS[law]
    given(values)(check)()
