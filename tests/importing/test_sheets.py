"""Bytes of a spreadsheet: encodings, signs between cells, lines, and what nobody meant to be one."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts import Settings
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.records.archive import Reading, read_archive
from batchleaf.records.kinds import keys_of
from batchleaf.records.written import OpeningWritten, OrderWritten, SupplyWritten
from batchleaf.writing.csv_in.brought import brought_by
from batchleaf.writing.csv_in.cells import iso_day, with_points
from batchleaf.writing.csv_in.columns import WORDS, CannotMapError, Subject, bare, columns_of
from batchleaf.writing.csv_in.sheet import Row, UnreadableSheetError, read_sheet
from batchleaf.writing.csv_in.supplies import Usual

TEXT = "name,kind\ncafé card,card\n"
ROWS = (Row(2, ("café card", "card")),)
SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
USUAL = Usual("", "2026-01-01")


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le-mark", "utf-16-be-mark"])
@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_spreadsheets_save_in_many_ways(encoding: str, delimiter: str, end: str) -> None:
    """Each is read as the same cells; none needs to be told."""
    text = TEXT.replace(",", delimiter).replace("\n", end)
    if encoding.endswith("-mark"):
        data = ("\ufeff" + text).encode(encoding.removesuffix("-mark"))
    else:
        data = text.encode(encoding)
    sheet = read_sheet(data)
    assert (sheet.headings, sheet.rows, sheet.remark) == (("name", "kind"), ROWS, "")
    assert sheet.decimal_comma == (delimiter == ";")


def test_an_old_encoding_is_told() -> None:
    """Bytes that are no UTF-8 are read as Windows-1252, and the maker is asked to look."""
    sheet = read_sheet(TEXT.encode("cp1252"))
    assert sheet.rows == ROWS
    assert "read as Windows-1252" in sheet.remark


@pytest.mark.parametrize(
    ("data", "line", "sentence"),
    [
        (b"", 1, "nothing is written in this file yet"),
        (b"\n\n \n", 1, "nothing is written in this file yet"),
        (b"PK\x03\x04\0\0", 1, "this is no text, or text in UTF-16 without its mark"),
        (TEXT.encode("utf-16-le"), 1, "this is no text, or text in UTF-16 without its mark"),
        (b"name\n\x81\n", 2, "a letter here is not in UTF-8; save the file as UTF-8"),
        (b"\xff\xfe\x00\xd8a\x00", 1, "this file begins as UTF-16 and does not go on so; save it as UTF-8"),
        (b'name\n"a\nb', 2, "the quotation marks of a cell here have no end, or text behind it"),
        (b'name\n"a"b\n', 2, "the quotation marks of a cell here have no end, or text behind it"),
        (b"a," * 300, 1, "the first line has more than 200 columns"),
        (b" " * (8 * 1024 * 1024 + 1), 1, "this file is larger than 8 MB; part it into several"),
    ],
    ids=lambda value: str(value)[:20],
)
def test_what_is_no_sheet_is_told(data: bytes, line: int, sentence: str) -> None:
    """With the line, where there is one."""
    with pytest.raises(UnreadableSheetError) as told:
        read_sheet(data)
    assert told.value.line == line
    assert str(told.value).startswith(sentence)


def test_lines_are_those_of_the_file() -> None:
    """A cell may run over several lines, and empty lines lie between; a row is named by where it begins."""
    sheet = read_sheet(b'name,kind\n"a\nb\nc",card\n\n\nd,card\n')
    assert sheet.rows == (Row(2, ("a b c", "card")), Row(7, ("d", "card")))


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("2026-03-14", "2026-03-14"),
        ("2026/3/4", "2026-03-04"),
        ("14.3.2026", "2026-03-14"),
        ("3/14/2026", "2026-03-14"),
        ("5/5/2026", "2026-05-05"),
        ("14 March 2026", "2026-03-14"),
        ("14-Mar-2026", "2026-03-14"),
        ("Mar 14, 2026", "2026-03-14"),
        ("2026-03-14 00:00:00", "2026-03-14"),
    ],
)
def test_a_day_that_can_be_only_one(text: str, day: str) -> None:
    """It is written as ISO 8601 has it."""
    assert iso_day(text) == day


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("3/4/2026", "“3/4/2026” may be 2026-04-03 or 2026-03-04; write the one it is"),
        ("03.04.2026", "“03.04.2026” may be 2026-04-03 or 2026-03-04; write the one it is"),
        ("14.3.26", "“14.3.26” has no year of four figures; write it like 2026-03-14"),
        ("31.2.2026", "“31.2.2026” is not a day of the calendar"),
        ("14 Smarch 2026", "“14 Smarch 2026” names no month; write it like 2026-03-14"),
        ("46000", "“46000” is not a date; write the year first, like 2026-03-14"),
    ],
)
def test_any_other_day_is_told(text: str, sentence: str) -> None:
    """Both days that it may be are named, where it may be two."""
    with pytest.raises(MeasureError) as told:
        iso_day(text)
    assert str(told.value) == sentence


@given(st.dates())
def test_every_day_with_a_large_number_is_only_one(day: object) -> None:
    """Day first and month first are told apart wherever one of them is above twelve, else asked about."""
    year, month, number = (int(piece) for piece in str(day).split("-"))
    for text in (f"{number}.{month}.{year:04}", f"{month}/{number}/{year:04}"):
        if number > 12 or number == month:
            assert iso_day(text) == str(day)
        else:
            with pytest.raises(MeasureError, match="may be"):
                iso_day(text)


@pytest.mark.parametrize(
    ("text", "point"),
    [
        ("1,50", "1.50"),
        ("30,5 x 21 cm", "30.5 x 21 cm"),
        ("1.250,00", "1250.00"),
        ("1.234.567,8", "1234567.8"),
        ("1.25", "1.25"),
        ("0.375 in", "0.375 in"),
    ],
)
def test_decimal_commas(text: str, point: str) -> None:
    """A comma between figures is a point; points before it part thousands."""
    assert with_points(text, decimal_comma=True) == point
    assert with_points(text, decimal_comma=False) == text


def test_every_key_is_one_of_a_record() -> None:
    """What a column fills is a key that records have, or one of the few that are put together."""
    supply = {key.name for model in (SupplyWritten, OpeningWritten) for key in keys_of(model)}
    together = {"supply", "width", "height", "each", "price known"}
    assert set(WORDS[Subject.SUPPLIES]) <= supply | together
    order = {key.name for key in keys_of(OrderWritten)}
    of_a_line = {"supply", "amount", "unit", "price", "each", "price known"}
    assert set(WORDS[Subject.PURCHASES]) <= order | of_a_line


@pytest.mark.parametrize("subject", list(Subject))
def test_a_heading_means_one_key(subject: Subject) -> None:
    """No word stands for two keys of one kind of row, and all are spelt as headings are looked up."""
    words = [word for key, others in WORDS[subject].items() for word in {key, *others}]
    assert len(words) == len(set(words))
    assert all(word == bare(word) for word in words)


@pytest.fixture(scope="module")
def reading(tmp_path_factory: pytest.TempPathFactory) -> Reading:
    """A drawer with one card."""
    projects = tmp_path_factory.mktemp("archive") / "projects"
    (projects / "inventory").mkdir(parents=True)
    text = "supplies:\n  dune-card:\n    name: dune card\n    kind: card\n    size: 210 x 297\n"
    (projects / "inventory" / "card.yml").write_text(text, encoding="utf-8")
    return read_archive(projects, SETTINGS)


def bring(data: bytes, reading: Reading, subject: Subject | None) -> str:
    """What is told of bytes, whichever way it ends."""
    try:
        sheet = read_sheet(data)
        brought = brought_by(
            sheet, columns_of(sheet.headings, subject), reading, SETTINGS, USUAL, ("# remark",)
        )
    except (UnreadableSheetError, CannotMapError) as told:
        return str(told)
    lines = {one.line for one in (*brought.there, *brought.faults)}
    assert len(lines) + brought.taken == len(sheet.rows)
    return "".join(one.sentence for one in (*brought.there, *brought.faults)) + brought.record


@given(st.binary(max_size=300), st.sampled_from([None, *Subject]))
def test_odd_bytes_end_in_a_sentence(reading: Reading, data: bytes, subject: Subject | None) -> None:
    """No bytes end in anything but a record or a sentence."""
    assert bring(data, reading, subject)


USUAL_CELLS = (
    *("dune card", "dune-card", "12 x 12 in", "2", "1,5", "1.00"),
    *("2026-01-01", "3/4/2026", "gift", "=1+1", "-"),
)
CELLS = st.text(max_size=12) | st.sampled_from(USUAL_CELLS)
HEADS = st.sampled_from(sorted({key for words in WORDS.values() for key in words}))


@given(st.lists(HEADS, min_size=1, max_size=8), st.lists(st.lists(CELLS, max_size=9), max_size=6))
def test_odd_cells_end_in_a_sentence(reading: Reading, heads: list[str], rows: list[list[str]]) -> None:
    """Each row of any sheet is taken, there already, or told of."""
    text = io.StringIO()
    csv.writer(text).writerows([heads, *rows])
    data = text.getvalue().encode("utf-8", "replace")
    for subject in Subject:
        bring(data, reading, subject)


def test_a_sheet_that_is_too_long_is_told(reading: Reading) -> None:
    """A record has a largest size, and a file beyond it would not be read."""
    rows = "".join(f"card number {n},card,{'x' * 300}\n" for n in range(2000))
    told = bring(f"name,kind,about\n{rows}".encode(), reading, None)
    assert told == "it would be a record larger than 512 kB; part the sheet"


def test_nothing_is_worked_out(reading: Reading) -> None:
    """What a spreadsheet would take for a formula is text like any other."""
    told = bring(b"name,kind,about\nx,card,=1+1\ny,card,@SUM(1)\nz,card,'+2\n", reading, None)
    assert "about: '=1+1'" in told
    assert "about: '@SUM(1)'" in told
    assert "about: '+2'" in told
