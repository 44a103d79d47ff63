"""What the pieces of the drawer could become, against plain counting."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.batch_cutting import PLANNER, remembering
from batchleaf.core.could_become import (
    ENOUGH,
    MOST,
    WantedPart,
    best_uses,
    could_become,
    equal_pieces,
    wanted_parts,
)
from batchleaf.core.cutting.from_one_sheet import from_one_sheet, through_cuts_give
from batchleaf.core.cutting.plan import leaves_of
from batchleaf.core.from_the_drawer import Lying
from batchleaf.measure.lengths import Size
from core.drawers import batch_of, pad, part, size, supply

CARDS = {one.slug: one for one in (supply("oat"), supply("fern"), *pad())}
sizes = st.builds(size, st.integers(3, 60), st.integers(3, 60))
parts = st.builds(
    lambda one, turns: WantedPart(one, turns, frozenset({"card"}), ((f"{one}", "A"),)), sizes, st.booleans()
)


@given(sizes, st.lists(parts, min_size=1, max_size=8))
def test_uses_are_what_they_say_and_none_that_is_better_is_left_out(
    piece: Size, wanted: list[WantedPart]
) -> None:
    """The largest parts that take two thirds first; then those that take most; never more than all of it."""
    uses = best_uses(piece, wanted)
    every = {one: from_one_sheet(piece, one.size, turns=one.turns).through for one in wanted}
    shares = {one: count * one.size.area / piece.area for one, count in every.items() if count}
    assert len(uses) == min(MOST, len(wanted) and len([one for one in wanted if every[one]]))
    for use in uses:
        assert (use.count, use.share) == (every[use.part], shares[use.part])
        assert 0 < use.share <= 1
    good = sorted((one.size.area for one in wanted if shares.get(one, 0) >= ENOUGH), reverse=True)
    told = [use.part.size.area for use in uses if use.share >= ENOUGH]
    assert told == good[:MOST]
    rest = [use.share for use in uses if use.share < ENOUGH]
    assert rest == sorted(rest, reverse=True)


@given(sizes, sizes, st.booleans())
def test_counting_by_through_cuts_alone_counts_the_same(sheet: Size, one: Size, turns: bool) -> None:  # noqa: FBT001
    """As where the other ways are counted beside it."""
    assert through_cuts_give(sheet, one, turns=turns) == from_one_sheet(sheet, one, turns=turns).through


def test_equal_pieces_of_one_kind_lie_together() -> None:
    """Two cards of one size, and the papers of a pad under the name of the pad; none is lost."""
    lying = [
        Lying("oat", None, 2),
        Lying("fern", None, 3),
        Lying("pad-1", None, 1),
        Lying("pad-3", None, 2),
        Lying("oat", size(30, 40), 5),
    ]
    whole, odd = equal_pieces(lying, CARDS)
    assert (whole.odd, whole.counts) == (False, (("oat", 2), ("fern", 3), ("pad", 3)))
    assert (odd.odd, odd.size, odd.counts) == (True, size(30, 40), (("oat", 5),))


def test_parts_of_one_size_stand_once_with_all_their_batches() -> None:
    """Turned or not where they may be; a part that may not be turned is another."""
    one = batch_of(part("A", 30, 40, "oat"), part("B", 40, 30, "fern"), makes=1)
    two = replace(batch_of(replace(part("A", 40, 30, "oat"), turns=False), makes=1), slug="two")
    found = wanted_parts([one, two], CARDS)
    assert [(each.turns, each.of) for each in found] == [
        (True, ((one.slug, "A"), (one.slug, "B"))),
        (False, (("two", "A"),)),
    ]


def test_the_drawn_plan_gives_as_many_as_are_told() -> None:
    """Six of 30 x 40 from 80 x 100, of which four lie turned."""
    one = batch_of(part("A", 30, 40, "oat"), makes=1)
    pieces = equal_pieces([Lying("fern", size(80, 100), 1)], CARDS)
    (found,) = could_become(pieces, wanted_parts([one], CARDS), remembering(PLANNER))
    assert found.plan
    (use,) = found.uses
    assert leaves_of(found.plan.tree).total() == use.count == 6
    assert use.share == Fraction(6 * 30 * 40, 80 * 100)


def test_what_gives_nothing_is_not_told() -> None:
    """Too small, or of a kind that no batch cuts."""
    one = batch_of(part("A", 30, 40, "oat"), makes=1)
    film = replace(supply("film"), kind="film")
    papers = {**CARDS, "film": film}
    pieces = equal_pieces([Lying("oat", size(20, 90), 4), Lying("film", None, 4)], papers)
    assert list(could_become(pieces, wanted_parts([one], papers), PLANNER)) == []
