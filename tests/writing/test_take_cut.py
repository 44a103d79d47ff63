"""The sheets of a plan, written into the record."""

from __future__ import annotations

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
    assert main(["take-cut", "gorse-tags", "--yes", "--archive", str(archive)]) == 0
    written = (archive / "projects" / "gorse-tags" / "project.yml").read_text(encoding="utf-8")
    assert written == RECORD.replace("time:", "cut:\n  - white-card 1 sheet\ntime:")
    assert main(["check", "--archive", str(archive)]) == 0


def test_what_was_cut_is_never_written_over(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A record that says already what was cut stays as it is."""
    record = archive / "projects" / "first-batch" / "project.yml"
    before = record.read_bytes()
    assert main(["take-cut", "first-batch", "--yes", "--archive", str(archive)]) == 2
    assert "the record says already what was cut" in capsys.readouterr().err
    assert record.read_bytes() == before


@pytest.mark.parametrize(("answer", "code"), [("yes", 0), ("no", 2), ("", 2)])
def test_it_asks_first(archive: Path, monkeypatch: pytest.MonkeyPatch, answer: str, code: int) -> None:
    """Only a yes writes."""
    monkeypatch.setattr("builtins.input", lambda _: answer)
    record = archive / "projects" / "gorse-tags" / "project.yml"
    assert main(["take-cut", "gorse-tags", "--archive", str(archive)]) == code
    assert (record.read_text(encoding="utf-8") != RECORD) == (code == 0)


def test_where_nobody_types_nothing_is_written(archive: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The end of the input is no yes, and no traceback."""

    def nobody(_: str) -> str:
        raise EOFError

    monkeypatch.setattr("builtins.input", nobody)
    assert main(["take-cut", "gorse-tags", "--archive", str(archive)]) == 2


def test_an_unknown_batch_is_told(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """In a sentence."""
    assert main(["take-cut", "nothing", "--yes", "--archive", str(archive)]) == 2
    assert "There is no batch “nothing”." in capsys.readouterr().err


def test_line_ends_stay_as_they_are() -> None:
    """A record written on Windows keeps its line ends, one without a last line end gets it."""
    assert with_cut("a: 1\r\nsteps:\r\n", ["x 1 sheet"]) == "a: 1\r\ncut:\r\n  - x 1 sheet\r\nsteps:\r\n"
    assert with_cut("a: 1", ["x 1 sheet"]) == "a: 1\ncut:\n  - x 1 sheet\n"
    with pytest.raises(CannotTakeError):
        with_cut("cut: []\n", ["x 1 sheet"])
