"""Where the paper of a batch went."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.paper import paper_use
from batchleaf.facts import KeptPiece, Origin, Trim
from core.drawers import batch_of, cut, part, size, supply
from geometry.shapes import CUTS, Cut, cut_off_by_hand

EDGES = st.tuples(*(st.integers(0, 40),) * 4)


@given(EDGES, st.integers(0, 8), st.integers(1, 3))
def test_used_kept_and_waste_are_all_that_was_cut(
    edges: tuple[int, int, int, int], makes: int, sheets: int
) -> None:
    """Sheets count as bought: what is trimmed off is waste."""
    card = replace(supply("card"), trim=Trim(*map(Fraction, edges)))
    one = batch_of(part("A", 50, 20, "card"), makes=makes)
    one = replace(one, cut=(cut(sheets, KeptPiece(size(10, 30), 2), slug="card"),))
    paper = paper_use(one, {"card": card})
    assert [paper.cut, paper.used, paper.kept] == [10_000 * sheets, 1_000 * makes, 600]
    assert paper.used + paper.kept + paper.waste == paper.cut


def test_what_is_cut_by_hand_or_ready_made_is_in_no_account() -> None:
    """Nobody knows the scraps it came from."""
    by_hand = replace(part("B", 10, 10, "card"), origin=Origin.BY_HAND)
    ready = replace(part("C", 10, 10, "card"), origin=Origin.READY)
    one = batch_of(part("A", 50, 20, "card"), by_hand, ready, makes=4, cuts=(("card", 1),))
    assert paper_use(one, {"card": supply("card")}).used == 4_000


@given(CUTS, st.integers(0, 8), st.integers(1, 4))
def test_what_is_cut_off_a_part_for_its_shape_is_waste(one: Cut, makes: int, each: int) -> None:
    """What the same batch of rectangles uses more is in its waste less; the sum is as before."""
    plain = replace(part("A", 50, 20, "card"), size=one.size, each=each)
    before, after = (
        paper_use(batch_of(each_part, makes=makes, cuts=(("card", 50),)), {"card": supply("card")})
        for each_part in (plain, replace(plain, shape=one.shape))
    )
    off = cut_off_by_hand(one) * each * makes
    assert (after.used, after.waste) == (before.used - off, before.waste + off)
    assert after.used + after.kept + after.waste == after.cut == before.cut
