"""Saying what a record leaves to be understood, and writing it into the record."""

from __future__ import annotations

import shutil
from codecs import BOM_UTF8
from pathlib import Path

import pytest

from batchleaf.cli import main
from batchleaf.writing.archive import start_archive

RECORD = """\
title: Low water
date: 2026-03-14
makes: 0 of 4
status: planned   # until the card comes
base: card A6, side fold
papers:
  base: grey-card
parts:
  band: 100 x 20, as A   # a wide one
"""
LONG = """\
title: Low water
date: 2026-03-14
makes: 0 of 4
status: planned   # until the card comes
base: card 210 x 148 mm, side fold
papers:
  base: grey-card
parts:
  B band:
    size: 100 x 20 mm
    on: A
    paper: base
    side: front
    each: 1
    extra: 0
    turn: yes   # a wide one
format: 1
notes: public
unit: mm
thing: card
bench:
  - score A, by hand, after cutting
  - fold A, by hand, after cutting
"""
ASKED = """\
format: 1
notes: public
unit: mm
thing: card
base: card 210 x 148 mm, side fold
bench:
  - score A, by hand, after cutting
  - fold A, by hand, after cutting
parts:
  B band:
    size: 100 x 20 mm
    on: A
    paper: base
    side: front
    each: 1
    extra: 0
    turn: yes
"""
CARD = """\
supplies:
  grey-card:
    name: grey card
    kind: card
    size: 300 x 300 mm
"""


@pytest.fixture
def archive(tmp_path: Path) -> Path:
    """A new archive with one batch, in the way that a maker writes it."""
    folder = tmp_path / "paper"
    start_archive(folder)
    (folder / "projects" / "low-water").mkdir()
    (folder / "projects" / "low-water" / "project.yml").write_text(RECORD, encoding="utf-8")
    (folder / "projects" / "inventory" / "grey.yml").write_text(CARD, encoding="utf-8")
    return folder


def _record(archive: Path) -> Path:
    return archive / "projects" / "low-water" / "project.yml"


def test_says_what_a_record_means_and_why(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Each line is one that might be written, with the reason why it need not be."""
    assert main(["check", "--archive", str(archive), "--explain", "low-water"]) == 0
    said = capsys.readouterr().out
    assert said == (
        "projects/low-water/project.yml also means:\n"
        "  format: 1  # the default\n"
        "  notes: public  # the default\n"
        "  unit: mm  # the site’s unit\n"
        "  thing: card  # from the base\n"
        "  base: card 210 x 148 mm, side fold  # its measures, and how it is folded\n"
        "  bench:  # with what follows from scores, stamps and dies\n"
        "    - score A, by hand, after cutting\n"
        "    - fold A, by hand, after cutting\n"
        "  parts:\n"
        "    B band:  # the next letter that is free\n"
        "    band:\n"
        "      size: 100 x 20 mm  # as written\n"
        "      on: A  # the part before\n"
        "      paper: base  # the same as that part\n"
        "      side: front  # the default\n"
        "      each: 1  # the default\n"
        "      extra: 0  # the default\n"
        "      turn: yes  # the default\n\n"
    )


STUCK = """\
title: High water
date: 2026-03-14
makes: 0 of 4
status: planned
format: 1
unit: mm
thing: card
base: card 210 x 148 mm, side fold
papers:
  base: grey-card
parts:
  B strip: {size: 44 x 70 mm, paper: base}
  C label: {size: 95 x 70 mm, paper: base, stick: foam-square}
  D tag: {size: 20 x 30 mm, paper: base, stick: foam-square 6}
  E leaf: {size: 20 x 30 mm, paper: base, stick: nothing}
packing:
  - clear-bag per 5
  - clear-bag
"""
ADHESIVES = """\
stick: paper-tape
supplies:
  paper-tape: {name: double-sided tape, kind: adhesive, unit: m, sticks: two long sides}
  foam-square: {name: foam square, kind: adhesive, sticks: 1 per 20 x 30}
  bench-glue: {name: bench glue, kind: adhesive, unit: ml, sticks: 1 ml per 100 x 100 mm}
  clear-bag: {name: clear bag, kind: bags}
"""


@pytest.mark.parametrize(
    ("more", "lines"),
    [
        ("", ["stick: paper-tape  # stuck with double-sided tape: two long sides, 140 mm each"]),
        (
            "stick: bench-glue\n",
            ["stick: bench-glue  # stuck with bench glue: 1 ml per 100 × 100 mm, so 0.308 ml each"],
        ),
        (
            "stick: foam-square\n",
            ["stick: foam-square  # stuck with foam square: 1 per 20 × 30 mm, at least 1, so 6 pieces each"],
        ),
        (
            "supplies: [paper-tape]\n",
            ["stick: paper-tape  # stuck with double-sided tape; supplies says how much"],
        ),
        ("stick: nothing\n", []),
    ],
)
def test_says_what_each_part_is_stuck_with(
    more: str, lines: list[str], archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """With how much that is for one, where no part says it; and what each amount is counted in."""
    _record(archive).write_text(f"{STUCK}{more}", encoding="utf-8")
    (archive / "projects" / "inventory" / "stick.yml").write_text(ADHESIVES, encoding="utf-8")
    assert main(["check", "--archive", str(archive), "--explain", "low-water"]) == 0
    said = [line.strip() for line in capsys.readouterr().out.splitlines()]
    assert [line for line in said if "stick:" in line] == lines
    assert "- clear-bag 1 piece per 5  # what it is counted in" in said
    assert "- clear-bag 1 piece  # what it is counted in" in said
    assert main(["check", "--archive", str(archive), "--explain", "stick"]) == 0
    assert "sticks: 1 per 20 x 30 mm, at least 1  # the unit of the area, and the least" in (
        capsys.readouterr().out
    )


def test_a_mark_is_said_with_what_it_counts(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """As any other amount that goes without a word."""
    grey = archive / "projects" / "inventory" / "grey.yml"
    grey.write_text(f"{CARD}    mark: 1\n", encoding="utf-8")
    assert main(["check", "--archive", str(archive), "--explain", "grey"]) == 0
    assert "    mark: 1 sheet  # what it is counted in\n" in capsys.readouterr().out
    grey.write_text(f"{CARD}    mark: 2 sheets\n", encoding="utf-8")
    assert main(["check", "--archive", str(archive), "--explain", "grey"]) == 0
    assert "mark" not in capsys.readouterr().out


def test_every_record_is_explained_where_none_is_named(
    archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Batches and files of the drawer alike."""
    assert main(["check", "--archive", str(archive), "--explain"]) == 0
    said = capsys.readouterr().out
    assert "projects/low-water/project.yml also means:" in said
    assert "projects/inventory/grey.yml also means:" in said


@pytest.mark.parametrize("mark", [b"", BOM_UTF8])
def test_writes_it_into_the_record(archive: Path, mark: bytes) -> None:
    """Remarks and the order of lines stay, and so does the mark that an editor put before the text."""
    _record(archive).write_bytes(mark + RECORD.encode())
    assert main(["take", "--archive", str(archive), "defaults", "low-water", "--yes"]) == 0
    assert _record(archive).read_bytes() == mark + LONG.encode()


def test_asks_first(
    archive: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whoever does not say yes keeps the record as it is, having seen the lines that would be new."""
    monkeypatch.setattr("builtins.input", lambda _: "no")
    assert main(["take", "--archive", str(archive), "defaults", "low-water"]) == 2
    assert _record(archive).read_text(encoding="utf-8") == RECORD
    told = capsys.readouterr()
    assert told.out == ASKED
    assert told.err == "Nothing was written.\n"


def test_a_record_in_full_has_nothing_more_to_say(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Nothing is written twice."""
    _record(archive).write_text(LONG, encoding="utf-8")
    assert main(["take", "--archive", str(archive), "defaults", "low-water"]) == 0
    assert main(["check", "--archive", str(archive), "--explain", "low-water"]) == 0
    said = capsys.readouterr().out
    assert said.splitlines()[:2] == ["projects/low-water/project.yml says all there is to say."] * 2


@pytest.mark.parametrize(
    ("arguments", "result"),
    [
        (["check", "--explain", "high-water"], "explained"),
        (["take", "defaults", "high-water"], "written"),
    ],
)
def test_a_record_that_is_not_there(
    arguments: list[str], result: str, archive: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A sentence, and nothing done."""
    assert main([*arguments, "--archive", str(archive)]) == 2
    told = capsys.readouterr().err
    assert told.startswith(("Nothing is ", "Nothing was "))
    assert told.endswith(
        f"{result}: there is no record “high-water”; name the folder of a batch,"
        " or a file of the drawer like card.\n"
    )


def test_records_with_mistakes_are_checked_instead(archive: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """What cannot be read means nothing yet, so what is wrong is told as the check tells it."""
    shutil.rmtree(archive / "projects" / "inventory")
    assert main(["check", "--archive", str(archive)]) == 1
    checked = capsys.readouterr()
    assert "“grey-card” is not in the drawer" in checked.out
    assert main(["check", "--archive", str(archive), "--explain", "low-water"]) == 1
    assert capsys.readouterr() == checked
    assert main(["take", "--archive", str(archive), "defaults", "low-water", "--yes"]) == 2
    assert capsys.readouterr().err == "Nothing was written: not all records can be read; check says why.\n"
