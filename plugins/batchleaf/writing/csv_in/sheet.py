"""A CSV file as a heading and rows of texts, each row with the line that it begins in.

RFC 4180 with what spreadsheets make of it: commas, semicolons or tabs between, a mark of
the encoding at the start, and line ends of all kinds. All cells are text; a formula stays one.
"""

from __future__ import annotations

import csv
import io
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

LARGEST: Final = 8 * 1024 * 1024
"""Bytes: a sheet of tens of thousands of lines."""
MOST_COLUMNS: Final = 200
DELIMITERS: Final = (",", ";", "\t")


class UnreadableSheetError(ValueError):
    """Why a file is no sheet that can be read, as a sentence; ``line`` where the fault lies in one."""

    def __init__(self, sentence: str, line: int = 1) -> None:
        super().__init__(sentence)
        self.line = line


@dataclass(frozen=True, slots=True)
class Row:
    """The cells of one row, at least as many as there are headings; ``line``: where it begins."""

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """``remark``: what the maker should know of how it was read; mostly nothing.

    ``decimal_comma``: whether a number may have one, as in sheets that part their cells by semicolons.
    """

    headings: tuple[str, ...]
    rows: tuple[Row, ...]
    decimal_comma: bool = False
    remark: str = ""


def read_sheet(data: bytes) -> Sheet:
    """The sheet in ``data``; rows without any text are left out. Raises :class:`UnreadableSheetError`."""
    if len(data) > LARGEST:
        size = LARGEST // (1024 * 1024)
        raise UnreadableSheetError(f"this file is larger than {size} MB; part it into several")
    text, remark = _decoded(data)
    delimiter = _delimiter_of(text)
    rows = [row for row in _rows(text, delimiter) if any(row.cells)]
    if not rows:
        raise UnreadableSheetError("nothing is written in this file yet")
    first, *others = rows
    if len(first.cells) > MOST_COLUMNS:
        raise UnreadableSheetError(f"the first line has more than {MOST_COLUMNS} columns", first.line)
    headings = _without_empty_end(first.cells)
    filled = tuple(_as_wide(row, len(headings)) for row in others)
    return Sheet(headings, filled, decimal_comma=delimiter == ";", remark=remark)


def _decoded(data: bytes) -> tuple[str, str]:
    """The text, and what is to be told of its encoding."""
    if data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        try:
            return data.decode("utf-16"), ""
        except UnicodeDecodeError:
            raise UnreadableSheetError(
                "this file begins as UTF-16 and does not go on so; save it as UTF-8"
            ) from None
    if b"\0" in data[:1000]:
        raise UnreadableSheetError(
            "this is no text, or text in UTF-16 without its mark; save it as CSV in UTF-8"
        )
    data = data.removeprefix(BOM_UTF8)
    try:
        return data.decode(), ""
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
    try:
        remark = (
            "is not in UTF-8, so it is read as Windows-1252; look whether letters like é are right,"
            " and save it as CSV in UTF-8 if they are not"
        )
        return data.decode("cp1252"), remark
    except UnicodeDecodeError:
        raise UnreadableSheetError("a letter here is not in UTF-8; save the file as UTF-8", line) from None


def _delimiter_of(text: str) -> str:
    """What parts the first line that has anything in it into the most cells; the comma of equals."""

    def cells_of(delimiter: str) -> int:
        try:
            return next((len(row.cells) for row in _rows(text, delimiter) if any(row.cells)), 0)
        except UnreadableSheetError:  # quotation marks stand where this sign parts nothing
            return 0

    return max(DELIMITERS, key=cells_of)


def _rows(text: str, delimiter: str) -> Iterator[Row]:
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    line = 1
    try:
        for cells in reader:
            yield Row(line, tuple(_on_one_line(cell) for cell in cells))
            line = reader.line_num + 1
    except csv.Error:
        raise UnreadableSheetError(
            "the quotation marks of a cell here have no end, or text behind it; inside a cell in quotation"
            " marks each of them is written twice",
            line,
        ) from None


def _on_one_line(cell: str) -> str:
    """A value of a record is one line; what was typed below one another is set side by side."""
    return " ".join(cell.split())


def _without_empty_end(cells: tuple[str, ...]) -> tuple[str, ...]:
    """A sheet often has columns that nobody filled."""
    end = max(n for n, cell in enumerate(cells, start=1) if cell)
    return cells[:end]


def _as_wide(row: Row, width: int) -> Row:
    """Rows may be shorter than the headings; one that is longer is told when it is read."""
    return Row(row.line, (*row.cells, *[""] * (width - len(row.cells))))
