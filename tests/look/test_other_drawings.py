"""The strip of cost and the drawing of kept pieces."""

from __future__ import annotations

import itertools
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.measure.lengths import Size, Unit
from batchleaf.views.drawing.canvas import WIDEST_PX, Extent, Lettering
from batchleaf.views.drawing.cost_strip import LENGTH, MOST_FIGURES, draw_cost_strip, rule_for
from batchleaf.views.drawing.pieces import MOST_IN_A_PILE, draw_pieces
from batchleaf.views.drawing.shapes import Box, Drawing, Label

amounts = st.lists(st.integers(0, 900), min_size=1, max_size=14).filter(any)
sheets = st.builds(Size, st.integers(60, 600).map(Fraction), st.integers(60, 600).map(Fraction))
shares_of_a_side = st.integers(2, 20).map(lambda twentieths: Fraction(twentieths, 20))


def labels(drawing: Drawing) -> list[Extent]:
    """What the words of ``drawing`` cover at their largest."""
    lettering = Lettering(drawing.scale, drawing.width_class)
    return [lettering.extent(shape) for shape in drawing.shapes if isinstance(shape, Label)]


def no_two_meet(drawing: Drawing) -> bool:
    """True where no two words lie on one another."""
    return not any(one.meets(other) for one, other in itertools.combinations(labels(drawing), 2))


def strip(shares: list[int]) -> Drawing:
    """A strip of these shares, lettered from a."""
    lettered = [(chr(97 + i), amount) for i, amount in enumerate(shares)]
    return draw_cost_strip(lettered, id="s", title="t", description="d", digits=2)


@given(amounts)
@settings(deadline=None)
def test_shares_fill_the_strip(shares: list[int]) -> None:
    """Each share is as wide as its money; together they are the strip, without gaps."""
    boxes = [shape for shape in strip(shares).shapes if isinstance(shape, Box) and shape.role == "share"]
    paid = [amount for amount in shares if amount]
    assert len(boxes) == len(paid)
    for box, amount, start in zip(boxes, paid, itertools.accumulate([0, *paid]), strict=False):
        assert abs(box.width - LENGTH * amount / sum(paid)) < 1e-6
        assert abs(box.x - LENGTH * start / sum(paid)) < 1e-6


@given(amounts)
@settings(deadline=None)
def test_letters_and_figures_of_a_strip_stay_apart(shares: list[int]) -> None:
    """Every paid share has its letter once, and no two words meet on the narrowest screen."""
    drawing = strip(shares)
    letters = [shape.text for shape in drawing.shapes if isinstance(shape, Label) and shape.role == "key"]
    assert letters == sorted({chr(97 + i) for i, amount in enumerate(shares) if amount}, key=letters.index)
    assert no_two_meet(drawing)


@given(st.integers(1, 20_000), st.sampled_from([0, 2, 3]))
def test_a_rule_has_round_steps(total: int, digits: int) -> None:
    """Steps are 1, 2 or 5 times a power of ten, neither too many nor too few."""
    rule = rule_for(total, digits)
    assert str(rule.figure_every).rstrip("0") in ("1", "2", "5")
    assert rule.figure_every % rule.tick_every == 0
    assert total / rule.figure_every <= MOST_FIGURES
    assert total / rule.figure_every > 3 or rule.figure_every == 1


def test_rules_by_hand() -> None:
    """Cents up to ten euros, then euros; yen have no smaller coin."""
    assert (rule_for(5, 2).figure_every, rule_for(73, 2).figure_every, rule_for(5000, 2).figure_every) == (
        1,
        10,
        1000,
    )
    assert rule_for(73, 2).figure(70) == "70"
    assert rule_for(999, 2).in_minor
    assert rule_for(1250, 2).figure(1000) == "10"
    assert rule_for(5000, 2).figure(1000) == "10"
    assert rule_for(40_000, 0).figure(5000) == "5000"


@given(sheets, st.lists(st.tuples(shares_of_a_side, shares_of_a_side, st.integers(1, 20)), max_size=7))
@settings(deadline=None)
def test_pieces_are_in_proportion(sheet: Size, cut: list[tuple[Fraction, Fraction, int]]) -> None:
    """Every piece is drawn in its size beside the sheet, up to six of one size; no words meet."""
    pieces = [(Size(sheet.width * across, sheet.height * down), count) for across, down, count in cut]
    drawing = draw_pieces(sheet, pieces, id="p", title="t", description="d", unit=Unit.MM)
    boxes = [(box.width, box.height) for box in drawing.shapes if isinstance(box, Box)]
    wanted = [(sheet, 1), *pieces]
    assert boxes == [
        (float(size.width), float(size.height))
        for size, count in wanted
        for _ in range(min(count, MOST_IN_A_PILE))
    ]
    assert no_two_meet(drawing)
    assert drawing.width * drawing.scale <= WIDEST_PX[drawing.width_class]
