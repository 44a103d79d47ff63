"""How a part is scored, in whole sentences."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.facts import Part, Tool
from batchleaf.measure.lengths import MM_PER_INCH, Unit
from batchleaf.records.bases import read_base
from batchleaf.views.scoring import folded_in_words, how_to_score, on_grooves


def part_of(base: str, unit: Unit) -> Part:
    """The base as a part of a batch."""
    line = read_base(base, unit)
    return Part("A", "base", line.size, 1, ("card",), turns=True, fold=line.fold, scores=line.scores)


@pytest.mark.parametrize(
    ("base", "unit", "sentence"),
    [
        ("card A6, side fold", Unit.MM, "Score every A at 105 mm along its long side before it is folded."),
        ("card 100 x 140, side fold", Unit.MM,
         "Score every A at 50 mm along its short side before it is folded."),
        ("card 100 x 100, top fold", Unit.MM, "Score every A at 50 mm before it is folded."),
        ("place card 3 1/2 x 4, tent", Unit.INCH,
         "Score every A at 2 in along its long side before it is folded."),
        ("card quarter-letter, gate fold", Unit.INCH,
         "Score every A at 2 1/8 and 6 3/8 in along its long side, and fold both doors to the middle."),
        ("card 16 x 6, accordion of 4", Unit.INCH,
         "Score every A at 4, 8 and 12 in along its long side, and fold it to and fro."),
        ("box 3 x 3 x 1 1/2", Unit.INCH,
         ("Score all four sides of every A at 1 1/2 in,"
          " then cut into each corner along one score as far as the other.")),
    ],
)  # fmt: skip
def test_the_settings_of_the_score_board(base: str, unit: Unit, sentence: str) -> None:
    """Every setting in the unit of the record, the side that lies along the board, and what follows."""
    assert how_to_score(part_of(base, unit), unit).replace("\u00a0", " ") == sentence


@pytest.mark.parametrize(
    ("base", "folded"),
    [
        ("card 8 1/2 x 5 1/2, gate fold", ["4 1/4 ×", "5 1/2"]),
        ("box 3 x 2 1/2 x 1", ["3 ×", "2 1/2 ×", "1"]),
    ],
)
def test_what_a_part_folds_to(base: str, folded: list[str]) -> None:
    """A box has three measures; a narrow column breaks them after a × and nowhere else."""
    words = folded_in_words(part_of(base, Unit.INCH), Unit.INCH)
    assert [piece.replace("\u00a0", " ") for piece in words.split(" ")] == folded


BOARD = Tool("board", "the score board", "score board", Unit.INCH, grooves=(Fraction(10), MM_PER_INCH / 8))


@pytest.mark.parametrize(
    ("base", "unit", "said"),
    [
        ("card quarter-letter, side fold", Unit.INCH, "The score board has a groove for it: every 1/8 in."),
        # Of two sets that have one the wider steps are told.
        ("card 100 x 140, top fold", Unit.MM, "The score board has a groove for it: every 10 mm."),
        ("card 160 x 60, accordion of 4", Unit.MM, "The score board has a groove for each: every 10 mm."),
        ("box 60 x 60 x 12.5", Unit.MM,
         "12.5 mm lies between the grooves of the score board: mark the line, and score along a rule."),
        ("sleeve for 50 x 180 x 4, room 2", Unit.MM,
         ("The score board has a groove for 58 at 70 mm with the piece turned round; 12 and 52 mm lie between"
          " the grooves of the score board: mark the lines, and score along a rule.")),
    ],
)  # fmt: skip
def test_which_lines_have_a_groove(base: str, unit: Unit, said: str) -> None:
    """Eighths of an inch and centimetres: from its own edge, from the other one, or between two of them."""
    assert on_grooves(part_of(base, unit), BOARD, unit).replace("\u00a0", " ") == said


@pytest.mark.parametrize(
    ("base", "sentence"),
    [
        ("sleeve for 50 x 180 x 4, room 2",
         ("Score every A at 52, 58, 110 and 116 mm from its left edge, fold it round, and glue the flap of"
          " 12 mm under the other end.")),
        ("slipcase for 80 x 120 x 12, room 1.5",
         ("Score every A at 80 and 93.5 mm from its left edge, and 13.5 mm from its upper and its lower edge."
          " Cut along the upright scores as far as the level ones; fold it, tuck the two small squares in,"
          " and glue the flaps of the front over those of the back.")),
        ("cover for 80 x 120 x 12",
         ("Score every A 15 mm from all four edges, and at 98 and 110 mm from its left edge. Cut the corners"
          " off aslant, a little outside of where the scores cross; turn the edges in, and stick them"
          " down.")),
    ],
)  # fmt: skip
def test_how_something_is_folded_round(base: str, sentence: str) -> None:
    """Scores one way and the other, then what is cut, glued and turned in."""
    assert how_to_score(part_of(base, Unit.MM), Unit.MM).replace("\u00a0", " ") == sentence
