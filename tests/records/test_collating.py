"""What a record means by its rules for the papers of one make."""

from __future__ import annotations

from pathlib import Path

import pytest

from batchleaf.facts import Rule, Weight
from batchleaf.records.archive import read_archive
from records.test_cases import SETTINGS

DRAWER = """\
supplies:
  card: {name: card, kind: card, size: 300 x 300}
  fern: {name: fern, kind: paper, size: 100 x 100}
  plum: {name: plum, kind: paper, size: 100 x 100}
  sky: {name: sky, kind: paper, size: 100 x 100}
  pad: {name: pad, kind: paper, size: 100 x 100, designs: 6 x 2}
"""
DESIGN = """\
title: Four
base: card 200 x 100
parts:
  B strip: {size: 30 x 10, each: 2}
  C dot: {size: 10 x 10, paper: strip}
collate: B and C alike
"""
BATCH = """\
title: Batch
date: 2026-03-14
status: planned
makes: 0 of 6
"""


def meant(folder: Path, record: str) -> list[tuple[str, Rule]]:
    """The letters and the rule of each group."""
    files = {"inventory/drawer.yml": DRAWER, "designs/four.yml": DESIGN, "a/project.yml": BATCH + record}
    for name, text in files.items():
        path = folder / "projects" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    reading = read_archive(folder / "projects", SETTINGS)
    assert [one.sentence for one in reading.problems if one.weight is Weight.ERROR] == []
    (project,) = reading.archive.projects
    return [("".join(one.letters), one.rule) for one in project.collating]


def parts(*papers: str, said: str = "") -> str:
    """A card whose parts B, C … come from these papers."""
    lines = [f"  {letter} part {letter}: {{size: 5 x 5, paper: '{of}'}}"
             for letter, of in zip("BCDEF", papers, strict=False)]  # fmt: skip
    collate = [f"collate: {said}"] if said else []
    return "\n".join(["base: card 200 x 100", "papers: {base: card}", "parts:", *lines, *collate])


MIXED, DIFFER, ALIKE, ANY = Rule.MIXED, Rule.NONE_TWICE, Rule.ALIKE, Rule.ANY


@pytest.mark.parametrize(
    ("record", "groups"),
    [
        (parts("fern", "plum"), []),
        (parts("fern, plum"), [("B", MIXED)]),
        (parts("fern, plum", "card", "plum, sky"), [("BD", MIXED)]),
        (parts("fern, plum", "sky, card"), [("B", MIXED), ("C", MIXED)]),
        (parts("fern, plum", "sky, card", "plum, sky"), [("BCD", MIXED)]),
        (parts("any 3 of pad", "pad 1 2"), [("BC", MIXED)]),
        (parts("pad 1 2", "pad 3 4"), [("B", MIXED), ("C", MIXED)]),
        (parts("fern, plum", "sky, card", said="mixed"), [("B", MIXED), ("C", MIXED)]),
        (parts("fern, plum", "sky, card", said="no paper twice"), [("BC", DIFFER)]),
        (parts("fern, plum", "sky", said="no side twice"), [("B", Rule.NO_SIDE_TWICE)]),
        (parts("fern, plum", "plum, fern", said="all alike"), [("BC", ALIKE)]),
        (parts("fern, plum", "plum, fern", said="any"), [("BC", ANY)]),
        (parts("fern, plum", "plum", said="C and B differ"), [("BC", DIFFER)]),
        (
            parts(*["fern, plum"] * 5, said="any, C, E and D alike"),
            [("BF", ANY), ("CDE", ALIKE)],
        ),
        (parts(*["fern, plum"] * 3, said="C alike"), [("BD", MIXED), ("C", ALIKE)]),
        ("design: four\npapers: {base: card, strip: 'fern, plum'}", [("BC", ALIKE)]),
        ("design: four\npapers: {base: card, strip: 'fern, plum'}\ncollate: any", [("BC", ANY)]),
        ("design: four\npapers: {base: card, strip: fern}", [("BC", ALIKE)]),
    ],
)
def test_what_is_ruled_together(record: str, groups: list[tuple[str, Rule]], tmp_path: Path) -> None:
    """Mixed parts that may share a paper, those that a rule names, and all others by the rule for all."""
    assert meant(tmp_path, record) == groups
