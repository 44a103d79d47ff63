"""What a cost consists of, and what it would be at today's prices."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.cost_kinds import CostKind, KindCost, cost_by_kind
from batchleaf.core.costing import BatchCost, batch_cost
from batchleaf.core.ledger import keep_ledger
from batchleaf.core.todays_prices import TodaysCost, last_prices, todays_cost
from batchleaf.facts import Archive, Basis, CostFlow, KeptPiece, Project, Purpose, Use
from core.drawers import archive, batch, bought, cut, day, pad, part, size, supply

CARD = supply()
TAPE = replace(supply("tape"), size=None, kind="adhesive", unit="m", units="m")
BRAD = replace(supply("brad"), size=None, kind="brads", unit="piece", units="pieces")
BAG = replace(BRAD, slug="bag", name="bag", kind="bags")
SUPPLIES = {one.slug: one for one in (CARD, TAPE, BRAD, BAG, *pad())}


def of_six(*, finished: int = 4, kept: tuple[KeptPiece, ...] = ()) -> Project:
    """Six begun from two sheets of 100 × 100, each with one part of 50 × 20: 6,000 mm² of 20,000."""
    one = batch(
        5,
        cut=(cut(2, *kept),),
        uses=(("brad", finished),),
        finished=finished,
    )
    uses = (
        *one.uses,
        Use("tape", Fraction(1), purpose=Purpose.STICKING),
        Use("bag", Fraction(2), purpose=Purpose.PACKING),
    )
    return replace(one, begun=6, parts=(part("A", 50, 20, "card"),), uses=uses)


def bench(project: Project) -> Archive:
    """What was bought for it: 10 sheets for 10.00, 10 m for 1.00, 100 brads for 5.00, 10 bags for 2.00."""
    return archive(
        bought(1, 10, 10_00),
        bought(1, 10, 1_00, "tape"),
        bought(1, 100, 5_00, "brad"),
        bought(1, 10, 2_00, "bag"),
        project,
        supplies=tuple(SUPPLIES.values()),
    )


def costs(records: Archive, flow: CostFlow = CostFlow.AVERAGE) -> tuple[BatchCost, tuple[KindCost, ...]]:
    """The cost of the one batch of ``records``, and what it consists of."""
    [project] = records.projects
    cost = batch_cost(keep_ledger(records, flow).draws[project.slug], project.finished)
    supplies = {one.slug: one for one in records.supplies}
    return cost, cost_by_kind(cost, project, supplies)


def test_a_batch_worked_out_by_hand() -> None:
    """Two sheets for 2.00: a fifth is in four finished cards, a tenth in two spoiled; the rest is waste."""
    cost, kinds = costs(bench(of_six()))
    assert cost.batch == Cost(2_00 + 20 + 10 + 40)
    assert {kind.kind: kind.cost.known for kind in kinds} == {
        CostKind.PAPERS: 40,
        CostKind.ADHESIVE: 10,
        CostKind.EMBELLISHMENTS: 20,
        CostKind.PACKING: 40,
        CostKind.WASTE: 1_40,
        CostKind.SPOILAGE: 20,
    }


def test_what_is_kept_is_no_waste() -> None:
    """Half of both sheets goes back with half of the cost; the rest of the other half is waste."""
    _, kinds = costs(bench(of_six(kept=(KeptPiece(size(100, 50), 2),))))
    sums = {kind.kind: kind.cost.known for kind in kinds}
    assert (sums[CostKind.PAPERS], sums[CostKind.SPOILAGE], sums[CostKind.WASTE]) == (40, 20, 40)


def test_a_price_that_is_not_known_is_not_known_of_the_papers() -> None:
    """Waste of which nobody knows the price is not told to be worth nothing: it is not told."""
    [project] = bench(of_six()).projects
    records = replace(bench(project), purchases=(bought(1, 10, None), bought(1, 100, 5_00, "brad")))
    _, kinds = costs(records)
    told = {kind.kind: kind.cost for kind in kinds}
    assert told[CostKind.PAPERS] == Cost(0, complete=False)
    assert CostKind.WASTE not in told


def test_a_part_of_several_papers_counts_to_each_by_what_was_cut_of_it() -> None:
    """Three sheets of one and one of another: three quarters of the parts' area are of the first."""
    two = {one.slug: one for one in (supply("plain"), supply("striped"))}
    project = replace(
        batch(5, cut=(cut(3, slug="plain"), cut(1, slug="striped")), finished=8),
        parts=(part("A", 50, 40, "plain", "striped"),),
    )
    records = archive(
        bought(1, 3, 3_00, "plain"), bought(1, 1, 4_00, "striped"), project, supplies=tuple(two.values())
    )
    _, kinds = costs(records)
    # 8 × 2,000 mm² of 40,000: 12,000 of the plain 30,000, and 4,000 of the striped 10,000.
    assert {kind.kind: kind.cost.known for kind in kinds} == {
        CostKind.PAPERS: 1_20 + 1_60,
        CostKind.WASTE: 1_80 + 2_40,
    }


@given(
    st.integers(0, 6),
    st.lists(st.integers(1, 90), max_size=3),
    st.tuples(*[st.one_of(st.none(), st.integers(0, 5000))] * 4),
    st.sampled_from(list(CostFlow)),
)
def test_all_kinds_sum_to_the_batch_and_to_one(
    finished: int, kept: list[int], paid: tuple[int | None, ...], flow: CostFlow
) -> None:
    """To the last minor unit, whatever was kept, spoiled or not priced; none is below nothing."""
    project = of_six(finished=finished, kept=tuple(KeptPiece(size(wide, 60), 1) for wide in kept))
    lots = [
        bought(1, 10, value, slug) for value, slug in zip(paid, ("card", "tape", "brad", "bag"), strict=True)
    ]
    cost, kinds = costs(replace(bench(project), purchases=tuple(lots)), flow)
    assert sum(kind.cost.known for kind in kinds) == cost.batch.known
    assert sum(kind.one for kind in kinds) == (cost.one or 0)
    assert all(kind.cost.known >= 0 for kind in kinds)
    assert all(kind.cost.complete for kind in kinds) is cost.batch.complete


# --- at today's prices -----------------------------------------------------------


def test_the_last_price_counts_and_a_gift_is_none() -> None:
    """Of a pad by the sheet, to the end of the day asked for."""
    purchases = [
        bought(9, 5, 10_00),
        bought(1, 10, 10_00),
        bought(12, 10, 0, basis=Basis.GIFT),
        bought(13, 10, None),
        bought(3, 6, 3_00, "pad"),
    ]
    assert last_prices(purchases, SUPPLIES, None) == {"card": Fraction(200), "pad": Fraction(50)}
    assert last_prices(purchases, SUPPLIES, day(8)) == {"card": Fraction(100), "pad": Fraction(50)}
    assert last_prices(purchases, SUPPLIES, day(0)) == {}


def test_the_same_batch_at_todays_prices() -> None:
    """Two sheets less half of one, at 3.00: 4.50; four brads at 0.05; tape and bags have no price."""
    project = of_six(kept=(KeptPiece(size(100, 50), 1),))
    prices = {"card": Fraction(300), "brad": Fraction(5)}
    assert todays_cost(project, SUPPLIES, prices) == TodaysCost(4_70, 1_18, ("tape", "bag"))


def test_a_scrap_costs_its_share_of_a_sheet() -> None:
    """A quarter of a sheet at 1.01 is 0.2525, and rounds once: 0.25."""
    project = batch(5, cut=(cut(1, scrap=size(50, 50)),), finished=2)
    assert todays_cost(project, SUPPLIES, {"card": Fraction(101)}) == TodaysCost(25, 13, ())


@pytest.mark.parametrize("finished", [0, 4])
def test_without_any_price_nothing_is_told(finished: int) -> None:
    """Nor is anything before the first one is finished."""
    prices = {"card": Fraction(100)} if not finished else {}
    assert todays_cost(of_six(finished=finished), SUPPLIES, prices) is None


@given(st.integers(1, 50), st.integers(1, 5000))
def test_where_prices_stay_the_cost_of_today_is_what_it_cost(sheets: int, value: int) -> None:
    """One purchase, all of it used: today's cost is the batch's."""
    project = batch(5, cut=(cut(sheets),), finished=3)
    records = archive(bought(1, sheets, value), project)
    cost = batch_cost(keep_ledger(records, CostFlow.AVERAGE).draws["batch-5"], 3)
    today = todays_cost(project, SUPPLIES, last_prices(records.purchases, SUPPLIES, None))
    assert today is not None
    assert (today.batch, today.one) == (cost.batch.known, cost.one)
