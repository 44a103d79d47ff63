"""Records of an older Batchleaf: rewritten in places, and sound afterwards."""

from __future__ import annotations

from codecs import BOM_UTF8
from collections.abc import Iterator
from pathlib import Path
from typing import Final, get_args

import pytest

from batchleaf.cli import main
from batchleaf.records.archive import record_files
from batchleaf.records.formats import LATEST
from batchleaf.records.kinds import KINDS
from batchleaf.records.nodes import Mapping, child
from batchleaf.records.written.shape import FORMAT
from batchleaf.writing.edits import Edit, Rename
from batchleaf.writing.upgrade import STEPS, CannotUpgradeError, Step, upgraded

OLD: Final = Path(__file__).parent / "old" / "patterned.yml"
"""From the first days of the demo, before format 1 was settled."""


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with a file of an older one."""
    assert main(["start", str(tmp_path / "paper")]) == 0
    drawer(tmp_path / "paper").write_bytes(OLD.read_bytes())
    return tmp_path / "paper"


def drawer(archive: Path) -> Path:
    """The old file."""
    return archive / "projects" / "inventory" / "patterned.yml"


def test_the_format_that_is_read_is_the_newest() -> None:
    """What records may say, and what they are rewritten to, is one number."""
    assert get_args(FORMAT) == (str(LATEST),)
    assert {step.kind for step in STEPS} <= KINDS.keys()
    assert all(step.written_in <= LATEST for step in STEPS)


@pytest.mark.parametrize("end", ["\n", "\r\n"])
@pytest.mark.parametrize("mark", [b"", BOM_UTF8])
def test_an_old_drawer_checks_clean_afterwards(
    archive: Path, mark: bytes, end: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """Only what changed is written; remarks, ends of lines and a mark at the start stay."""
    before = mark + OLD.read_bytes().replace(b"\r\n", b"\n").replace(b"\n", end.encode())
    drawer(archive).write_bytes(before)
    assert main(["check", "--archive", str(archive)]) == 1
    told = "“turn” is no key of this record any more; the command upgrade rewrites it"
    assert told in capsys.readouterr().out
    assert main(["upgrade", "--archive", str(archive), "--yes"]) == 0
    now = before.replace(b"turn: no ", b"front: one-way ").replace(b"turn: yes}", b'front: "any-way"}')
    assert drawer(archive).read_bytes() == now
    assert main(["check", "--archive", str(archive)]) == 0
    capsys.readouterr()
    assert main(["upgrade", "--archive", str(archive)]) == 0
    assert capsys.readouterr().out == "All records are in the format of this Batchleaf.\n"


def test_all_records_that_there_are_stay_as_they_are() -> None:
    """The demo and the starter are in today's format, byte for byte."""
    starter = Path(__file__).parents[2] / "plugins" / "batchleaf" / "writing" / "starter"
    for projects in (Path(__file__).parents[2] / "projects", starter / "projects"):
        found = list(record_files(projects))
        assert {"project", "inventory"} <= {kind for _, kind in found}
        for file, kind in found:
            record = file.read_bytes()
            assert upgraded(record, kind).record == record


@pytest.mark.parametrize("answer", ["no", ""])
def test_it_asks_first(archive: Path, monkeypatch: pytest.MonkeyPatch, answer: str) -> None:
    """Without a yes the record stays."""
    monkeypatch.setattr("builtins.input", lambda _: answer)
    assert main(["upgrade", "--archive", str(archive)]) == 2
    assert drawer(archive).read_bytes() == OLD.read_bytes()


@pytest.mark.parametrize(
    ("added", "sentence"),
    [
        ("format: 2\n", "8:9: this record is in format 2, so it was written for a later Batchleaf;"),
        ("format: two\n", "8:9: “two” is no format of a record; write 1, or leave the line out"),
        ("tools: {a\n", "8:10: this does not fit what stands above it;"),
    ],
)
def test_what_is_not_known_stays(
    archive: Path, added: str, sentence: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """A newer format, one that is none, what cannot be read: each is told, and nothing is written."""
    other = archive / "projects" / "inventory" / "more.yml"
    other.write_text("# a\n" * 7 + added, encoding="utf-8")
    assert main(["check", "--archive", str(archive)]) == 1
    assert f"projects/inventory/more.yml:{sentence}" in capsys.readouterr().out
    assert main(["upgrade", "--archive", str(archive), "--yes"]) == 2
    told = capsys.readouterr().err
    assert told.startswith(f"Nothing was written: projects/inventory/more.yml:{sentence.split(':')[0]}: ")
    assert drawer(archive).read_bytes() == OLD.read_bytes()


def test_where_the_check_would_fail_all_stays(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A record that is off in another way is not half rewritten; the sentence says what is off."""
    text = OLD.read_text(encoding="utf-8").replace("120 g/m²", "120 stone", 1)
    drawer(archive).write_text(text, encoding="utf-8", newline="\n")
    assert main(["upgrade", "--archive", str(archive), "--yes"]) == 2
    assert "“120 stone”" in capsys.readouterr().err
    assert drawer(archive).read_text(encoding="utf-8") == text


def test_a_later_format_goes_step_by_step() -> None:
    """Each format has its own changes; a record takes those from its own on, and then says the newest."""

    def rename(old: str, new: str) -> Step:
        def edits(record: Mapping) -> Iterator[Edit]:
            if child(record, old) is not None:
                yield Rename((old,), new)

        return Step(int(old[-1]), "series", f"{old} is {new}", edits)

    steps = (rename("a1", "a2"), rename("a2", "a3"))
    first = upgraded(b"a1: x  # mine\n", "series", steps, latest=3)
    assert first.record == b"a3: x  # mine\nformat: 3\n"
    assert first.told == ("a1 is a2", "a2 is a3", "its format is 3")
    second = upgraded(b"format: 2\na2: x\na1: y\n", "series", steps, latest=3)
    assert second.record == b"format: 3\na3: x\na1: y\n"
    other = upgraded(b"a1: x\n", "design", steps, latest=3)
    assert other.record == b"a1: x\nformat: 3\n"
    with pytest.raises(CannotUpgradeError, match="later Batchleaf"):
        upgraded(b"format: 4\n", "series", steps, latest=3)
