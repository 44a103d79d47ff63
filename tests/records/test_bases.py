"""What a base says, and what its blank folds to."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts import Fold, Origin, Score
from batchleaf.facts.envelopes import named
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.bases import read_base
from batchleaf.records.standard_sizes import ENVELOPES, NAMED
from records.test_cases import laid_out, read
from records.test_facts import inches, mm


@pytest.mark.parametrize(
    ("text", "thing", "blank", "finished"),
    [
        # ISO 216: A4 is 210 x 297, A5 148 x 210, A6 105 x 148, A7 74 x 105.
        ("print A4", "print", mm("210", "297"), mm("210", "297")),
        ("card A5, side fold", "card", mm("296", "210"), mm("148", "210")),
        ("card A6, side fold", "card", mm("210", "148"), mm("105", "148")),
        ("card a6, Top Fold", "card", mm("148", "210"), mm("148", "105")),
        ("place card A7", "place card", mm("74", "105"), mm("74", "105")),
        ("place card A7, tent", "place card", mm("105", "148"), mm("105", "74")),
        ("card A6, gate fold", "card", mm("210", "148"), mm("105", "148")),
        ("card A7, accordion of 4", "card", mm("296", "105"), mm("74", "105")),
        # A third of A4, and the square of European card makers (common practice).
        ("card DL, side fold", "card", mm("198", "210"), mm("99", "210")),
        ("card square, side fold", "card", mm("270", "135"), mm("135", "135")),
        # A letter sheet is 8 1/2 x 11 in; halved and folded it is a quarter (common practice).
        ("print letter", "print", inches("17/2", "11"), inches("17/2", "11")),
        ("card quarter-letter, side fold", "card", inches("17/2", "11/2"), inches("17/4", "11/2")),
        ("card quarter-letter, top fold", "card", inches("11/2", "17/2"), inches("11/2", "17/4")),
        ("card half-letter, side fold", "card", inches("11", "17/2"), inches("11/2", "17/2")),
        # Slim cards are 3 1/2 x 8 1/2 in, square ones 5 x 5 in (common practice).
        ("slim card slim, side fold", "slim card", inches("7", "17/2"), inches("7/2", "17/2")),
        ("card five-inch-square, side fold", "card", inches("10", "5"), inches("5", "5")),
        # Things that have a size of their own (common practice; a number 5 tag is 2 3/8 x 4 3/4 in).
        ("bookmark", "bookmark", mm("50", "150"), mm("50", "150")),
        ("gift tag", "gift tag", inches("19/8", "19/4"), inches("19/8", "19/4")),
        # A measured size is the blank's.
        ("bookmark 50 x 180", "bookmark", mm("50", "180"), mm("50", "180")),
        ("box lining 50 x 180, flat", "box lining", mm("50", "180"), mm("50", "180")),
        ("card 8 1/2 x 5 1/2 in, side fold", "card", inches("17/2", "11/2"), inches("17/4", "11/2")),
        ("card 8 1/2 x 5 1/2 in, gate fold", "card", inches("17/2", "11/2"), inches("17/4", "11/2")),
        ("card 16 x 6 in, accordion of 4", "card", inches("16", "6"), inches("4", "6")),
        ("place card 100 x 120, tent", "place card", mm("100", "120"), mm("100", "60")),
        # What a piece folds to is its finished size, the way round that is written.
        ("card folds to 4 1/4 x 5 1/2 in, side fold", "card", inches("17/2", "11/2"), inches("17/4", "11/2")),
        ("card folds to 5 1/2 x 4 1/4 in, top fold", "card", inches("11/2", "17/2"), inches("11/2", "17/4")),
        ("card folds to 74 x 105, accordion of 4", "card", mm("296", "105"), mm("74", "105")),
    ],
)  # fmt: skip
def test_a_base_is_measured_or_named(text: str, thing: str, blank: Size, finished: Size) -> None:
    """A written size is the blank's, a named one the finished piece's."""
    base = read_base(text, Unit.MM)
    assert (base.thing, base.size, base.finished_size) == (thing, blank, finished)
    assert base.height is None


@pytest.mark.parametrize(
    ("text", "fold", "scores"),
    [
        ("card 210 x 148", Fold.NONE, []),
        ("card 210 x 148, side fold", Fold.SIDE, [("down", "105")]),
        ("card 148 x 210, top fold", Fold.TOP, [("across", "105")]),
        ("place card 100 x 120, tent", Fold.TENT, [("across", "60")]),
        ("card 280 x 148, gate fold", Fold.GATE, [("down", "70"), ("down", "210")]),
        ("card 300 x 80, accordion of 3", Fold.ACCORDION, [("down", "100"), ("down", "200")]),
        ("box 60 x 50 x 30", Fold.BOX,
         [("down", "30"), ("down", "90"), ("across", "30"), ("across", "80")]),
    ],
)  # fmt: skip
def test_scores_by_hand(text: str, fold: Fold, scores: list[tuple[str, str]]) -> None:
    """Where each kind of base is scored, worked out on paper."""
    base = read_base(text, Unit.MM)
    told = [("down" if score.runs_down else "across", score.at) for score in base.scores]
    assert (base.fold, told) == (fold, [(way, Fraction(at)) for way, at in scores])


LENGTHS = st.integers(4, 400)
FLAT_FORMS = (
    "flat", "side fold", "top fold", "tent", "gate fold",
    *(f"accordion of {panels}" for panels in range(2, 13)),
)  # fmt: skip


def panels(length: Fraction, scores: Iterable[Score], *, run_down: bool) -> list[Fraction]:
    """The measures of the panels along one side of a blank, from its score lines."""
    at = [score.at for score in scores if score.runs_down is run_down]
    return [b - a for a, b in pairwise([Fraction(0), *sorted(at), length])]


def folded(length: Fraction, scores: Iterable[Score], *, run_down: bool) -> Fraction:
    """How long a strip lies when it is folded back at each score."""
    at, way, reached = Fraction(0), 1, [Fraction(0)]
    for panel in panels(length, scores, run_down=run_down):
        at, way = at + way * panel, -way
        reached.append(at)
    return max(reached) - min(reached)


@given(st.sampled_from(sorted(NAMED)), st.sampled_from(FLAT_FORMS))
def test_a_named_base_folds_to_its_name(name: str, form: str) -> None:
    """The blank, folded at its scores, is as large as the name says, lying or upright."""
    base = read_base(f"card {name}, {form}", Unit.MM)
    lies = Size(
        folded(base.size.width, base.scores, run_down=True),
        folded(base.size.height, base.scores, run_down=False),
    )
    assert lies.upright == NAMED[name].upright
    assert lies == base.finished_size


@given(LENGTHS, LENGTHS, st.sampled_from(FLAT_FORMS))
def test_a_measured_base_is_its_blank(width: int, height: int, form: str) -> None:
    """The measures written are those of the flat piece, and its panels fill it and lie on one another."""
    base = read_base(f"card {width} x {height}, {form}", Unit.MM)
    across = panels(base.size.width, base.scores, run_down=True)
    down = panels(base.size.height, base.scores, run_down=False)
    assert (sum(across), sum(down)) == (base.size.width, base.size.height)
    assert base.size == Size(Fraction(width), Fraction(height))
    assert folded(base.size.width, base.scores, run_down=True) == base.finished_size.width
    assert folded(base.size.height, base.scores, run_down=False) == base.finished_size.height


@given(LENGTHS, LENGTHS)
def test_the_doors_of_a_gate_meet(width: int, height: int) -> None:
    """Two equal doors close the whole front, and do not overlap."""
    left, back, right = panels(
        Fraction(width), read_base(f"card {width} x {height}, gate fold", Unit.MM).scores, run_down=True
    )
    assert left == right
    assert left + right == back


@given(LENGTHS, LENGTHS, st.integers(2, 12))
def test_the_panels_of_an_accordion_are_equal(width: int, height: int, count: int) -> None:
    """So many panels of one width, and one score fewer."""
    base = read_base(f"card {width} x {height}, accordion of {count}", Unit.MM)
    assert panels(base.size.width, base.scores, run_down=True) == [Fraction(width, count)] * count


@given(LENGTHS, LENGTHS, LENGTHS, LENGTHS, st.integers(1, 9))
def test_a_box_folds_up_to_the_measures_asked_for(
    length: int, width: int, height: int, lid: int, room: int
) -> None:
    """Walls of one height stand round the bottom; the lid is larger by its room each way."""
    base = read_base(f"box {length} x {width} x {height}, lid {lid}, room {room}", Unit.MM)
    assert base.lid is not None
    assert panels(base.size.width, base.scores, run_down=True) == [height, length, height]
    assert panels(base.size.height, base.scores, run_down=False) == [height, width, height]
    over = base.lid
    assert panels(over.size.width, over.scores, run_down=True) == [lid, length + room, lid]
    assert panels(over.size.height, over.scores, run_down=False) == [lid, width + room, lid]
    assert base.finished_size == Size(Fraction(length + room), Fraction(width + room))
    assert base.height == max(height, lid)


def test_a_lid_by_hand() -> None:
    """A box 60 x 60 x 30 is 120 x 120 flat; a lid of 15 has 1.5 mm of room (common practice): 91.5 x 91.5."""
    base = read_base("gift box 60 x 60 x 30 mm, lid 15", Unit.INCH)
    assert base.lid is not None
    small = read_base("box 3 x 3 x 1 1/2, lid 3/4", Unit.INCH)
    assert small.lid is not None
    assert small.lid.size == inches("73/16", "73/16"), "3 and 1/16 of room and twice 3/4"
    assert (base.thing, base.size, base.lid.size) == ("gift box", mm("120", "120"), mm("91.5", "91.5"))


def test_an_open_box() -> None:
    """Without a lid the box itself is what stands on the table."""
    base = read_base("box 3 x 2 x 1, ready-made", Unit.INCH)
    assert (base.size, base.finished_size, base.height) == (
        inches("5", "4"),
        inches("3", "2"),
        Fraction("25.4"),
    )
    assert (base.lid, base.ready, base.envelope) == (None, True, "")


@pytest.mark.parametrize(
    ("text", "envelope"),
    [
        # ISO 269: C4 229 x 324, C5 162 x 229, C6 114 x 162, C7 81 x 114, DL 110 x 220.
        ("print A4", "C4 envelope, 229 × 324 mm"),
        ("card A5, side fold", "C5 envelope, 162 × 229 mm"),
        ("card A6, top fold", "C6 envelope, 114 × 162 mm"),
        ("card A7, gate fold", "C7 envelope, 81 × 114 mm"),
        ("card DL, side fold", "DL envelope, 110 × 220 mm"),
        # American envelopes as in trade; which card goes with which is common practice.
        ("card half-letter, side fold", "A9 envelope, 5 3/4 × 8 3/4 in"),
        ("card quarter-letter, side fold", "A2 envelope, 4 3/8 × 5 3/4 in"),
        ("card 8 1/2 x 5 1/2 in, side fold", "A2 envelope, 4 3/8 × 5 3/4 in"),
        ("card slim, side fold", "slimline envelope, 3 7/8 × 8 7/8 in"),
        ("card five-inch-square, side fold", "square envelope, 5 1/4 × 5 1/4 in"),
        ("card letter", ""),
        ("card square, side fold", ""),
        ("place card A7, tent", ""),
        ("bookmark", ""),
    ],
)  # fmt: skip
def test_the_usual_envelope(text: str, envelope: str) -> None:
    """A standard size has its usual envelope; what stands open, or is no standard size, has none."""
    assert read_base(text, Unit.MM).envelope.replace("\u00a0", " ") == envelope


@pytest.mark.parametrize("name", sorted(ENVELOPES))
def test_a_card_goes_into_its_envelope(name: str) -> None:
    """Each has room, and less than three centimetres of it."""
    card, envelope = NAMED[name].upright, named(ENVELOPES[name]).size.upright
    assert 0 < envelope.width - card.width < 30
    assert 0 < envelope.height - card.height < 30


BOX = """\
=== projects/a/project.yml
title: Boxes
date: 2026-03-14
makes: 0 of 4
status: planned
base: {base}
papers:
  base: chalk-card
  lid: ripple-green
parts:
  {letter}label:
    border: 10
    paper: base
=== told
"""


@pytest.mark.parametrize(("letter", "of_lid", "of_label"), [("", "L", "B"), ("L ", "B", "L")])
def test_a_box_is_two_parts(letter: str, of_lid: str, of_label: str, tmp_path: Path) -> None:
    """The lid comes from its own paper, under L or the next letter; what follows lies on the lid."""
    laid_out(BOX.format(base="box 60 x 50 x 30, lid 15", letter=letter), tmp_path)
    worked = read(tmp_path)
    assert worked.problems == ()
    [project] = worked.archive.projects
    assert [(part.letter, part.name, part.papers, part.size) for part in project.parts] == [
        ("A", "base", ("chalk-card",), mm("120", "110")),
        (of_lid, "lid", ("ripple-green",), mm("91.5", "81.5")),
        (of_label, "label", ("chalk-card",), mm("41.5", "31.5")),
    ]
    assert [part.walls for part in project.parts] == [30, 15, None]
    assert project.finished_size == mm("61.5", "51.5")
    assert project.height == 30


def test_a_ready_made_base_is_not_cut(tmp_path: Path) -> None:
    """It is a part as any other, and no sheet has to give it."""
    laid_out(BOX.format(base="card A6, side fold, ready-made", letter=""), tmp_path)
    [project] = read(tmp_path).archive.projects
    assert [part.origin for part in project.parts] == [Origin.READY, Origin.CUT]
    assert project.envelope.startswith("C6")
