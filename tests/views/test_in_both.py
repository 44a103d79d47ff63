"""One page in two units: texts laid upon each other, and drawings."""

from __future__ import annotations

from dataclasses import dataclass, replace

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.render.html import ENVIRONMENT
from batchleaf.views.drawing.shapes import Drawing, Label, Stroke
from batchleaf.views.in_both import in_both
from batchleaf.views.pages.pieces import InBoth, Link

WORDS = st.lists(st.sampled_from(["keep", "95", "3", "1/4", "mm", "×", ""]), min_size=1, max_size=8).map(
    " ".join
)


@given(WORDS, WORDS)
def test_the_pieces_make_up_both_wordings(written: str, other: str) -> None:
    """What they share stands once, before and after what differs."""
    before, mine, theirs, after = InBoth.of(written, other).pieces
    assert (before + mine + after, before + theirs + after) == (written, other)


def test_only_the_length_is_exchanged() -> None:
    """The words round it stay, and all of it is escaped."""
    both = InBoth.of("Keep <b> 95 × 77 mm for the drawer.", "Keep <b> 3 3/4 × 3 in for the drawer.")
    assert both.pieces == ("Keep <b> ", "95 × 77 mm", "3 3/4 × 3 in", " for the drawer.")
    html = ENVIRONMENT.from_string("{{ one }}").render(one=both)
    assert html == ('Keep &lt;b&gt; <span data-other="3 3/4 × 3 in">95 × 77 mm</span> for the drawer.')


@dataclass(frozen=True, slots=True)
class Told:
    """Part of a page."""

    line: tuple[str | Link, ...]
    note: str
    count: int


def test_what_matches_is_joined_and_what_does_not_stays() -> None:
    """Texts that are the same stay plain; lines of another length, and numbers, are those of the record."""
    mine = Told(("cut ", Link("at 95", "#a")), "same", 3)
    joined = in_both(mine, Told(("cut ", Link("at 3 3/4", "#a")), "same", 4))
    assert joined == mine
    link = joined.line[1]
    assert isinstance(link, Link)
    assert isinstance(link.text, InBoth)
    assert link.text.other == "at 3 3/4"
    assert not isinstance(joined.note, InBoth)
    assert in_both(mine, Told(("cut at 3 3/4",), "same", 3)).line is mine.line


def drawing(*shapes: Label | Stroke) -> Drawing:
    """A plan."""
    return Drawing("plan-1", "Plan", "One part.", 0, 0, 100, 100, 1, "large", shapes)


def test_a_drawing_that_is_laid_out_alike_exchanges_its_figures() -> None:
    """One that is not is drawn twice, and the second has a name of its own."""
    line, figure = Stroke("cut", ((0, 0, 9, 9),)), Label("figure", 5, 5, "95")
    other = replace(figure, text="3 3/4")
    joined = in_both(drawing(line, figure), drawing(line, other))
    assert (joined.other, joined.shapes) == (None, (line, figure))
    label = joined.shapes[1]
    assert isinstance(label, Label)
    assert isinstance(label.text, InBoth)
    twice = in_both(drawing(line, figure), drawing(line, replace(other, x=20)))
    assert twice.other
    assert (twice.shapes, twice.other.id) == ((line, figure), "plan-1-other")
    assert in_both(drawing(line, figure), replace(drawing(line, other), width=120)).other
