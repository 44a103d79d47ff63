"""The cost of a batch and of one."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.costing import batch_cost
from batchleaf.core.movements import Draw


def draw(supply: str, known: int, *, complete: bool = True, kept: int = 0) -> Draw:
    """What one line took."""
    return Draw("b", supply, None, Fraction(1), Cost(known, complete), Cost(kept, complete))


def test_the_cost_of_one_and_the_shares_of_all() -> None:
    """8.03 among eleven: 0.73 each; the shares sum to the last cent."""
    cost = batch_cost([draw("card", 5_04), draw("pad", 1_80, kept=48), draw("card", 1_67)], 11)
    assert (cost.batch, cost.one) == (Cost(8_03), 73)
    assert cost.shares == ((73, 11),)
    assert [(line.supply, line.cost.known, line.one) for line in cost.lines] == [
        ("card", 6_71, 61), ("pad", 1_32, 12),
    ]  # fmt: skip


@given(st.lists(st.integers(0, 90_000), min_size=1, max_size=8), st.integers(1, 99))
def test_all_shares_and_lines_sum_to_what_is_shown(amounts: list[int], finished: int) -> None:
    """Supplies sum to the batch, their shares to the cost of one, and the makes to the batch."""
    cost = batch_cost([draw(f"s{i}", amount) for i, amount in enumerate(amounts)], finished)
    assert cost.one is not None
    assert sum(line.cost.known for line in cost.lines) == cost.batch.known == sum(amounts)
    assert sum(line.one for line in cost.lines) == cost.one
    assert sum(share * makes for share, makes in cost.shares) == cost.batch.known
    assert sum(makes for _, makes in cost.shares) == finished


def test_an_unknown_price_is_named_and_never_nothing() -> None:
    """The sum is of the others, and says whose price is missing."""
    cost = batch_cost([draw("card", 2_00), draw("ribbon", 0, complete=False)], 4)
    assert cost.batch == Cost(2_00, complete=False)
    assert cost.without == ("ribbon",)


def test_what_was_not_measured_is_named_and_not_counted() -> None:
    """A stamp of ink costs something, and the page says that it is not in the sum."""
    ink = Draw("b", "ink", None, None, Cost(0), Cost(0))
    cost = batch_cost([draw("card", 2_00), ink], 4)
    assert (cost.one, cost.not_counted) == (50, ("ink",))


def test_without_a_finished_make_there_is_no_cost_of_one() -> None:
    """Nothing is divided by nothing."""
    cost = batch_cost([draw("card", 2_00)], 0)
    assert (cost.one, cost.shares) == (None, ())
