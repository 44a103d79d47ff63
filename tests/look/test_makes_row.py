"""The row of finished makes."""

from __future__ import annotations

import itertools
import string

from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.views.drawing.canvas import Lettering
from batchleaf.views.drawing.makes_row import LENGTH, MOST_MARKS, TALLEST, Group, draw_makes_row
from batchleaf.views.drawing.shapes import Box, Drawing, Label

counts = st.lists(st.integers(1, 40), min_size=1, max_size=7)
aspects = st.floats(0.1, 8)


def row(numbers: list[int], aspect: float) -> Drawing:
    """A row of so many in each group; the first is kept, of the last nothing is told."""
    groups = [
        Group(string.ascii_lowercase[i], number, kept=i == 0, told=i == 0 or i < len(numbers) - 1)
        for i, number in enumerate(numbers)
    ]
    return draw_makes_row(groups, aspect=aspect, id="r", title="t", description="d")


def marks(drawing: Drawing) -> list[Box]:
    """The marks, from left to right."""
    return [shape for shape in drawing.shapes if isinstance(shape, Box)]


@given(counts, aspects)
@settings(deadline=None)
def test_each_make_has_a_mark(numbers: list[int], aspect: float) -> None:
    """As many as there are, apart from one another and within the row; of very many a mark for each group."""
    found = marks(row(numbers, aspect))
    many = sum(numbers) > MOST_MARKS
    assert len(found) == (len(numbers) if many else sum(numbers))
    assert all(one.x + one.width <= other.x + 1e-6 for one, other in itertools.pairwise(found))
    assert found[-1].x + found[-1].width <= LENGTH + 1e-6
    assert all(box.width > 0 and 0 < box.height <= TALLEST + 1e-6 for box in found)
    if not many:
        kinds = [box.role for box in found]
        assert kinds.count("keep") == numbers[0]
        assert kinds.count("waste") == (numbers[-1] if len(numbers) > 1 else 0)


@given(st.lists(st.integers(1, 40) | st.sampled_from([1, 400]), min_size=1, max_size=7), aspects)
@settings(deadline=None)
def test_letters_stay_apart(numbers: list[int], aspect: float) -> None:
    """Each group has its letter, none meets another or leaves the frame on the narrowest screen."""
    drawing = row(numbers, aspect)
    letters = [shape for shape in drawing.shapes if isinstance(shape, Label)]
    assert [label.text for label in letters] == list(string.ascii_lowercase[: len(numbers)])
    lettering = Lettering(drawing.scale, drawing.width_class)
    covered = [lettering.extent(label) for label in letters]
    assert not any(one.meets(other) for one, other in itertools.combinations(covered, 2))
    assert min(one.left for one in covered) >= drawing.x
    assert max(one.right for one in covered) <= drawing.x + drawing.width


def test_a_make_is_as_wide_to_its_height_as_it_is() -> None:
    """Four bookmarks of 50 by 180, as tall as may be; flat cards, as wide as may be and a little taller."""
    bookmark = marks(row([4], 50 / 180))[0]
    assert (round(bookmark.height, 6), round(bookmark.width / bookmark.height, 6)) == (84, round(50 / 180, 6))
    card = marks(row([24], 2))[0]
    assert round(card.width / card.height, 1) == 1.9  # at least 14 high
