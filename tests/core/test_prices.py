"""What is asked and what stays; what was sold."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.costing import BatchCost, batch_cost
from batchleaf.core.figures import BatchFigures
from batchleaf.core.movements import Draw
from batchleaf.core.prices import SoldMakes, Stays, one_price, sold_makes, sold_together
from batchleaf.facts import Asked, Went, Whereabouts
from core.drawers import batch

CENTS = st.integers(0, 90_000)


def account(cost: int, finished: int, *, complete: bool = True) -> BatchCost:
    """What a batch drew, from one supply."""
    return batch_cost([Draw("b", "card", None, Fraction(1), Cost(cost, complete), Cost(0))], finished)


def figures(cost: int, *, complete: bool = True, **of_project: Any) -> BatchFigures:
    """A batch that cost so much; ``of_project`` are facts of it."""
    project = replace(batch(1, finished=of_project.pop("finished", 6)), **of_project)
    of_all = account(cost, project.finished, complete=complete)
    return BatchFigures(project, None, None, (), one=of_all.one, lacks=of_all.lacks, cost=of_all)


def sold(count: int, value: int | None) -> Went:
    """So many, for so much in all."""
    return Went(count, Whereabouts.SOLD, value)


@st.composite
def sellings(draw: st.DrawFn) -> BatchFigures:
    """A batch some of which was sold."""
    lines = draw(st.lists(st.builds(sold, st.integers(1, 20), st.none() | CENTS), max_size=4))
    finished = sum(one.count for one in lines) + draw(st.integers(0, 9))
    return figures(
        draw(CENTS), complete=draw(st.booleans()), finished=max(finished, 1), went=tuple(lines),
        asks=draw(st.none() | st.builds(Asked, st.integers(1, 9_000))),
        minutes=draw(st.none() | st.integers(0, 600)),
    )  # fmt: skip


@given(sellings())
def test_price_is_cost_and_what_stays(one_batch: BatchFigures) -> None:
    """On every line, to the cent; there is no line of it where nothing is asked."""
    one, asks = one_price(one_batch), one_batch.project.asks
    assert one is not None
    assert one.asked == (asks.price if asks else None)
    assert (one.stays is None) == (asks is None)
    if asks and one.stays:
        assert one.cost.known + one.stays.amount == asks.price
        assert one.stays.at_most == (not one.cost.complete)
        assert not one.stays.at_least


@given(sellings())
def test_what_stays_for_an_hour_is_exact(one_batch: BatchFigures) -> None:
    """The price of all less the cost of all, by the hours, never off by more than half a cent."""
    one, project = one_price(one_batch), one_batch.project
    assert one is not None
    assert (one.per_hour is not None) == bool(project.asks and project.minutes)
    assert one.minutes == (Fraction(project.minutes, project.finished) if project.minutes else None)
    if one.per_hour and project.asks and project.minutes and one_batch.cost:
        left = project.asks.price * project.finished - one_batch.cost.batch.known
        exact = Fraction(left) / Fraction(project.minutes, 60)
        assert -Fraction(1, 2) < one.per_hour.amount - exact <= Fraction(1, 2)  # halves go up
        assert one.per_hour.at_most == (not one.cost.complete)


@given(sellings())
def test_brought_in_is_cost_and_what_stayed(one_batch: BatchFigures) -> None:
    """On every line; the share of the cost is exact to half a cent, and all of it where all were sold."""
    makes, project = sold_makes(one_batch), one_batch.project
    assert makes.cost.known + makes.stayed.amount == makes.brought.known
    assert one_batch.cost is not None
    exact = Fraction(one_batch.cost.batch.known * makes.count, project.finished)
    assert -Fraction(1, 2) < makes.cost.known - exact <= Fraction(1, 2)
    if makes.count == project.finished:
        assert makes.cost == one_batch.cost.batch
    if not makes.count:
        assert (makes.cost, makes.brought) == (Cost(0), Cost(0))


@given(st.lists(sellings(), max_size=6))
def test_columns_add_up(batches: list[BatchFigures]) -> None:
    """The sums are those of the lines, and the line of sums adds up too; what one lacks, they lack."""
    each = [sold_makes(one) for one in batches]
    total = sold_together(each)
    assert total.count == sum(one.count for one in each)
    assert total.brought.known == sum(one.brought.known for one in each)
    assert total.cost.known == sum(one.cost.known for one in each)
    assert total.stayed.amount == sum(one.stayed.amount for one in each)
    assert total.cost.known + total.stayed.amount == total.brought.known
    assert total.stayed.known or any(one.stayed.at_least for one in each)
    assert total.stayed.at_least == any(one.stayed.at_least for one in each)
    assert total.stayed.at_most == any(one.stayed.at_most for one in each)


def test_by_hand() -> None:
    """Six cost 4.35, so one 72.5 cents, which is 0.73: of 3.50 stay 2.77.

    Six at 3.50 are 21.00; less 4.35 in 70 minutes, 14.27 1/7 an hour. Five sold for 17.50 carry
    3.625, so 3.63, and 13.87 stayed.
    """
    went = (sold(5, 17_50), Went(1, Whereabouts.KEPT))
    made = figures(4_35, went=went, asks=Asked(3_50), minutes=70)
    one = one_price(made)
    assert one is not None
    assert (one.cost, one.asked, one.stays) == (Cost(73), 3_50, Stays(2_77))
    assert (one.minutes, one.per_hour) == (Fraction(70, 6), Stays(14_27))
    assert sold_makes(made) == SoldMakes(5, Cost(17_50), Cost(3_63))
    assert sold_makes(made).stayed == Stays(13_87)


def test_who_asks_less_than_it_costs_loses() -> None:
    """It is below nothing, and said so."""
    one = one_price(figures(4_35, asks=Asked(50), minutes=60))
    assert one is not None
    assert (one.stays, one.per_hour) == (Stays(-23), Stays(-1_35))


@pytest.mark.parametrize(
    ("income", "cost", "bounds"),
    [
        (Cost(5), Cost(2), ""),
        (Cost(5, complete=False), Cost(2), "at least"),
        (Cost(5), Cost(2, complete=False), "at most"),
        (Cost(5, complete=False), Cost(2, complete=False), "at least, at most"),
    ],
)
def test_what_is_not_known_bounds_what_stays(income: Cost, cost: Cost, bounds: str) -> None:
    """From below, from above, or not at all."""
    stays = Stays.of(income, cost)
    said = [word for word, so in (("at least", stays.at_least), ("at most", stays.at_most)) if so]
    assert (stays.amount, ", ".join(said), stays.known) == (3, bounds, len(said) < 2)


def test_before_the_first_is_finished_there_is_no_price_of_one() -> None:
    """Whatever is asked, and however long it took so far."""
    assert one_price(figures(4_35, finished=0, asks=Asked(50), minutes=60)) is None


def test_a_batch_that_was_not_counted_has_no_known_cost() -> None:
    """What is asked is known, and nobody knows what stays of it at least."""
    uncounted = figures(0, asks=Asked(3_50), went=(sold(2, 7_00),))
    uncounted = replace(uncounted, cost=batch_cost([], 6), one=None)
    one = one_price(uncounted)
    assert one is not None
    assert (one.cost, one.stays) == (Cost(0, complete=False), Stays(3_50, at_most=True))
    assert sold_makes(uncounted).cost == Cost(0, complete=False)
