"""Pads of several papers: one pile and one price, and beside it which papers are there."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.entries import Kind
from batchleaf.core.ledger import keep_ledger
from batchleaf.core.movements import Found, Holding, Ledger
from batchleaf.facts import Archive, CostFlow, Count, KeptPiece, Opening, Place, Project, Purchase
from batchleaf.measure.lengths import Size
from core.drawers import archive, batch, bought, counted, cut, day, pad

FLOWS = list(CostFlow)
PAD = Holding("pad")


def kept(*records: Project | Purchase | Count, opening: Opening | None = None) -> Ledger:
    """The ledger of a drawer with one pad of three papers, two of each."""
    return keep_ledger(archive(*records, supplies=pad(opening=opening)), CostFlow.AVERAGE)


def on_hand(ledger: Ledger) -> tuple[int, list[int], int]:
    """Sheets of the pad, of each number, and of no known number."""
    [balance] = [one for one in ledger.balances if one.holding == PAD]
    return int(balance.quantity), [int(one) for one in ledger.papers.values()], int(ledger.unnamed["pad"])


def takes(on: int, *lines: tuple[str, int]) -> Project:
    """A batch that cuts whole sheets."""
    return batch(on, cut=tuple(cut(count, slug=slug) for slug, count in lines))


def told(ledger: Ledger) -> list[str]:
    """All that the ledger tells."""
    return [problem.sentence for problem in ledger.problems]


def test_a_whole_pad_holds_its_papers() -> None:
    """Two pads of three papers, two of each: twelve sheets, four of each number."""
    assert on_hand(kept(bought(0, 12, 6_00, "pad"))) == (12, [4, 4, 4], 0)


def test_a_numbered_paper_is_taken_from_the_pad_at_its_price() -> None:
    """Six for 3.00: two sheets cost 1.00, whichever they are, and the draw names the paper."""
    ledger = kept(bought(0, 6, 3_00, "pad"), takes(1, ("pad-2", 2)))
    assert on_hand(ledger) == (4, [2, 0, 2], 0)
    [draw] = ledger.draws["batch-1"]
    assert (draw.supply, draw.taken) == ("pad-2", Cost(1_00))
    assert [(one.holding, one.paper) for one in ledger.movements] == [(PAD, ""), (PAD, "pad-2")]
    assert [balance.cost for balance in ledger.balances] == [Cost(2_00)]
    assert not ledger.problems


def test_what_is_kept_of_a_numbered_paper_stays_under_its_number() -> None:
    """Half of a sheet that cost 0.50."""
    half = Size(Fraction(50), Fraction(100))
    ledger = kept(bought(0, 6, 3_00, "pad"), batch(1, cut=(cut(1, KeptPiece(half, 1), slug="pad-2"),)))
    [piece] = [one for one in ledger.balances if one.holding != PAD]
    assert (piece.holding, piece.quantity, piece.cost) == (Holding("pad-2", half), Fraction(1), Cost(25))


def test_more_of_a_number_than_the_pad_can_have_is_told() -> None:
    """There were two of it; the pad gives the third anyhow, which must have been there."""
    ledger = kept(bought(0, 6, 3_00, "pad"), takes(1, ("pad-2", 3)))
    assert told(ledger) == [
        (
            "this takes 3 sheets of pad-2, and on 2026-01-02 the pad has 2 of it;"
            " a purchase, an opening or a count of 1 more is missing from the records"
        )
    ]
    assert on_hand(ledger) == (3, [2, 0, 2], -1)
    assert [one.kind for one in ledger.movements] == [Kind.BOUGHT, Kind.TAKEN]


def test_a_pad_that_is_used_up_is_told_once() -> None:
    """One sheet in the drawer, three taken of a number: two are unexplained."""
    ledger = kept(bought(0, 1, 50, "pad"), takes(1, ("pad-2", 3)))
    assert told(ledger) == [
        (
            "this takes 3 sheets of pad-2, and on 2026-01-02 the pad has 1 of it;"
            " a purchase, an opening or a count of 2 more is missing from the records"
        )
    ]
    assert on_hand(ledger) == (0, [0, 0, 0], 0)
    assert ledger.draws["batch-1"][0].taken == Cost(50, complete=False)


def test_sheets_taken_without_a_number_leave_the_pad_only() -> None:
    """Nobody knows which; so many of the papers are fewer than they seem."""
    assert on_hand(kept(bought(0, 6, 3_00, "pad"), takes(1, ("pad", 2)))) == (4, [2, 2, 2], -2)


def test_a_number_is_never_more_than_the_pad_has() -> None:
    """Five of six taken without a number: one is left, so there is at most one of each."""
    assert on_hand(kept(bought(0, 6, 3_00, "pad"), takes(1, ("pad", 5))))[:2] == (1, [1, 1, 1])


def test_an_open_pad_has_sheets_of_no_known_number() -> None:
    """Four left of six: of each number there may be four, so what is taken by number is not told."""
    opening = Opening(day(0), Fraction(4), None)
    ledger = kept(takes(1, ("pad-2", 2), ("pad-3", 1)), opening=opening)
    assert told(ledger) == []
    assert on_hand(ledger) == (1, [0, 0, 0], 1)
    assert [int(one.quantity) for one in ledger.paper_movements] == [2, -2, 1, -1]


def test_an_empty_pad_has_none_of_any_number() -> None:
    """All six taken without a number."""
    ledger = kept(bought(0, 6, 3_00, "pad"), takes(1, ("pad", 6)), bought(2, 6, 3_00, "pad"))
    assert on_hand(ledger) == (6, [2, 2, 2], 0)


@pytest.mark.parametrize(
    ("counts", "there"),
    [
        # The number is set, and the pad moves by the difference.
        ([("pad-2", 1)], (5, [2, 1, 2], 0)),
        ([("pad-2", 4)], (8, [2, 4, 2], 0)),
        # The whole is set, and nobody knows which are missing.
        ([("pad", 4)], (4, [2, 2, 2], -2)),
        ([("pad", 0)], (0, [0, 0, 0], 0)),
        # Both on one day: the numbers come first, and the whole stands as it was counted.
        ([("pad", 4), ("pad-2", 1)], (4, [2, 1, 2], -1)),
        ([("pad", 7), ("pad-2", 1)], (7, [2, 1, 2], 2)),
    ],
)
def test_a_count_sets_what_it_counts(
    counts: list[tuple[str, int]], there: tuple[int, list[int], int]
) -> None:
    """Of six sheets, two of each."""
    assert on_hand(kept(bought(0, 6, 3_00, "pad"), *(counted(1, n, slug) for slug, n in counts))) == there


def test_a_count_by_number_finds_out_which_were_taken_without() -> None:
    """Two were taken of the pad: one that is missing of a number was one of them."""
    ledger = kept(bought(0, 6, 3_00, "pad"), takes(1, ("pad", 2)), counted(2, 1, "pad-2"))
    assert on_hand(ledger) == (4, [2, 1, 2], -1)
    ledger = kept(
        bought(0, 6, 3_00, "pad"), takes(1, ("pad", 2)), counted(2, 0, "pad-2"), counted(3, 0, "pad-3")
    )
    assert on_hand(ledger) == (2, [2, 0, 0], 0)


@pytest.mark.parametrize(
    ("taken", "found", "without", "lost"), [(2, 0, -2, 0), (1, 0, -1, -1), (0, 1, 0, -1)]
)
def test_a_count_by_number_says_what_went_without_one(
    taken: int, found: int, without: int, lost: int
) -> None:
    """Of two that are missing, so many were taken without a number; the rest is what the count found out."""
    batches = [takes(1, ("pad", taken))] if taken else []
    ledger = kept(bought(0, 6, 3_00, "pad"), *batches, counted(2, found, "pad-2"))
    movement = ledger.movements[-1]
    assert movement.found == Found(Fraction(found), Fraction(2), day(0), unnamed=Fraction(without))
    assert movement.quantity == lost


def test_a_rough_count_of_a_pad_may_bear_out_the_records() -> None:
    """Five is within one of six; of one number, one is within one of two."""
    ledger = kept(
        bought(0, 6, 3_00, "pad"), counted(1, 5, "pad", about=True), counted(2, 1, "pad-2", about=True)
    )
    assert on_hand(ledger) == (6, [2, 2, 2], 0)
    assert [(one.found, one.paper) for one in ledger.movements[1:]] == [
        (Found(Fraction(5), Fraction(6), day(0), about=True), ""),
        (Found(Fraction(1), Fraction(2), day(1), about=True), "pad-2"),
    ]


SLUGS = st.sampled_from(["pad", "pad-1", "pad-2", "pad-3"])
STEPS = st.lists(
    st.tuples(
        st.sampled_from(["buy", "pads", "take", "use", "count", "about"]),
        SLUGS,
        st.integers(0, 8),
        st.integers(0, 3),
    ),
    max_size=14,
)
Step = tuple[str, str, int, int]


def history(steps: list[Step]) -> Archive:
    """Each step on one of four days, in a line of its own."""
    records: list[Project | Purchase | Count] = []
    for i, (what, slug, quantity, on) in enumerate(steps):
        match what:
            case "buy":
                record: Project | Purchase | Count = bought(on, quantity, 37 * quantity, slug)
            case "pads":
                record = bought(on, 6 * quantity, 410 * quantity, "pad")
            case "take":
                slip = KeptPiece(Size(Fraction(30), Fraction(100)), quantity)
                record = batch(on, cut=(cut(quantity, slip, slug=slug),), slug=f"batch-{i}")
            case "use":
                record = batch(on, uses=((slug, quantity),), slug=f"batch-{i}")
            case _:
                record = counted(on, quantity, slug, about=what == "about")
        records.append(replace(record, place=Place("drawer.yml", i + 1, 1)))
    return archive(*records, supplies=pad())


@given(STEPS, st.sampled_from(FLOWS))
def test_sheets_and_money_of_a_pad_are_conserved(steps: list[Step], flow: CostFlow) -> None:
    """In each pile, at every moment: in = out + on hand, and never below nothing."""
    ledger = keep_ledger(history(steps), flow)
    quantity: dict[Holding, Fraction] = {}
    value: dict[Holding, int] = {}
    for one in ledger.movements:
        quantity[one.holding] = quantity.get(one.holding, Fraction(0)) + one.quantity
        value[one.holding] = value.get(one.holding, 0) + one.cost.known
        assert one.on_hand == quantity[one.holding] >= 0
        assert value[one.holding] >= 0
        assert quantity[one.holding] or not value[one.holding]
    for balance in ledger.balances:
        assert (balance.quantity, balance.cost.known) == (
            quantity.get(balance.holding, 0),
            value.get(balance.holding, 0),
        )


@given(STEPS)
def test_the_papers_and_the_unnamed_are_all_of_the_pad(steps: list[Step]) -> None:
    """Whatever happened: sheets of each number + unnamed = sheets of the pad, and none below nothing."""
    ledger = keep_ledger(history(steps), CostFlow.AVERAGE)
    of: dict[str, Fraction] = {}
    for one in ledger.paper_movements:
        of[one.paper] = of.get(one.paper, Fraction(0)) + one.quantity
        assert one.on_hand == of[one.paper] >= 0
    sheets = sum((balance.quantity for balance in ledger.balances if balance.holding == PAD), Fraction(0))
    assert sum(of.values(), ledger.unnamed["pad"]) == sheets
    for paper, there in ledger.papers.items():
        assert there == min(of.get(paper, 0), sheets)


@given(STEPS, SLUGS, st.integers(0, 8))
def test_a_count_stands(steps: list[Step], slug: str, found: int) -> None:
    """Whatever was before, so much is there after a count: of the pad, or of a number."""
    before = history(steps)
    after = replace(before, counts=(*before.counts, counted(9, found, slug)))
    ledger = keep_ledger(after, CostFlow.AVERAGE)
    sheets, _, _ = on_hand(ledger)
    assert (sheets if slug == "pad" else ledger.papers[slug]) == found
    assert sheets >= found


@given(STEPS, st.randoms(use_true_random=False), st.sampled_from(FLOWS))
def test_the_order_of_records_changes_nothing(
    steps: list[Step], shuffler: random.Random, flow: CostFlow
) -> None:
    """By date, name and place, whatever was read first."""
    straight = history(steps)
    projects, purchases, counts = list(straight.projects), list(straight.purchases), list(straight.counts)
    for records in (projects, purchases, counts):
        shuffler.shuffle(records)
    mixed = replace(straight, projects=tuple(projects), purchases=tuple(purchases), counts=tuple(counts))
    one, other = keep_ledger(mixed, flow), keep_ledger(straight, flow)
    assert (one.movements, one.paper_movements) == (other.movements, other.paper_movements)
