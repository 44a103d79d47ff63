"""Looking things up at the terminal."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Any, Final

import pytest

from batchleaf.cli import main
from kept_demo import lay_plans_beside

ROOT: Final = Path(__file__).parents[2]
RECIPIENTS: Final = """\
people:
  fen-friend:
    name: The friend at the fen
    sent: [2026-05-20 hawthorn-boxes]
"""
Out = pytest.CaptureFixture[str]


@pytest.fixture(scope="module")
def archive(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the demo, in which somebody was sent a box."""
    folder = tmp_path_factory.mktemp("found")
    shutil.copytree(ROOT / "projects", folder / "projects", ignore=shutil.ignore_patterns("*.jpg"))
    shutil.copy(ROOT / "mkdocs.yml", folder)
    shutil.copytree(ROOT / "site_src", folder / "site_src")
    lay_plans_beside(folder)
    (folder / "projects" / "recipients.yml").write_text(RECIPIENTS, encoding="utf-8")
    for record in (folder / "projects").glob("*/project.yml"):
        lines = record.read_text(encoding="utf-8").split("\n")
        record.write_text("\n".join(_without_photos(lines)), encoding="utf-8")
    return folder


def _without_photos(lines: list[str]) -> list[str]:
    """A record whose pictures are not there does not name them."""
    inside, kept = False, []
    for line in lines:
        inside = line.startswith("photos:") or (inside and line.startswith(" "))
        kept += [] if inside else [line]
    return kept


def said(out: Out, archive: Path, *words: str) -> list[str]:
    """The lines that a command prints, by their second column."""
    assert main([*words, "--archive", str(archive)]) == 0
    return out.readouterr().out.splitlines()


def test_every_word_must_be_told_of_a_batch(archive: Path, capsys: Out) -> None:
    """In any case, from its title, its papers, what it is for; several words in one, or apart."""
    found = said(capsys, archive, "find", "WEDDING", "box")
    assert [line.split()[1] for line in found] == ["hawthorn-boxes"]
    assert said(capsys, archive, "find", "wedding box") == found
    assert said(capsys, archive, "find", "no-such-word") == ["No batch is all of this."]


def test_what_can_be_made_now_and_what_somebody_had_not(archive: Path, capsys: Out) -> None:
    """Six boxes are in the drawer; the friend at the fen had them already."""
    boxes = said(capsys, archive, "find", "box", "may card", "--today")
    assert [line.split()[1] for line in boxes] == ["hawthorn-boxes"]
    assert boxes[0].endswith("6 boxes from the drawer")
    others = said(capsys, archive, "find", "may card", "--unsent-to", "fen")
    assert "hawthorn-boxes" not in {line.split()[1] for line in others}


def test_nobody_of_that_name_is_told(archive: Path, capsys: Out) -> None:
    """On standard error, with the code for what cannot be done."""
    assert main(["find", "--unsent-to", "moor", "--archive", str(archive)]) == 2
    assert "nobody “moor”" in capsys.readouterr().err


def answered(out: Out, archive: Path, *words: str) -> Any:
    """The answer of a command for programs."""
    return json.loads("\n".join(said(out, archive, *words, "--json")))


def test_programs_get_the_same(archive: Path, capsys: Out) -> None:
    """Batches by address with cost and number; supplies with what is on hand and each kept piece."""
    (box,) = answered(capsys, archive, "find", "hawthorn")
    assert (box["slug"], box["finished"], box["from_the_drawer"]) == ("hawthorn-boxes", 8, 6)
    assert box["cost_of_one"] == "0.53"
    (oat,) = answered(capsys, archive, "drawer", "oat")
    assert (oat["slug"], oat["on_hand"], oat["unit"]) == ("oat-card", "18", "sheet")
    pieces = [one for supply in answered(capsys, archive, "drawer") for one in supply["kept"]]
    assert sum(one["pieces"] for one in pieces) > 10


def test_what_is_on_hand_stands_in_columns(archive: Path, capsys: Out) -> None:
    """One supply a line, amounts below one another."""
    lines = said(capsys, archive, "drawer", "card")
    assert len(lines) > 5
    starts = {line.index(line.split("  ")[0].replace("-", " "), len(line.split()[0])) for line in lines}
    assert len(starts) == 1
    assert said(capsys, archive, "drawer", "no-such-thing") == ["No supply is called so."]
