"""A spreadsheet of supplies or purchases, shown as it is understood and written where that is asked for."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Final

from batchleaf.commands.explain import UNREADABLE
from batchleaf.commands.new import today
from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import FAULTY, nothing_written
from batchleaf.facts import Weight
from batchleaf.measure.amounts import plural
from batchleaf.measure.errors import MeasureError
from batchleaf.records.archive import read_archive
from batchleaf.records.grammar import read_date
from batchleaf.writing.csv_in.brought import brought_by
from batchleaf.writing.csv_in.columns import (
    CannotMapError,
    Column,
    Columns,
    Subject,
    columns_of,
    in_another_currency,
)
from batchleaf.writing.csv_in.found import Brought, Remark
from batchleaf.writing.csv_in.sheet import Sheet, UnreadableSheetError, read_sheet
from batchleaf.writing.csv_in.supplies import Usual
from batchleaf.writing.record import first_lines
from batchleaf.writing.slugs import slug_of

MEANS: Final = {
    "price": "price of all of it",
    "worth": "worth of all of it",
    "each": "price of each",
    "delivery": "delivery of its order",
    "supply": "short name, or name",
}
"""Keys that need more than their own word."""
SHOWN: Final = 30
"""Letters of an example; more of it tells no more of its column."""


def import_csv(archive: Opened, asked: argparse.Namespace) -> int:
    """Show what a sheet means, tell what cannot be taken, and write the rest where ``asked.write``."""
    reading = read_archive(archive.projects, archive.settings)
    if any(problem.weight is Weight.ERROR for problem in reading.problems):
        return nothing_written(UNREADABLE)
    sheet_file = Path(asked.file)
    try:
        sheet = read_sheet(sheet_file.read_bytes())
        subject = Subject(asked.subject) if asked.subject else None
        columns = columns_of(sheet.headings, subject, _told(asked.map))
        columns = in_another_currency(columns, archive.settings.currency)
        usual = Usual(asked.kind or "", read_date(asked.date or today()).isoformat())
        file = _new_file(archive, sheet_file)
        first = first_lines(archive.root, file, "inventory")
        brought = brought_by(sheet, columns, reading, archive.settings, usual, first)
    except OSError as error:
        return nothing_written(f"{asked.file}: {(error.strerror or 'it cannot be read').lower()}")
    except UnreadableSheetError as error:
        return nothing_written(f"{asked.file}:{error.line}: {error}")
    except (CannotMapError, MeasureError) as error:
        return nothing_written(_plain(f"{asked.file}: {error}"))
    print("\n".join(_understood(asked.file, sheet, columns)))
    return _bring(archive, file, brought, asked)


def _told(maps: Sequence[str]) -> Mapping[str, str]:
    """``--map "Column=key"``; nothing behind the sign leaves the column out."""
    told: dict[str, str] = {}
    for one in maps:
        heading, sign, key = one.rpartition("=")
        if not sign or not heading.strip():
            raise CannotMapError(f'“{one}” does not say which column is which; write --map "Heading=name"')
        told[heading.strip()] = key.strip()
    return told


def _new_file(archive: Opened, sheet: Path) -> Path:
    folder = archive.projects / "inventory"
    taken = {path.stem.lower() for path in folder.iterdir()} if folder.is_dir() else set()
    return folder / f"{slug_of(sheet.stem, taken)}.yml"


# --- telling -----------------------------------------------------------------------


def _understood(file: str, sheet: Sheet, columns: Columns) -> Iterator[str]:
    """The mapping, a column a line, with the first value that stands in it."""
    rows = len(sheet.rows)
    yield f"{file}: {rows} {'line' if rows == 1 else plural('line')} of {columns.subject.value}"
    if sheet.remark:
        yield f"{file} {sheet.remark}."
    wide = max(len(_shown(column.heading)) for column in columns.columns)
    meant = max(len(_means(column)) for column in columns.columns if column.key)
    for column in columns.columns:
        example = next((row.cells[column.at] for row in sheet.rows if row.cells[column.at]), "")
        tells = f"“{_shown(example)}”" if example else "nothing stands in it"
        yield f"  {_shown(column.heading):{wide}}  {_means(column):{meant}}  {tells}"


def _means(column: Column) -> str:
    if column.key:
        return f"→ {MEANS.get(column.key, column.key)}{f' in {column.unit}' if column.unit else ''}"
    return f"is not taken{f', since {_plain(column.why)}' if column.why else ''}"


def _shown(text: str) -> str:
    """A cell in brief, on one line."""
    plain = _plain(text)
    return plain if len(plain) <= SHOWN else f"{plain[: SHOWN - 1]}…"


def _plain(text: str) -> str:
    """What a terminal shows; it would obey signs that nobody sees."""
    return "".join(letter if letter.isprintable() else "\ufffd" for letter in text)


def _tell(file: str, remarks: Sequence[Remark]) -> None:
    for one in remarks:
        print(_plain(f"{file}:{one.line}: {one.sentence}"))


# --- writing -----------------------------------------------------------------------


def _bring(archive: Opened, file: Path, brought: Brought, asked: argparse.Namespace) -> int:
    code = FAULTY if brought.faults else 0
    if brought.there:
        print("\nIn the drawer already:")
        _tell(asked.file, brought.there)
    if brought.faults:
        print("\nNot taken:")
        _tell(asked.file, brought.faults)
    if not brought.record:
        print("\nNothing is left to write.")
        return code
    if not asked.write:
        print(f"\nThis would be written into {file}; with --write it is:\n\n{brought.record}", end="")
        return code
    try:
        sentences = _written(archive, file, brought.record)
    except OSError as error:
        return nothing_written(f"{file}: {(error.strerror or 'it cannot be written').lower()}")
    if sentences:
        return nothing_written("\n".join(("the records would no longer be read:", *sentences)))
    print(f"\nWrote {brought.taken} {'line' if brought.taken == 1 else 'lines'} into {file}")
    return code


def _written(archive: Opened, file: Path, record: str) -> tuple[str, ...]:
    """Write the new file; where the check then finds an error anywhere, take it back and say which."""
    new_folder = not file.parent.is_dir()
    file.parent.mkdir(parents=True, exist_ok=True)
    with file.open("xb") as new:
        new.write(record.encode())
    told = tuple(problem.sentence for problem in archive.worked().errors)
    if told:
        file.unlink()
        if new_folder:
            file.parent.rmdir()
    return told
