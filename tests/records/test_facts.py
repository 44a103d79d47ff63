"""Records in, facts out."""

from __future__ import annotations

import datetime as dt
from fractions import Fraction
from pathlib import Path

from batchleaf.facts import Collating, Cut, KeptPiece, Part, Project, Rule, Status, Step, Use
from batchleaf.measure.lengths import Size, Unit
from records.test_cases import CASES, laid_out, read

INCH = Fraction("25.4")


def mm(width: str, height: str) -> Size:
    """A size in mm."""
    return Size(Fraction(width), Fraction(height))


def inches(width: str, height: str) -> Size:
    """A size in inches."""
    return Size(Fraction(width) * INCH, Fraction(height) * INCH)


def test_a_sound_record_means_what_it_says(tmp_path: Path) -> None:
    """Roles are filled, defaults applied, amounts are for the whole batch."""
    laid_out((CASES / "sound.case").read_text(encoding="utf-8"), tmp_path)
    worked = read(tmp_path)
    assert worked.problems == ()
    assert worked.archive.projects == (
        Project(
            slug="wren",
            title="Wren notes",
            date=dt.date(2026, 3, 14),
            status=Status.MADE,
            series=None,
            unit=Unit.MM,
            thing="bookmark",
            things="bookmarks",
            finished=10,
            begun=12,
            finished_size=mm("50", "180"),
            parts=(
                Part("A", "base", mm("50", "180"), 1, ("chalk-card",), turns=True),
                Part("B", "strip", mm("44", "70"), 1, ("ripple-green", "dusk-rose"), turns=True, below="A"),
            ),
            cut=(
                Cut("chalk-card", 2, None),
                Cut("ripple-green", 1, None, (KeptPiece(mm("20", "90"), 1),)),
                Cut("dusk-rose", 1, None, (KeptPiece(mm("20", "90"), 1),)),
            ),
            uses=(Use("jute-cord", Fraction("1.4"), Fraction("0.14")),),
            minutes=130,
            steps=(Step("Cut everything.", 65),),
            photos=(),
            notes="",
            collating=(Collating(("B",), Rule.MIXED),),
        ),
    )


LAYERS = """\
=== projects/a/project.yml
title: Layers
date: 2026-03-14
makes: 2
unit: in
base: card quarter-letter, side fold
papers:
  base: chalk-card
  panel: ripple-green, dusk-rose
parts:
  mat:
    border: 1/8
    paper: base
  panel:
    border: 1/4
    paper: panel
  strip:
    size: 3 x 1/2
    paper: as C
  second mat:
    border: 1/8
    on: A
    paper: base
cut:
  - chalk-card 1 sheet
=== told
"""


def test_a_border_is_left_on_every_side_of_the_part_below(tmp_path: Path) -> None:
    """A mat 1/8 in smaller on each side is a quarter smaller in all (common practice)."""
    laid_out(LAYERS, tmp_path)
    [project] = read(tmp_path).archive.projects
    assert [(part.letter, part.size) for part in project.parts] == [
        ("A", inches("17/2", "11/2")),
        ("B", inches("4", "21/4")),
        ("C", inches("7/2", "19/4")),
        ("D", inches("3", "1/2")),
        ("E", inches("4", "21/4")),
    ]
    assert project.parts[3].papers == project.parts[2].papers == ("ripple-green", "dusk-rose")
