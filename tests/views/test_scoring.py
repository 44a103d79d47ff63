"""How a part is scored, in whole sentences."""

from __future__ import annotations

import pytest

from batchleaf.facts import Part
from batchleaf.measure.lengths import Unit
from batchleaf.records.bases import read_base
from batchleaf.views.scoring import folded_in_words, how_to_score


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
