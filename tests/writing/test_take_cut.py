"""The sheets of a plan, written into the record."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from batchleaf.cli import main
from batchleaf.writing.take_cut import CannotTakeError, with_cut

RECORD = """\
# my own remark
title: Gorse tags   # stays
date: 2026-03-01
status: planned
makes: 0 of 10
base: tag 50 x 90
papers:
  base: white-card
time: 1 h
"""


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with one planned batch."""
    folder = tmp_path / "my paper"
    assert main(["start", str(folder)]) == 0
    record = folder / "projects" / "gorse-tags" / "project.yml"
    record.parent.mkdir()
    record.write_text(RECORD, encoding="utf-8")
    return folder


def test_planned_sheets_become_lines_of_the_record(archive: Path) -> None:
    """Ten tags of 50 x 90 come from one A4 sheet (twelve fit); all else stays byte for byte."""
    assert main(["take", "cut", "gorse-tags", "--yes", "--archive", str(archive)]) == 0
    written = (archive / "projects" / "gorse-tags" / "project.yml").read_text(encoding="utf-8")
    assert written == RECORD.replace("time:", "cut:\n  - white-card 1 sheet\ntime:")
    assert main(["check", "--archive", str(archive)]) == 0


def test_what_was_cut_is_never_written_over(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A record that says already what was cut stays as it is."""
    record = archive / "projects" / "first-batch" / "project.yml"
    before = record.read_bytes()
    assert main(["take", "cut", "first-batch", "--yes", "--archive", str(archive)]) == 2
    assert "the record says already what was cut" in capsys.readouterr().err
    assert record.read_bytes() == before


@pytest.mark.parametrize(("answer", "code"), [("yes", 0), ("no", 2), ("", 2)])
def test_it_asks_first(archive: Path, monkeypatch: pytest.MonkeyPatch, answer: str, code: int) -> None:
    """Only a yes writes."""
    monkeypatch.setattr("builtins.input", lambda _: answer)
    record = archive / "projects" / "gorse-tags" / "project.yml"
    assert main(["take", "cut", "gorse-tags", "--archive", str(archive)]) == code
    assert (record.read_text(encoding="utf-8") != RECORD) == (code == 0)


def test_where_nobody_types_nothing_is_written(archive: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The end of the input is no yes, and no traceback."""

    def nobody(_: str) -> str:
        raise EOFError

    monkeypatch.setattr("builtins.input", nobody)
    assert main(["take", "cut", "gorse-tags", "--archive", str(archive)]) == 2


def test_an_unknown_batch_is_told(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """In a sentence."""
    assert main(["take", "cut", "nothing", "--yes", "--archive", str(archive)]) == 2
    assert "Nothing was written: there is no batch “nothing”." in capsys.readouterr().err


def cut(record: str) -> str:
    """The record with one line of what was cut."""
    return with_cut(record.encode(), ("x 1 sheet",)).decode()


@pytest.mark.parametrize(
    ("record", "written"),
    [
        ("title: a\r\nsteps:\r\n- b\r\n", "title: a\r\ncut:\r\n  - x 1 sheet\r\nsteps:\r\n- b\r\n"),
        ("title: a", "title: a\ncut:\n  - x 1 sheet\n"),
        ("\ufefftitle: a\n", "\ufefftitle: a\ncut:\n  - x 1 sheet\n"),
        ("time: 1 h\n", "cut:\n  - x 1 sheet\ntime: 1 h\n"),
        ("# who\ntime: 1 h\n", "# who\ncut:\n  - x 1 sheet\ntime: 1 h\n"),
        ("title: a\n\n# how long\ntime: 1 h\n", "title: a\ncut:\n  - x 1 sheet\n\n# how long\ntime: 1 h\n"),
        ("title: a\nwas: [b]\ndate: c\n# end\n", "title: a\nwas: [b]\ndate: c\ncut:\n  - x 1 sheet\n# end\n"),
        ("---\ntitle: a\n...\n", "---\ntitle: a\ncut:\n  - x 1 sheet\n...\n"),
        ("steps:\n  - a\ntitle: b\n", "steps:\n  - a\ntitle: b\ncut:\n  - x 1 sheet\n"),
        ("own: 1\ntitle: b\n", "own: 1\ntitle: b\ncut:\n  - x 1 sheet\n"),
    ],
)
def test_every_line_that_was_there_stays(record: str, written: str) -> None:
    """Line ends, remarks, the order of keys; the new lines come behind the keys that usually stand before."""
    assert cut(record) == written


@pytest.mark.parametrize(
    ("record", "why"),
    [
        ("cut: []\n", "the record says already what was cut; change it there"),
        ("'cut': []\n", "the record says already what was cut; change it there"),
        (
            "{title: a}\n",
            "its keys do not stand at the start of their lines; write each on a line of its own",
        ),
        ("title: a\ntitle: b\n", "line 2: “title” is here twice; it stands in line 1 already"),
        ("title: [\n", "line 1: this does not fit what stands above it"),
        ("- a\n", "it is not written as keys with values"),
        ("title: |+\n  a\n\n", "the lines do not fit between those that are there; write them yourself"),
    ],
)
def test_what_cannot_be_added_to_is_told(record: str, why: str) -> None:
    """In a sentence, and nothing is written."""
    with pytest.raises(CannotTakeError, match=re.escape(why)):
        cut(record)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (RECORD.replace("tags", "täg").encode("cp1252"), "project.yml:2:15: this letter is not in UTF-8"),
        (RECORD.encode("utf-16"), "project.yml:1:1: this file is in UTF-16; save it as UTF-8"),
        (b"title: [\n", "project.yml:1:9: this does not fit what stands above it"),
        (b"", "project.yml:1:1: nothing is written in this file yet"),
    ],
)
def test_a_record_that_cannot_be_read_is_told(
    archive: Path, capsys: pytest.CaptureFixture[str], data: bytes, says: str
) -> None:
    """Where it stands and what to do, without a traceback, and it stays as it is."""
    record = archive / "projects" / "gorse-tags" / "project.yml"
    record.write_bytes(data)
    assert main(["take", "cut", "gorse-tags", "--yes", "--archive", str(archive)]) == 2
    told = capsys.readouterr().err
    assert told.startswith("Nothing was written, since not all records can be read:\n")
    assert f"projects/gorse-tags/{says}" in told
    assert record.read_bytes() == data


def test_a_record_from_windows_keeps_its_line_ends(archive: Path) -> None:
    """Byte for byte, through the command."""
    record = archive / "projects" / "gorse-tags" / "project.yml"
    record.write_bytes(RECORD.replace("\n", "\r\n").encode())
    assert main(["take", "cut", "gorse-tags", "--yes", "--archive", str(archive)]) == 0
    written = RECORD.replace("time:", "cut:\n  - white-card 1 sheet\ntime:")
    assert record.read_bytes() == written.replace("\n", "\r\n").encode()
