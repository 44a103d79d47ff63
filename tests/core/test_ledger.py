"""The drawer over time, against published examples and by its laws."""

from __future__ import annotations

import random
from collections import Counter, defaultdict
from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.entries import Kind
from batchleaf.core.ledger import keep_ledger
from batchleaf.core.movements import Found, Holding, Ledger
from batchleaf.facts import (
    Archive,
    Basis,
    CostFlow,
    Count,
    Gone,
    KeptPiece,
    Opening,
    Place,
    Project,
    Purchase,
    Scrap,
    Status,
)
from batchleaf.measure.lengths import Size
from core.drawers import archive, batch, bought, counted, cut, day, gone, supply

FLOWS = list(CostFlow)
WHOLE = Holding("card")


def used(ledger: Ledger) -> int:
    """What all batches drew, in minor units."""
    return sum(draw.taken.known for draws in ledger.draws.values() for draw in draws)


def left(ledger: Ledger, holding: Holding = WHOLE) -> tuple[Fraction, Cost]:
    """Quantity and cost of what is on hand."""
    balance = next(one for one in ledger.balances if one.holding == holding)
    return balance.quantity, balance.cost


@pytest.mark.parametrize(
    ("flow", "taken", "remains"),
    [(CostFlow.OLDEST_FIRST, 7_200_00, 8_955_00), (CostFlow.AVERAGE, 7_252_94, 8_902_06)],
)
def test_perpetual_inventory_of_openstax(flow: CostFlow, taken: int, remains: int) -> None:
    """OpenStax, Principles of Accounting 1 (2019), chapter 10: 585 units for 16,155, perpetual.

    The data and the results are from memory, the arithmetic is worked out again:
    FIFO issues 120 and 30 at 21 and 150 at 27; the moving average is 21, then
    (630 + 6,075) ÷ 255, so that 180 units cost 4,732.94.
    """
    ledger = keep_ledger(
        archive(
            bought(0, 150, 3_150_00),
            batch(1, uses=(("card", 120),)),
            bought(2, 225, 6_075_00),
            batch(3, uses=(("card", 180),)),
            bought(4, 210, 6_930_00),
        ),
        flow,
    )
    assert used(ledger) == taken
    assert left(ledger) == (Fraction(285), Cost(remains))
    assert taken + remains == 16_155_00


def test_first_in_first_out_of_an_ifrs_tutorial() -> None:
    """1,000 at 10, 300 at 9.5, 200 at 9.7, 400 at 9.6; 1,400 used; the 500 left cost 4,810.

    An IFRS tutorial on IAS 2 gives the data; the result is worked out from them.
    """
    ledger = keep_ledger(
        archive(
            bought(0, 1000, 10_000_00),
            bought(1, 300, 2_850_00),
            bought(2, 200, 1_940_00),
            bought(3, 400, 3_840_00),
            batch(4, uses=(("card", 1400),)),
        ),
        CostFlow.OLDEST_FIRST,
    )
    assert left(ledger) == (Fraction(500), Cost(4_810_00))


Step = tuple[str, int, int]
STEPS = st.lists(
    st.tuples(
        st.sampled_from(["buy", "use", "count", "gift", "gone", "about", "cut", "scrap", "pieces"]),
        st.integers(1, 40),
        st.integers(0, 5000),
    ),
    max_size=14,
)
PIECE = Size(Fraction(25), Fraction(100))


def history(steps: list[Step]) -> Archive:
    """One record a day."""
    records: list[Project | Purchase | Count | Gone] = []
    for on, (what, quantity, value) in enumerate(steps):
        match what:
            case "buy":
                records.append(bought(on, quantity, value))
            case "gift":
                records.append(bought(on, quantity, None))
            case "use":
                records.append(batch(on, uses=(("card", quantity),)))
            case "cut":
                records.append(batch(on, cut=(cut(quantity, KeptPiece(PIECE, 1 + value % 3)),)))
            case "scrap":
                records.append(batch(on, cut=(cut(quantity, scrap=PIECE),)))
            case "gone":
                records.append(gone(on, quantity, piece=PIECE if value % 2 else None))
            case "pieces":
                records.append(counted(on, value % 5, piece=PIECE))
            case _:
                records.append(counted(on, quantity, about=what == "about"))
    return archive(*records)


@given(STEPS, st.sampled_from(FLOWS))
def test_what_came_in_is_what_went_out_and_what_is_there(steps: list[Step], flow: CostFlow) -> None:
    """Quantity and value of each pile are conserved at every moment, and never fall below nothing."""
    ledger = keep_ledger(history(steps), flow)
    quantity: defaultdict[Holding, Fraction] = defaultdict(Fraction)
    value = Counter[Holding]()
    for movement in ledger.movements:
        pile = movement.holding
        quantity[pile] += movement.quantity
        value[pile] += movement.cost.known
        assert movement.on_hand == quantity[pile] >= 0
        assert value[pile] >= 0
        assert quantity[pile] or not value[pile]
    for balance in ledger.balances:
        pile = balance.holding
        assert (balance.quantity, balance.cost.known) == (quantity[pile], value[pile])
    paid = sum(value for what, _, value in steps if what == "buy")
    elsewhere = sum(-one.cost.known for one in ledger.movements if one.kind in (Kind.GONE, Kind.COUNTED))
    batches = sum(draw.cost.known for draws in ledger.draws.values() for draw in draws)
    assert paid == batches + elsewhere + sum(value.values())


@given(STEPS, st.sampled_from(FLOWS))
def test_every_draw_names_the_lots_its_price_comes_from(steps: list[Step], flow: CostFlow) -> None:
    """Oldest first: the lots are all that was taken, and their shares its cost, but for rounding.

    Average: they are all that lay there, so much of each as the batches before left.
    """
    ledger = keep_ledger(history(steps), flow)
    there = {
        movement.moment.project: movement for movement in ledger.movements if movement.kind is Kind.TAKEN
    }
    for slug, draws in ledger.draws.items():
        for draw in draws:
            named = sum((lot.quantity for lot in draw.lots), Fraction(0))
            assert all(0 < lot.quantity <= lot.whole for lot in draw.lots)
            assert [lot.came.date for lot in draw.lots] == sorted(lot.came.date for lot in draw.lots)
            if flow is CostFlow.OLDEST_FIRST:
                assert named == draw.quantity
                shares = sum((lot.cost.known * lot.quantity / lot.whole for lot in draw.lots), Fraction(0))
                assert abs(shares - draw.taken.known) <= 2 * len(draw.lots)
            else:
                taken = there[slug]
                assert named == taken.on_hand - taken.quantity


@given(STEPS, st.integers(0, 14), st.sampled_from(FLOWS))
def test_the_drawer_of_a_day_is_that_of_the_records_till_then(
    steps: list[Step], day_number: int, flow: CostFlow
) -> None:
    """What comes after the day changes nothing: it is the ledger of the first records alone."""
    whole, first = history(steps), history(steps[: day_number + 1])
    of_the_day, of_the_first = keep_ledger(whole, flow, day(day_number)), keep_ledger(first, flow)
    assert of_the_day.movements == of_the_first.movements
    assert of_the_day.balances == of_the_first.balances
    assert {**of_the_first.draws} == of_the_day.draws


@given(STEPS, st.integers(0, 14), st.sampled_from(FLOWS))
def test_a_batch_taken_away_and_put_back_changes_nothing(
    steps: list[Step], place: int, flow: CostFlow
) -> None:
    """Figures hang on the records alone; without the batch nothing of it is left."""
    whole = history(steps)
    batches = list(whole.projects)
    if not batches:
        return
    one = batches.pop(place % len(batches))
    without = keep_ledger(replace(whole, projects=tuple(batches)), flow)
    assert one.slug not in without.draws
    assert all(movement.moment.project != one.slug for movement in without.movements)
    again = keep_ledger(replace(whole, projects=(*batches, one)), flow)
    before = keep_ledger(whole, flow)
    assert (again.movements, again.balances, again.problems) == (
        before.movements,
        before.balances,
        before.problems,
    )


@given(STEPS)
def test_an_average_lies_between_the_cheapest_and_the_dearest_lot(steps: list[Step]) -> None:
    """No draw costs more a sheet than the dearest purchase, or less than the cheapest."""
    paid = [(what, quantity, value) for what, quantity, value in steps if what in ("buy", "use")]
    prices = [Fraction(value, quantity) for what, quantity, value in paid if what == "buy"]
    ledger = keep_ledger(history(paid), CostFlow.AVERAGE)
    for draws in ledger.draws.values():
        for draw in draws:
            if draw.taken.complete and draw.quantity and prices:
                each = Fraction(draw.taken.known) / draw.quantity
                assert min(prices) - 1 <= each <= max(prices) + 1


@given(STEPS)
def test_the_oldest_goes_first(steps: list[Step]) -> None:
    """Against lots kept one sheet at a time: what is left is always the newest that came in."""
    bare = [(what, quantity, value) for what, quantity, value in steps if what in ("buy", "use")]
    ledger = keep_ledger(
        history([(what, q, q * 7 * (i + 1)) for i, (what, q, _) in enumerate(bare)]), CostFlow.OLDEST_FIRST
    )
    sheets: list[int] = []
    for i, (what, quantity, _) in enumerate(bare):
        if what == "buy":
            sheets += [7 * (i + 1)] * quantity
        else:
            sheets = sheets[quantity:]
    if ledger.balances:
        assert left(ledger) == (Fraction(len(sheets)), Cost(sum(sheets)))


@given(STEPS, st.randoms(use_true_random=False), st.sampled_from(FLOWS))
def test_the_order_of_records_in_the_files_changes_nothing(
    steps: list[Step], shuffler: random.Random, flow: CostFlow
) -> None:
    """Movements come by date, whatever was read first."""
    straight = history(steps)
    mixed = replace(
        straight,
        projects=tuple(shuffler.sample(straight.projects, len(straight.projects))),
        purchases=tuple(shuffler.sample(straight.purchases, len(straight.purchases))),
        counts=tuple(shuffler.sample(straight.counts, len(straight.counts))),
        gone=tuple(shuffler.sample(straight.gone, len(straight.gone))),
    )
    assert keep_ledger(mixed, flow) == keep_ledger(straight, flow)


def test_a_kept_piece_carries_its_share_of_the_sheet_by_area() -> None:
    """A quarter of a sheet keeps a quarter of its cost, in its own pile, whichever way it lies."""
    kept = KeptPiece(Size(Fraction(25), Fraction(100)), 1)
    ledger = keep_ledger(archive(bought(0, 4, 4_00), batch(1, cut=(cut(2, kept),))), CostFlow.AVERAGE)
    [draw] = ledger.draws["batch-1"]
    assert (draw.taken, draw.kept, draw.cost) == (Cost(2_00), Cost(25), Cost(1_75))
    assert left(ledger, Holding("card", Size(Fraction(25), Fraction(100)))) == (Fraction(1), Cost(25))
    assert left(ledger) == (Fraction(2), Cost(2_00))


def test_a_later_batch_cuts_from_a_kept_piece() -> None:
    """What one batch keeps the next one takes at what it cost."""
    size = Size(Fraction(25), Fraction(100))
    ledger = keep_ledger(
        archive(
            bought(0, 1, 1_00),
            batch(1, cut=(cut(1, KeptPiece(size, 2)),)),
            batch(2, cut=(cut(1, scrap=size),)),
        ),
        CostFlow.OLDEST_FIRST,
    )
    assert [draw.cost for draw in ledger.draws["batch-2"]] == [Cost(25)]
    assert left(ledger, Holding("card", size)) == (Fraction(1), Cost(25))
    assert not ledger.problems


def test_a_kept_piece_of_a_sheet_with_an_unknown_price_has_an_unknown_price() -> None:
    """What is not known stays not known on both sides of the cut."""
    size = Size(Fraction(50), Fraction(100))
    gift = bought(0, 1, None)
    ledger = keep_ledger(archive(gift, batch(1, cut=(cut(1, KeptPiece(size, 1)),))), CostFlow.AVERAGE)
    assert left(ledger, Holding("card", size)) == (Fraction(1), Cost(0, complete=False))
    assert not ledger.draws["batch-1"][0].cost.complete


@pytest.mark.parametrize("flow", FLOWS)
def test_a_count_that_finds_less_takes_the_missing_out_at_cost(flow: CostFlow) -> None:
    """Expected 7, found 6: one sheet leaves with its cost."""
    ledger = keep_ledger(archive(bought(0, 7, 7_00), counted(1, 6)), flow)
    assert (ledger.movements[-1].kind, ledger.movements[-1].cost) == (Kind.COUNTED, Cost(-1_00))
    assert left(ledger) == (Fraction(6), Cost(6_00))


@pytest.mark.parametrize("flow", FLOWS)
def test_a_count_that_finds_more_brings_it_in_at_no_cost(flow: CostFlow) -> None:
    """A surplus was never paid for twice."""
    ledger = keep_ledger(archive(bought(0, 6, 6_00), counted(1, 7)), flow)
    assert left(ledger) == (Fraction(7), Cost(6_00))


def test_on_one_day_purchases_come_before_batches_and_batches_before_counts() -> None:
    """Paper bought in the morning can be cut in the afternoon and counted at night."""
    ledger = keep_ledger(
        archive(batch(1, uses=(("card", 3),)), counted(1, 1), bought(1, 4, 4_00)), CostFlow.AVERAGE
    )
    assert [movement.kind for movement in ledger.movements] == [Kind.BOUGHT, Kind.TAKEN, Kind.COUNTED]
    assert not ledger.problems


def test_what_was_never_seen_to_come_in_is_told_and_costs_at_least_the_rest() -> None:
    """Three sheets used, one on hand: two are unexplained, at no known price."""
    ledger = keep_ledger(archive(bought(0, 1, 50), batch(1, uses=(("card", 3),))), CostFlow.AVERAGE)
    assert [movement.kind for movement in ledger.movements] == [Kind.BOUGHT, Kind.UNEXPLAINED, Kind.TAKEN]
    assert ledger.draws["batch-1"][0].taken == Cost(50, complete=False)
    [problem] = ledger.problems
    assert problem.sentence == (
        "this takes 3 sheets of card, and on 2026-01-02 the drawer has 1;"
        " a purchase, an opening or a count of 2 more is missing from the records"
    )


def test_a_planned_batch_moves_nothing() -> None:
    """Only what was cut has left the drawer."""
    planned = batch(1, uses=(("card", 3),), status=Status.PLANNED)
    ledger = keep_ledger(archive(bought(0, 4, 4_00), planned), CostFlow.AVERAGE)
    assert left(ledger) == (Fraction(4), Cost(4_00))
    assert not ledger.draws


def test_opening_stock_and_scraps_are_there_first() -> None:
    """With a known, and with an unknown price."""
    size = Size(Fraction(20), Fraction(30))
    place = Place("drawer.yml", 1, 1)
    one = supply(
        opening=Opening(day(0), Fraction(3), 90, place=place),
        scraps=(Scrap(size, 2, None, day(0), place=place),),
    )
    ledger = keep_ledger(archive(batch(1, cut=(cut(1, scrap=size),)), supplies=(one,)), CostFlow.AVERAGE)
    assert left(ledger) == (Fraction(3), Cost(90))
    assert left(ledger, Holding("card", size)) == (Fraction(1), Cost(0, complete=False))


@pytest.mark.parametrize("flow", FLOWS)
@pytest.mark.parametrize(
    ("found", "there"),
    [(21, 25), (20, 25), (30, 25), (19, 19), (31, 31), (25, 25)],
)
def test_a_rough_count_moves_nothing_that_it_bears_out(found: int, there: int, flow: CostFlow) -> None:
    """A fifth of twenty-five is five: from 20 to 30 the records stand, beyond that the count does."""
    ledger = keep_ledger(archive(bought(0, 25, 25_00), counted(1, found, about=True)), flow)
    assert left(ledger)[0] == there
    last = ledger.movements[-1]
    assert last.found == Found(Fraction(found), Fraction(25), day(0), about=there == 25)
    assert last.on_hand == there


@pytest.mark.parametrize(("found", "there"), [(1, 2), (3, 2), (0, 0), (4, 4)])
def test_a_rough_count_of_few_allows_for_one(found: int, there: int) -> None:
    """A fifth of two is less than one sheet, and nobody is out by less than one."""
    ledger = keep_ledger(archive(bought(0, 2, 2_00), counted(1, found, about=True)), CostFlow.AVERAGE)
    assert left(ledger)[0] == there


@pytest.mark.parametrize("flow", FLOWS)
def test_what_rests_on_a_guess_or_a_gift_is_told_until_it_is_used_up(flow: CostFlow) -> None:
    """A pool is as sure as its least sure lot; where the oldest go first, each lot is known by itself."""
    guess, gift = frozenset({Basis.GUESSED}), frozenset({Basis.GIFT})
    ledger = keep_ledger(
        archive(
            bought(0, 2, 2_00, basis=Basis.GUESSED),
            bought(1, 2, 4_00),
            bought(2, 2, 0, basis=Basis.GIFT),
            batch(3, cut=(cut(2, KeptPiece(Size(Fraction(50), Fraction(100)), 1)),)),
            batch(4, uses=(("card", 2),)),
            batch(5, uses=(("card", 2),)),
            bought(6, 1, 1_00),
        ),
        flow,
    )
    drawn = [draws[0].taken.rests_on for draws in ledger.draws.values()]
    assert drawn == ([guess | gift] * 3 if flow is CostFlow.AVERAGE else [guess, frozenset(), gift])
    kept = left(ledger, Holding("card", Size(Fraction(50), Fraction(100))))[1]
    assert (kept.rests_on, ledger.draws["batch-3"][0].cost.rests_on) == (drawn[0], drawn[0])
    assert left(ledger) == (Fraction(1), Cost(1_00))


@pytest.mark.parametrize("flow", FLOWS)
def test_what_is_gone_leaves_at_its_cost(flow: CostFlow) -> None:
    """Ten sheets for 10.00, three for a class: seven are left, for 7.00, and no batch bears the rest."""
    ledger = keep_ledger(archive(bought(0, 10, 10_00), gone(1, 3)), flow)
    assert left(ledger) == (Fraction(7), Cost(7_00))
    assert used(ledger) == 0
    [movement] = [one for one in ledger.movements if one.moment.kind is Kind.GONE]
    assert movement.quantity == -3
    assert movement.cost.known == -3_00


@pytest.mark.parametrize(
    ("width", "height", "told"), [(100, 100, 0), (20, 100, 0), (120, 10, 1), (10, 120, 1), (101, 101, 2)]
)
def test_a_kept_piece_has_lain_on_its_sheet(width: int, height: int, told: int) -> None:
    """Either way round it is no longer and no wider than the sheet of 100 by 100, however small its area."""
    piece = KeptPiece(Size(Fraction(width), Fraction(height)), 1)
    ledger = keep_ledger(archive(bought(0, 1, 1_00), batch(1, cut=(cut(1, piece),))), CostFlow.AVERAGE)
    sentences = [problem.sentence for problem in ledger.problems]
    assert len(sentences) == told
    assert all("a kept piece is larger than the sheet" in one for one in sentences[:1])
