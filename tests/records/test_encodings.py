"""Records as other programs save them: each is read, or told what to save it as."""

from __future__ import annotations

from pathlib import Path

import pytest

from records.test_cases import laid_out, read

RECORD = "title: Schlüssel-Anhänger\ndate: 2026-03-14\nmakes: 2\nthing: card\nsteps:\n  - Äste kleben.\n"
SHELL = "=== projects/a/project.yml\ntitle: A\n=== told\n"


@pytest.mark.parametrize(
    ("encoding", "line", "column", "sentence"),
    [
        ("utf-16", 1, 1, "this file is in UTF-16; save it as UTF-8"),
        ("cp1252", 1, 12, "this letter is not in UTF-8; save the file as UTF-8"),
        ("latin-1", 1, 12, "this letter is not in UTF-8; save the file as UTF-8"),
    ],
)
def test_a_record_that_is_not_in_utf_8_says_so(
    encoding: str, line: int, column: int, sentence: str, tmp_path: Path
) -> None:
    """What an old editor saves is told at its first letter that cannot be read."""
    laid_out(SHELL, tmp_path)
    (tmp_path / "projects" / "a" / "project.yml").write_bytes(RECORD.encode(encoding))
    [problem] = read(tmp_path).problems
    assert (problem.place.line, problem.place.column, problem.sentence) == (line, column, sentence)


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_lines_may_end_as_on_any_system(encoding: str, end: str, tmp_path: Path) -> None:
    """Windows, old and new Macs, with a mark at the start or without."""
    laid_out(SHELL, tmp_path)
    record = tmp_path / "projects" / "a" / "project.yml"
    record.write_bytes(RECORD.replace("\n", end).encode(encoding))
    worked = read(tmp_path)
    assert worked.problems == ()
    [project] = worked.archive.projects
    assert (project.title, project.steps[0].sentence) == ("Schlüssel-Anhänger", "Äste kleben.")
