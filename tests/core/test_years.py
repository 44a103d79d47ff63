"""The years of the records: what is told of each adds up, and nothing is in two of them or in none."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction
from itertools import accumulate, groupby, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.drawer_years import Amount, DrawerYear, PileYear, Way
from batchleaf.core.entries import Kind
from batchleaf.core.figures import Figures, work_out
from batchleaf.core.movements import Ledger
from batchleaf.core.years import Year, years_of
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
    Settings,
    Status,
)
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from core.drawers import archive, batch, bought, counted, cut, day, gone, pad, part, size, supply

FLOWS = list(CostFlow)
PIECE = size(25, 100)
OUT = (Way.USED, Way.GONE, Way.EMPTIED, Way.MISSING)
Step = tuple[str, int, int, int]


def figures_of(records: Archive, flow: CostFlow = CostFlow.AVERAGE, as_of: dt.date | None = None) -> Figures:
    """All that is worked out of an archive."""
    return work_out(records, Settings(Unit.MM, Currency.of("EUR"), flow, as_of))


STEPS = st.lists(
    st.tuples(
        st.sampled_from(
            [
                "buy",
                "gift",
                "unknown",
                "use",
                "cut",
                "scrap",
                "count",
                "pad",
                "paper",
                "hand",
                "gone",
                "level",
            ]
        ),
        st.integers(0, 1200),
        st.integers(1, 30),
        st.integers(0, 5000),
    ),
    max_size=16,
)
"""What happened, on which day of a bit more than three years, how much, and for how much."""


def history(steps: list[Step]) -> Archive:
    """Records of all kinds, on any day."""
    records: list[Project | Purchase | Count | Gone] = []
    for i, (what, on, quantity, value) in enumerate(steps):
        slug = f"b{i}"
        match what:
            case "buy":
                records.append(bought(on, quantity, value))
            case "gift":
                records.append(bought(on, quantity, 0, basis=Basis.GIFT))
            case "unknown":
                records.append(bought(on, quantity, None, basis=Basis.UNKNOWN))
            case "use":
                one = batch(on, uses=(("card", quantity),), slug=slug, finished=quantity)
                records.append(replace(one, begun=quantity + value % 3, minutes=value if value % 2 else None))
            case "cut":
                made = batch(on, cut=(cut(quantity, KeptPiece(PIECE, 1)),), slug=slug, finished=quantity)
                records.append(replace(made, parts=(part("A", 50, 20, "card"),)))
            case "scrap":
                records.append(batch(on, cut=(cut(1, scrap=PIECE),), slug=slug))
            case "pad":
                records.append(bought(on, 6, value, slug="pad"))
            case "paper":
                records.append(batch(on, cut=(cut(1, slug=f"pad-{1 + quantity % 3}"),), slug=slug))
            case "hand":
                cards = (cut(quantity),)
                records.append(batch(on, cut=cards, slug=slug, finished=0, status=Status.CUT))
            case "gone":
                records.append(gone(on, quantity, piece=PIECE if value % 2 else None))
            case "level":
                records += [bought(on, 2, value, slug="glue"), counted(on + 30, quantity % 3, slug="glue")]
            case _:
                records.append(counted(on, quantity, piece=PIECE if value % 3 == 0 else None))
    opening = Opening(day(40), Fraction(7), 3_00, place=Place("drawer.yml", 1, 1))
    glue = replace(supply("glue"), by_level=True)
    unopened = replace(supply("card"), opening=opening)
    return archive(*records, supplies=(unopened, glue, *pad()))


def drawers(years: tuple[Year, ...]) -> list[DrawerYear]:
    """The drawer of each year."""
    return [year.money.drawer for year in years if year.money]


def ledger_of(figures: Figures) -> Ledger:
    """The ledger, which is there in an edition that tells of the drawer."""
    assert figures.ledger is not None
    return figures.ledger


# --- the account ----------------------------------------------------------------------


def summed(pile: PileYear) -> tuple[Fraction, int]:
    """Start and all ways, in quantity and in value."""
    all_of = [pile.start, *pile.ways.values()]
    return sum((one.quantity for one in all_of), Fraction(0)), sum(one.cost.known for one in all_of)


@given(STEPS, st.sampled_from(FLOWS))
def test_start_and_all_that_moved_is_the_end(steps: list[Step], flow: CostFlow) -> None:
    """For each pile in quantity and in value, and for the whole drawer to the last coin."""
    for drawer in drawers(years_of(figures_of(history(steps), flow))):
        for pile in drawer.piles:
            assert summed(pile) == (pile.end.quantity, pile.end.cost.known)
        moved = [drawer.moved(way) for way in Way]
        assert drawer.start.known + sum(cost.known for cost in moved if cost) == drawer.end.known


@given(STEPS, st.sampled_from(FLOWS))
def test_a_year_starts_with_what_the_one_before_it_left(steps: list[Step], flow: CostFlow) -> None:
    """Nothing is lost between two years; the first starts with nothing, the last ends with the ledger."""
    figures = figures_of(history(steps), flow)
    told = drawers(years_of(figures))
    nothing = Amount(Fraction(0), NOTHING)
    assert [pile.start for pile in told[0].piles] == [nothing] * len(told[0].piles)
    for before, after in pairwise(told):
        left = {pile.holding: pile.end for pile in before.piles}
        assert all(left.get(pile.holding, nothing) == pile.start for pile in after.piles)
        assert left.keys() <= {pile.holding for pile in after.piles}
    balances = {one.holding: Amount(one.quantity, one.cost) for one in ledger_of(figures).balances}
    assert {pile.holding: pile.end for pile in told[-1].piles} == balances


@given(STEPS, st.sampled_from(FLOWS))
def test_no_way_goes_both_ways(steps: list[Step], flow: CostFlow) -> None:
    """What comes in is never below nothing; in value no more is kept than was used."""
    for drawer in drawers(years_of(figures_of(history(steps), flow))):
        for way in Way:
            cost = drawer.moved(way)
            if cost:
                assert (cost.known <= 0) if way in OUT else (cost.known >= 0)
        found = drawer.moved(Way.FOUND)
        assert found is None or found == Cost(0, found.complete, found.rests_on)


@given(STEPS, st.sampled_from(FLOWS))
def test_a_movement_knows_what_its_pile_is_worth(steps: list[Step], flow: CostFlow) -> None:
    """The worth after a movement is the worth before it and the movement, from nothing to the balance."""
    ledger = ledger_of(figures_of(history(steps), flow))
    worth = dict.fromkeys((one.holding for one in ledger.movements), 0)
    for one in ledger.movements:
        worth[one.holding] += one.cost.known
        assert one.worth.known == worth[one.holding]
    last = {one.holding: one.worth for one in ledger.movements}
    assert all(last[one.holding] == one.cost for one in ledger.balances if one.holding in last)


@given(STEPS)
def test_the_worth_of_a_month_is_the_sum_of_all_that_moved_until_then(steps: list[Step]) -> None:
    """Told from the first movement to the last record, and for no month before or after."""
    figures = figures_of(history(steps))
    movements = ledger_of(figures).movements
    years = years_of(figures)
    until = max(year.money.ends for year in years if year.money)
    for year, drawer in zip(years, drawers(years), strict=True):
        for month, told in enumerate(drawer.months, 1):
            so_far = [one for one in movements if (one.date.year, one.date.month) <= (year.number, month)]
            here = bool(so_far) and (year.number, month) <= (until.year, until.month)
            assert (told.worth is not None) is here
            if told.worth:
                assert told.worth.known == sum(one.cost.known for one in so_far)
    last_day = max(one.date for one in movements)
    assert until >= last_day


@given(STEPS)
def test_spent_is_what_the_purchases_of_the_year_say(steps: list[Step]) -> None:
    """By month and in all; at least that, where a price is not known; a gift is no unknown price."""
    records = history(steps)
    for year in years_of(figures_of(records)):
        assert year.money is not None
        mine = [one for one in records.purchases if one.date.year == year.number]
        months = [month.bought for month in year.money.drawer.months]
        spent = year.money.drawer.moved(Way.BOUGHT)
        assert sum(one.known for one in months) == sum(one.value or 0 for one in mine)
        assert (spent is None) is (mine == [])
        if spent:
            assert spent.known == sum(one.known for one in months)
            assert spent.complete is (year.money.unpriced == 0)
            assert year.money.unpriced == sum(one.basis is Basis.UNKNOWN for one in mine)
            assert year.money.gifts == sum(one.basis is Basis.GIFT for one in mine)


@given(STEPS, st.sampled_from(FLOWS))
def test_used_is_what_the_batches_of_the_year_cost(steps: list[Step], flow: CostFlow) -> None:
    """By supply and in all, those among them of which nothing is finished yet."""
    figures = figures_of(history(steps), flow)
    for year in years_of(figures):
        assert year.money is not None
        mine = [one for one in figures.batches.values() if one.project.date.year == year.number]
        used = year.money.drawer.moved(Way.USED) or NOTHING
        assert -used.known == sum(one.cost.batch.known for one in mine if one.cost)
        assert -used.known == sum(one.cost.known for one in year.money.drawn)
        costs = [one.cost.known for one in year.money.drawn]
        assert costs == sorted(costs, reverse=True)
        assert not {one.supply for one in year.money.drawn} & {"pad-1", "pad-2", "pad-3"}


# --- what was made ----------------------------------------------------------------------


@given(STEPS)
def test_every_batch_that_is_made_is_in_one_year_and_one_month_of_it(steps: list[Step]) -> None:
    """Batches, makes, time and paper of the months sum to the year, and those of the years to all."""
    figures = figures_of(history(steps))
    years = years_of(figures)
    for year in years:
        assert [one for month in year.months for one in month.batches] == list(year.made.batches)
        for number in ("finished", "begun", "spoiled", "minutes", "untimed"):
            assert sum(getattr(month, number) for month in year.months) == getattr(year.made, number)
        paper = year.made.paper
        if paper:
            cuts = [one.paper for one in year.made.batches if one.paper]
            sums = [sum(getattr(one, part) for one in cuts) for part in ("cut", "used", "kept")]
            assert [paper.cut, paper.used, paper.kept] == sums
            assert paper.cut == sum(month.paper.cut for month in year.months if month.paper)
            assert paper.used + paper.kept + paper.waste == paper.cut
    there = [one.project.slug for year in years for one in year.made.batches]
    assert sorted(there) == sorted(slug for slug, one in figures.batches.items() if one.made)


@given(STEPS)
def test_years_are_those_of_the_records(steps: list[Step]) -> None:
    """In order, each once, none in which nothing happened; each ends with its last day or the last record."""
    figures = figures_of(history(steps))
    years = years_of(figures)
    dates = {one.date for one in ledger_of(figures).movements}
    dates |= {one.project.date for one in figures.batches.values() if one.made}
    assert [year.number for year in years] == sorted({date.year for date in dates})
    ends = [dt.date(year.number, 12, 31) for year in years]
    told = [year.money for year in years if year.money]
    assert [one.ends for one in told] == [*ends[:-1], max(dates)]
    assert all(one.whole for one in told[:-1])


def test_without_a_ledger_years_are_those_of_batches() -> None:
    """Nothing is told of money, and a purchase makes no year."""
    figures = figures_of(archive(batch(400, finished=3), bought(0, 4, 4_00)))
    (year,) = years_of(replace(figures, ledger=None))
    assert (year.number, year.money, year.made.finished) == (2027, None, 3)
    assert [one.number for one in years_of(figures)] == [2026, 2027]


def test_where_nothing_is_recorded_there_is_no_year() -> None:
    """What is only planned has a date too, and is in none."""
    planned = batch(1, uses=(("card", 3),), status=Status.PLANNED)
    assert years_of(figures_of(archive(planned))) == ()


@pytest.mark.parametrize("as_of", [day(20), day(400)])
def test_the_drawer_is_told_as_of_a_day(as_of: dt.date) -> None:
    """An earlier one leaves out the money of what came after it; a later one goes on with what is there."""
    records = archive(
        bought(0, 4, 4_00),
        batch(10, uses=(("card", 1),)),
        bought(30, 2, None),
        batch(390, uses=(("card", 1),)),
    )
    first, second = years_of(figures_of(records, as_of=as_of))
    assert [len(year.made.batches) for year in (first, second)] == [1, 1]
    assert first.money is not None
    if as_of == day(20):
        assert (first.money.ends, first.money.unpriced, second.money) == (as_of, 0, None)
        assert first.money.drawer.end == Cost(3_00)
        assert [one.worth for one in first.money.drawer.months][:2] == [Cost(3_00), None]
    else:
        assert second.money is not None
        assert (first.money.whole, first.money.unpriced, second.money.ends) == (True, 1, as_of)
        told = [one.worth is not None for one in second.money.drawer.months]
        assert told == [True, True, *[False] * 10]


def test_two_years_by_hand() -> None:
    """Ten sheets for 5.00, four used, one missing; then six for 4.20, one at no known price, five used.

    A second count of the first year finds what it should. 2026: 5.00 − 2.00 − 0.50 = 2.50 for five
    sheets. 2027: 2.50 + 4.20 for eleven sheets; with the one that nobody priced twelve, of which five
    cost 6.70 × 5 ÷ 12 = 2.79; a count finds one more than seven.
    """
    years = years_of(
        figures_of(
            archive(
                bought(10, 10, 5_00),
                replace(batch(20, uses=(("card", 4),), finished=8), begun=9, minutes=70),
                counted(30, 5),
                counted(31, 5),
                replace(batch(40, finished=0), minutes=0),
                bought(370, 6, 4_20),
                bought(380, 1, None, basis=Basis.UNKNOWN),
                batch(400, uses=(("card", 5),), finished=2),
                counted(410, 8),
            )
        )
    )
    first, second = drawers(years)
    assert {way: first.moved(way) for way in Way if first.moved(way)} == {
        Way.BOUGHT: Cost(5_00), Way.USED: Cost(-2_00), Way.MISSING: Cost(-50),
    }  # fmt: skip
    assert (first.start, first.end) == (Cost(0), Cost(2_50))
    assert {way: second.moved(way) for way in Way if second.moved(way)} == {
        Way.BOUGHT: Cost(4_20, complete=False),
        Way.USED: Cost(-2_79, complete=False),
        Way.FOUND: Cost(0),
    }
    assert (second.start, second.end) == (Cost(2_50), Cost(3_91, complete=False))
    (pile,) = second.piles
    assert [pile.start.quantity, pile.end.quantity] == [5, 8]
    assert [month.worth and month.worth.known for month in first.months] == [2_50] * 12
    assert [month.worth and month.worth.known for month in second.months] == [6_70, 3_91, *[None] * 10]
    assert [(one.made.finished, one.made.spoiled, one.made.minutes, one.made.untimed) for one in years] == [
        (8, 1, 70, 0),
        (2, 0, 0, 1),
    ]
    assert [(one.money.whole, one.money.ends) for one in years if one.money] == [
        (True, dt.date(2026, 12, 31)),
        (False, dt.date(2027, 2, 15)),
    ]


def test_what_went_elsewhere_and_what_was_used_by_level_are_told_apart() -> None:
    """Two of four sheets for swatches; of two bottles one and a half is left; two sheets are there."""
    (drawer,) = drawers(
        years_of(
            figures_of(
                archive(
                    bought(0, 4, 4_00),
                    gone(1, 2),
                    counted(2, 2),
                    bought(3, 2, 6_00, slug="glue"),
                    replace(counted(4, 1, slug="glue"), quantity=Fraction(3, 2)),
                    supplies=(supply(), replace(supply("glue"), by_level=True)),
                )
            )
        )
    )
    assert {way: drawer.moved(way) for way in Way if drawer.moved(way)} == {
        Way.BOUGHT: Cost(10_00), Way.GONE: Cost(-2_00), Way.EMPTIED: Cost(-1_50),
    }  # fmt: skip
    assert drawer.end == Cost(6_50)


@pytest.mark.parametrize("flow", FLOWS)
def test_a_price_that_was_never_known_is_forgotten_with_the_last_of_it(flow: CostFlow) -> None:
    """While any of it may be there the drawer is worth at least so much; after that it is known again."""
    (drawer,) = drawers(
        years_of(
            figures_of(
                archive(
                    bought(0, 2, None, basis=Basis.UNKNOWN),
                    bought(31, 2, 2_00),
                    batch(60, uses=(("card", 4),)),
                    bought(91, 1, 1_00),
                ),
                flow,
            )
        )
    )
    told = [month.worth for month in drawer.months if month.worth]
    assert [(one.known, one.complete) for one in told] == [(0, False), (2_00, False), (0, True), (1_00, True)]


@given(STEPS)
def test_months_hold_the_purchases_of_their_days(steps: list[Step]) -> None:
    """What came in by orders, month by month, is what the ledger says of those days."""
    figures = figures_of(history(steps))
    moved = [one for one in ledger_of(figures).movements if one.kind is Kind.BOUGHT]
    by_month = {
        month: sum(one.cost.known for one in mine)
        for month, mine in groupby(moved, key=lambda one: (one.date.year, one.date.month))
    }
    for year in years_of(figures):
        assert year.money is not None
        for number, month in enumerate(year.money.drawer.months, 1):
            assert month.bought.known == by_month.get((year.number, number), 0)
    total = list(accumulate(by_month.values()))[-1:] or [0]
    assert total == [sum(one.value or 0 for one in figures.archive.purchases)]
