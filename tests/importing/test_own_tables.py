"""The project's own tables of the drawer, read back, and what is undone where records no longer fit."""

from __future__ import annotations

import shutil
from pathlib import Path
from typing import Final

import pytest

from batchleaf.cli import main
from batchleaf.core.figures import Figures
from batchleaf.facts import Settings, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.records.archive import Reading, read_archive
from batchleaf.views.tables.drawer import drawer_table
from batchleaf.views.tables.table import csv_text
from batchleaf.views.tables.years import bought_table
from batchleaf.workflow import read_and_work_out
from batchleaf.writing.csv_in.brought import brought_by
from batchleaf.writing.csv_in.columns import columns_of
from batchleaf.writing.csv_in.found import Brought
from batchleaf.writing.csv_in.sheet import read_sheet
from batchleaf.writing.csv_in.supplies import Usual

DEMO: Final = Path(__file__).parents[2] / "projects"
SETTINGS: Final = Settings(Unit.MM, Currency.of("EUR"))
USUAL: Final = Usual("", "2025-01-01")


@pytest.fixture(scope="module")
def drawer(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo's drawer without its batches."""
    projects = tmp_path_factory.mktemp("demo") / "projects"
    (projects / "inventory").mkdir(parents=True)
    for file in (DEMO / "inventory").glob("*.yml"):
        (projects / "inventory" / file.name).write_bytes(file.read_bytes())
    return projects


@pytest.fixture(scope="module")
def figures(drawer: Path) -> Figures:
    """What its tables are made from."""
    worked = read_and_work_out(drawer, SETTINGS)
    assert worked.figures is not None, worked.problems
    return worked.figures


def brought(text: str, reading: Reading) -> Brought:
    """What a table brings into an archive."""
    sheet = read_sheet(text.encode())
    return brought_by(sheet, columns_of(sheet.headings), reading, SETTINGS, USUAL, ())


def test_every_purchase_is_there_already(drawer: Path, figures: Figures) -> None:
    """What the drawer's own tables of purchases say is found in the records, delivery and all."""
    reading = read_archive(drawer, SETTINGS)
    tables = [bought_table(supply, figures) for supply in figures.archive.supplies if supply.named]
    told = [brought(csv_text(table), reading) for table in tables if table.rows]
    assert sum(len(one.there) for one in told) == len(figures.archive.purchases)
    assert not any(one.record or one.faults for one in told)


def test_the_drawer_of_an_empty_archive_is_that_of_the_table(figures: Figures, tmp_path: Path) -> None:
    """Names, shelves, sizes, weights, colours, what is on hand and its worth come back as they went."""
    (tmp_path / "projects").mkdir()
    table = csv_text(drawer_table(figures))
    one = brought(table, read_archive(tmp_path / "projects", SETTINGS))
    assert not one.faults
    (tmp_path / "projects" / "inventory").mkdir()
    (tmp_path / "projects" / "inventory" / "back.yml").write_bytes(one.record.encode())
    back = read_and_work_out(tmp_path / "projects", SETTINGS)
    assert back.figures is not None, back.problems
    was = {supply.slug: supply for supply in figures.archive.supplies}
    assert back.archive.supplies
    for supply in back.archive.supplies:
        assert told_in_both(supply) == told_in_both(was[supply.slug])
    again = read_sheet(csv_text(drawer_table(back.figures)).encode())
    once = read_sheet(table.encode())
    for heading in ("supply", "on hand", "worth in EUR"):
        at = once.headings.index(heading)
        known = {row.cells[0]: row.cells[at] for row in once.rows if row.cells[at].strip("0.")}
        came = {row.cells[0]: row.cells[at] for row in again.rows if row.cells[at].strip("0.")}
        if heading == "worth in EUR":  # what is known in part comes back as not known
            known = {slug: worth for slug, worth in known.items() if slug in came}
        assert came == known


def told_in_both(supply: Supply) -> tuple[object, ...]:
    """What the table of the drawer says of a supply that a record of it says too; weights to six decimals."""
    weight = round(supply.grammage, 6) if supply.grammage else None
    size = (round(supply.size.width, 6), round(supply.size.height, 6)) if supply.size else None
    return supply.name, supply.kind, size, weight, supply.colours, supply.collection, supply.unit


def test_what_would_break_a_batch_is_undone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A batch takes a cord by length; a sheet that brings it in pieces is not written."""
    monkeypatch.chdir(tmp_path)
    assert main(["start", "paper"]) == 0
    record = Path("paper", "projects", "first-batch", "project.yml")
    text = record.read_text(encoding="utf-8")
    thread = "  - cotton-thread 200 mm\n"
    assert thread in text
    record.write_text(text.replace(thread, f"{thread}  - rush-cord 140 mm\n"), encoding="utf-8")
    assert main(["check", "--archive", "paper"]) == 0
    Path("cords.csv").write_text("supply,kind\nrush-cord,cord\n", encoding="utf-8")
    before = sorted(Path("paper", "projects").rglob("*"))
    assert main(["import", "cords.csv", "--archive", "paper", "--write"]) == 2
    told = capsys.readouterr().err
    assert told.startswith("Nothing was written: the records would no longer be read:\n")
    assert "“140 mm”" in told
    assert sorted(Path("paper", "projects").rglob("*")) == before


def test_a_file_that_is_not_there_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """And so is a folder, and a day that is none."""
    monkeypatch.chdir(tmp_path)
    assert main(["start", "paper"]) == 0
    assert main(["import", "gone.csv", "--archive", "paper"]) == 2
    assert capsys.readouterr().err == "Nothing was written: gone.csv: no such file or directory.\n"
    assert main(["import", "paper", "--archive", "paper"]) == 2
    assert capsys.readouterr().err.startswith("Nothing was written: paper: ")
    Path("a.csv").write_text("name,kind\nx,card\n", encoding="utf-8")
    assert main(["import", "a.csv", "--archive", "paper", "--date", "1.2.26"]) == 2
    assert "“1.2.26” is not a date; write the year first" in capsys.readouterr().err


def test_a_terminal_is_told_nothing_that_it_obeys(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Signs that nobody sees are shown as such, in headings, values and sentences."""
    monkeypatch.chdir(tmp_path)
    assert main(["start", "paper"]) == 0
    text = "name,kind,colour,x\x1b[31m\na\x1b[2J,card,\x1b[1m,\u202e\nb\x07,card,,\n"
    Path("a.csv").write_text(text, encoding="utf-8")
    main(["import", "a.csv", "--archive", "paper"])
    main(["import", "a.csv", "--archive", "paper", "--map", "\x1b[31m=name"])
    told = "".join(capsys.readouterr())
    assert "\ufffd" in told
    assert all(sign.isprintable() for sign in told.replace("\n", ""))


def test_where_nothing_can_be_written_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A file stands where the drawer's folder belongs."""
    monkeypatch.chdir(tmp_path)
    assert main(["start", "paper"]) == 0
    shutil.rmtree(Path("paper", "projects", "inventory"))
    shutil.rmtree(Path("paper", "projects", "first-batch"))
    Path("paper", "projects", "inventory").write_text("", encoding="utf-8")
    Path("a.csv").write_text("name,kind\nx,card\n", encoding="utf-8")
    assert main(["import", "a.csv", "--archive", "paper", "--write"]) == 2
    assert capsys.readouterr().err.startswith("Nothing was written: ")
