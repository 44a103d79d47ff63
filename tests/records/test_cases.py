"""Records in, whole messages out: each file in ``cases/`` is one small archive with what is told of it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from batchleaf.facts import Problem, Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.records.kinds import KINDS, keys_of, models_of
from batchleaf.records.recipients import Batches, read_recipients
from batchleaf.telling import told
from batchleaf.workflow import Worked, read_and_work_out

CASES = Path(__file__).parent / "cases"
SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
DRAWER = (CASES / "drawer.yml").read_text(encoding="utf-8")
"""The drawer that every case has unless it brings its own."""


def files_of(case: str) -> tuple[dict[str, str], str]:
    """The files of a case, and what should be told of them.

    A case is text: each line ``=== path`` begins a file, ``=== told`` the messages.
    """
    _, *sections = re.split(r"^=== (.+)\n", case, flags=re.MULTILINE)
    files = dict(zip(sections[::2], sections[1::2], strict=True))
    expected = files.pop("told")
    files.setdefault("projects/inventory/drawer.yml", DRAWER)
    return files, expected.strip("\n")


def laid_out(case: str, folder: Path) -> str:
    """Write the files of a case below ``folder``; returns what should be told."""
    files, expected = files_of(case)
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return expected


def read(folder: Path) -> Worked:
    """Everything that is worked out of the archive in ``folder``."""
    return read_and_work_out(folder / "projects", SETTINGS)


def problems_of(folder: Path) -> list[Problem]:
    """All that a check tells: of the archive, and of the recipients, which no site is made from."""
    worked = read(folder)
    batches = Batches(worked.archive.projects, worked.slugs)
    return sorted((*worked.problems, *read_recipients(folder / "projects", batches).problems))


@pytest.mark.parametrize("case", sorted(path.stem for path in CASES.glob("*.case")))
def test_what_is_told_of_a_record(case: str, tmp_path: Path) -> None:
    """Every problem is told in one run, each at its line, in whole sentences."""
    expected = laid_out((CASES / f"{case}.case").read_text(encoding="utf-8"), tmp_path)
    assert "\n".join(told(problem) for problem in problems_of(tmp_path)) == expected


@pytest.mark.parametrize("case", sorted(path.stem for path in CASES.glob("*.case")))
def test_every_problem_names_a_line_that_is_there(case: str, tmp_path: Path) -> None:
    """No message sends a maker to a place that does not exist."""
    laid_out((CASES / f"{case}.case").read_text(encoding="utf-8"), tmp_path)
    for problem in problems_of(tmp_path):
        path = tmp_path / problem.place.file
        assert path.exists()
        if path.is_file() and path.suffix in (".yml", ".md"):
            lines = path.read_text(encoding="utf-8", errors="replace").splitlines() or [""]
            assert 1 <= problem.place.line <= len(lines)
            assert 1 <= problem.place.column <= len(lines[problem.place.line - 1]) + 1


KEYS = {key.name for kind in KINDS.values() for model in models_of(kind.model) for key in keys_of(model)}
RECORDS = "\n".join(
    re.split(r"^=== told\n", path.read_text(encoding="utf-8"), flags=re.MULTILINE)[0]
    for path in [CASES / "drawer.yml", *CASES.glob("*.case")]
)


@pytest.mark.parametrize("key", sorted(KEYS))
def test_every_key_is_in_a_case(key: str) -> None:
    """No key is read without a record here that has it."""
    assert re.search(rf"(?:^|[\s{{]){re.escape(key)}:", RECORDS)
