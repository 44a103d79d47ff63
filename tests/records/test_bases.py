"""What a base says, and what its blank folds to."""

from __future__ import annotations

from fractions import Fraction

import pytest

from batchleaf.facts import Fold
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.bases import read_base
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
