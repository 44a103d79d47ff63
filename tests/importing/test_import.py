"""Spreadsheets in, whole answers out: each file in ``cases/`` is a sheet with all that is told of it."""

from __future__ import annotations

import os
import re
import shlex
from pathlib import Path
from typing import Final

import pytest

from batchleaf.cli import main

CASES: Final = Path(__file__).parent / "cases"
DRAWER: Final = Path("paper", "projects", "inventory")


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> Path:
    """A folder with a new archive called paper, in which the commands are typed."""
    monkeypatch.chdir(tmp_path)
    assert main(["start", "paper"]) == 0
    capfd.readouterr()
    return tmp_path


def sections_of(case: str) -> dict[str, str]:
    """A case is text: ``=== sheet``, ``=== typed`` with the options, ``=== code``, ``=== told``.

    ``=== drawer`` is a file that stands in the drawer besides.
    """
    _, *parts = re.split(r"^=== (.+)\n", case, flags=re.MULTILINE)
    return dict(zip(parts[::2], parts[1::2], strict=True))


def typed(*words: str) -> int:
    """The command, typed beside the sheet."""
    return main(["import", "sheet.csv", "--archive", "paper", "--date", "2026-01-01", *words])


@pytest.mark.parametrize("case", sorted(path.stem for path in CASES.glob("*.case")))
def test_what_is_told_of_a_sheet(case: str, here: Path, capfd: pytest.CaptureFixture[str]) -> None:
    """What was understood, what is there, what cannot be taken with its line, and what would be written."""
    sections = sections_of((CASES / f"{case}.case").read_text(encoding="utf-8"))
    Path("sheet.csv").write_text(sections["sheet"], encoding="utf-8")
    if "drawer" in sections:
        (DRAWER / "more.yml").write_text(sections["drawer"], encoding="utf-8")
    code = typed(*shlex.split(sections.get("typed", "")))
    told = "".join(capfd.readouterr()).replace(f"{here.resolve()}{os.sep}", "")
    assert told.replace(str(DRAWER), DRAWER.as_posix()).strip() == sections["told"].strip()
    assert code == int(sections["code"])


@pytest.mark.parametrize("case", sorted(path.stem for path in CASES.glob("*.case")))
def test_what_is_written_is_sound_and_is_written_once(
    case: str, here: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    """Without --write nothing changes; with it the archive checks clean, and once more brings nothing."""
    sections = sections_of((CASES / f"{case}.case").read_text(encoding="utf-8"))
    Path("sheet.csv").write_text(sections["sheet"], encoding="utf-8")
    if "drawer" in sections:
        (DRAWER / "more.yml").write_text(sections["drawer"], encoding="utf-8")
    options = [word for word in shlex.split(sections.get("typed", "")) if word != "--write"]
    before = kept()
    code = typed(*options)
    assert kept() == before
    shown = capfd.readouterr().out
    assert typed(*options, "--write") == code
    assert {name: data for name, data in kept().items() if name in before} == before
    brought = set(kept()) - set(before)
    assert len(brought) == ("with --write it is" in shown)
    assert main(["check", "--archive", "paper"]) == int("not all records" in sections["told"])
    after = kept()
    typed(*options, "--write")
    assert kept() == after


def kept() -> dict[str, bytes]:
    """Every record of the archive."""
    records = (path for path in Path("paper").rglob("*") if path.suffix in (".yml", ".md"))
    return {path.as_posix(): path.read_bytes() for path in records}
