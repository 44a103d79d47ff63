"""The price of one unit, purchase by purchase."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.unit_prices import average, paid_for, paid_together, price_range, priced
from batchleaf.facts import Basis, Place, Purchase
from core.drawers import bought, day

ORDERS = st.lists(
    st.tuples(st.integers(0, 900), st.integers(1, 60), st.integers(0, 9000), st.sampled_from(Basis)),
    max_size=12,
)


def purchases_of(orders: list[tuple[int, int, int, Basis]]) -> list[Purchase]:
    """Each with a value as its basis has it: none where nobody knows, and for a gift its delivery."""
    return [
        bought(on, quantity, None if basis is Basis.UNKNOWN else value, basis=basis)
        for on, quantity, value, basis in orders
    ]


@given(ORDERS, st.randoms(use_true_random=False))
def test_the_price_of_one_times_all_is_what_was_paid(
    orders: list[tuple[int, int, int, Basis]], shuffler: random.Random
) -> None:
    """Exactly; in order of date, whatever was read first; gifts and unknown prices are no price."""
    purchases = purchases_of(orders)
    shuffler.shuffle(purchases)
    purchases = [replace(one, place=Place("drawer.yml", line, 1)) for line, one in enumerate(purchases, 1)]
    paid = paid_for({"card"}, purchases)
    assert [one.purchase.date for one in paid] == sorted(one.date for one in purchases)
    for one in paid:
        if one.purchase.basis in (Basis.GIFT, Basis.UNKNOWN):
            assert one.one is None
        else:
            assert one.one is not None
            assert one.one * one.purchase.quantity == one.purchase.value


@given(ORDERS)
def test_first_last_lowest_and_highest(orders: list[tuple[int, int, int, Basis]]) -> None:
    """The average lies between the lowest and the highest; of fewer than two prices there is no range."""
    found = priced(paid_for({"card"}, purchases_of(orders)))
    prices = price_range(found)
    assert (prices is None) is (len(found) < 2)
    mean = average(found)
    assert (mean is None) is (found == ())
    if prices is not None and mean is not None:
        assert prices.lowest.one <= mean <= prices.highest.one
        assert all(prices.lowest.one <= one.one <= prices.highest.one for one in found)
        assert (prices.first, prices.last) == (found[0], found[-1])


def test_prices_by_hand() -> None:
    """20 for 5.50 and 12 for 3.36: 27.5 and 28 cents; a gift with 0.40 of delivery; one nobody knows."""
    paid = paid_for(
        {"card"},
        [
            bought(60, 12, 3_36),
            bought(0, 20, 5_50),
            bought(90, 4, 40, basis=Basis.GIFT),
            bought(120, 5, None, basis=Basis.UNKNOWN),
            bought(30, 3, 2_00, slug="other"),
        ],
    )
    assert [(one.purchase.date, one.one) for one in paid] == [
        (day(0), Fraction(55, 2)), (day(60), 28), (day(90), None), (day(120), None),
    ]  # fmt: skip
    assert average(priced(paid)) == Fraction(8_86, 32)
    together = paid_together(paid)
    assert (together.known, together.complete) == (9_26, False)
    assert paid_together(paid[:2]) == Cost(8_86)


def test_of_equal_prices_the_earliest_is_told() -> None:
    """The lowest and the highest are those that were so first."""
    found = priced(paid_for({"card"}, [bought(on, 1, value) for on, value in enumerate([5, 3, 9, 3, 9])]))
    prices = price_range(found)
    assert prices is not None
    assert (found.index(prices.lowest), found.index(prices.highest)) == (1, 2)
