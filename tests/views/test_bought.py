"""What an item's page says of what was bought, in several currencies and units."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.figures import work_out
from batchleaf.facts import Basis, Purchase, Settings, Supply
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.bought import bought_view
from batchleaf.views.item import item_page
from batchleaf.views.pages import BoughtView
from batchleaf.views.price_of_one import PriceShown
from core.drawers import archive, bought, day, pad, supply
from views.test_small import plain

CARD = supply()
CORD = replace(CARD, slug="cord", name="jute cord", unit="m", units="m", size=None)
BEADS = replace(CARD, slug="beads", name="beads", unit="bead", units="beads", size=None, pack=250)


def view(
    *purchases: Purchase, of: Supply = CARD, code: str = "EUR", also: tuple[Supply, ...] = ()
) -> BoughtView | None:
    """What the page says of these purchases."""
    records = archive(*purchases, supplies=(of, *also))
    return bought_view(of, work_out(records, Settings(Unit.MM, Currency.of(code))))


def told(
    *purchases: Purchase, of: Supply = CARD, code: str = "EUR", also: tuple[Supply, ...] = ()
) -> BoughtView:
    """The same, where something was bought."""
    found = view(*purchases, of=of, code=code, also=also)
    assert found is not None
    return found


def shown(bought: BoughtView) -> list[tuple[str, str, str, str]]:
    """Quantity, bundles, paid, price of one."""
    return [(row.quantity, row.bundles, row.paid, row.one) for row in bought.rows]


def test_purchases_and_their_sum() -> None:
    """20 for 5.50 are 27.5 cents, 12 for 3.36 are 28: told in tenths, since they would look the same."""
    two = told(bought(0, 20, 5_50), bought(57, 12, 3_36))
    assert shown(two) == [("20", "", "5.50", "0.275"), ("12", "", "3.36", "0.280")]
    assert (two.unit, two.paid_label, two.one_label) == ("Sheets", "Paid, €", "One sheet, €")
    assert (two.total_quantity, two.total_paid, two.average) == ("32", "8.86", "0.277")
    assert two.chart is not None
    assert plain(two.chart.description) == (
        "2 purchases: first, 1 January 2026, 0.275 €; last, 27 February 2026, 0.280 €."
    )


def test_a_gift_and_an_unknown_price_are_not_nothing() -> None:
    """Neither is a price, and neither is drawn; the sum is at least what is known."""
    four = told(
        bought(0, 10, 3_00),
        bought(10, 5, 0, basis=Basis.GIFT),
        bought(20, 5, 60, basis=Basis.GIFT),
        bought(30, 10, None, basis=Basis.UNKNOWN),
        bought(40, 10, 4_00, basis=Basis.GUESSED),
    )
    assert shown(four) == [
        ("10", "", "3.00", "0.30"),
        ("5", "", "gift", ""),
        ("5", "", "gift, 0.60", ""),
        ("10", "", "not known", ""),
        ("10", "", "about 4.00", "about 0.40"),
    ]
    assert (four.total_quantity, four.total_paid, four.average) == ("40", "at least 7.60", "0.35")
    assert four.chart is not None
    assert plain(four.chart.description).startswith("2 purchases: first, 1 January 2026, 0.30 €; last,")
    assert four.notes == (
        "What was paid has its share of the delivery in it.",
        "A gift has no price of its own; beside it stands its delivery.",
        "The price of one is not known.",
        "What says about is a guess.",
        "The average is of all that has a price.",
    )


@pytest.mark.parametrize(
    "other", [bought(9, 3, 0, basis=Basis.GIFT), bought(9, 3, None, basis=Basis.UNKNOWN)]
)
def test_one_price_is_no_history(other: Purchase) -> None:
    """No chart and no average of one."""
    one = told(bought(0, 10, 3_00), other)
    assert (one.chart, one.average) == (None, "")


def test_where_nothing_was_bought_nothing_is_told() -> None:
    """Neither of the supply itself nor where the ledger is not told."""
    assert view() is None
    figures = work_out(archive(bought(0, 1, 1_00)), Settings(Unit.MM, Currency.of("EUR")))
    assert item_page(CARD, figures, {}).bought is not None
    assert item_page(CARD, replace(figures, ledger=None), {}).bought is None


def test_the_drawer_of_an_earlier_day_knows_nothing_of_what_came_later() -> None:
    """As the movements below it."""
    settings = Settings(Unit.MM, Currency.of("EUR"), as_of=day(5))
    figures = work_out(archive(bought(0, 4, 1_00), bought(9, 4, 2_00)), settings)
    found = bought_view(CARD, figures)
    assert found is not None
    assert shown(found) == [("4", "", "1.00", "0.25")]


def test_packs_pads_and_metres() -> None:
    """Whole ones are told beside the units; a pad has the sheets of its papers, and says which came alone."""
    beads = told(bought(0, 500, 4_00, slug="beads"), bought(9, 250, 3_00, slug="beads"), of=BEADS)
    assert shown(beads) == [("500", "2 packs", "4.00", "0.0080"), ("250", "1 pack", "3.00", "0.0120")]
    assert beads.total_bundles == "3 packs"
    odd = told(bought(0, 500, 4_00, slug="beads"), bought(9, 40, 3_00, slug="beads"), of=BEADS)
    assert ([row.bundles for row in odd.rows], odd.total_bundles) == (["2 packs", ""], "")
    whole, *papers = pad(designs=6, copies=4)
    single = replace(bought(9, 3, 1_20, slug="pad-2"), supplier="a stall")
    of_pad = told(bought(0, 24, 9_60, slug="pad"), single, of=whole, also=tuple(papers))
    assert shown(of_pad) == [("24", "1 pad", "9.60", "0.40"), ("3", "", "1.20", "0.40")]
    assert [row.source for row in of_pad.rows] == ["", "a stall, paper 2"]
    assert view(single, of=papers[1], also=(whole,)) is None
    cord = told(replace(bought(0, 1, 4_35, slug="cord"), quantity=Fraction(25, 2)), of=CORD)
    assert shown(cord) == [("12.5", "", "4.35", "0.35")]
    assert (cord.unit, plain(cord.one_label)) == ("m", "1 m, €")


def test_currencies_without_a_smaller_coin_and_with_three_decimals() -> None:
    """Yen are told whole, or in tenths where one costs less than ten; fils are thousandths."""
    assert shown(told(bought(0, 12, 500), code="JPY")) == [("12", "", "500", "42")]
    assert shown(told(bought(0, 60, 500), code="JPY")) == [("60", "", "500", "8.3")]
    assert shown(told(bought(0, 12, 1_500), code="KWD")) == [("12", "", "1.500", "0.125")]
    assert shown(told(bought(0, 1000, 1), code="KWD")) == [("1,000", "", "0.001", "under 0.00001")]
    assert shown(told(bought(0, 4, 0))) == [("4", "", "0.00", "0.00")]


PRICES = st.lists(st.fractions(min_value=0, max_value=10**6), min_size=1, max_size=8)


@given(PRICES, st.sampled_from(["EUR", "JPY", "KWD"]))
def test_a_price_is_rounded_once(prices: list[Fraction], code: str) -> None:
    """What is shown is within half of its last figure, halves up, and never nothing for something."""
    currency = Currency.of(code)
    as_shown = PriceShown.of(currency, prices)
    last = Fraction(1, 10 ** (currency.digits + as_shown.more))
    for price in prices:
        text = as_shown.show(price).replace(",", "")
        exact = price / 10**currency.digits
        if text.startswith("under "):
            assert 0 < exact < Fraction(text.removeprefix("under "))
        else:
            assert -last / 2 < exact - Fraction(text) <= last / 2 or exact - Fraction(text) == -last / 2
            assert Fraction(text) > 0 or price == 0
    assert 0 <= as_shown.more <= 2


@given(
    st.lists(
        st.tuples(st.integers(1, 40), st.integers(0, 9000), st.sampled_from(Basis)), min_size=1, max_size=9
    )
)
def test_the_column_of_what_was_paid_adds_up(orders: list[tuple[int, int, Basis]]) -> None:
    """As it is shown, to the last coin; and so do the quantities."""
    lines = [
        bought(on, quantity, None if basis is Basis.UNKNOWN else value, basis=basis)
        for on, (quantity, value, basis) in enumerate(orders)
    ]
    found = told(*lines)

    def amount(text: str) -> Fraction:
        last = (
            text.replace(",", " ").replace("  ", " ").split(" ")[-1]
            if "gift" in text
            else text.split(" ")[-1]
        )
        return Fraction(last.replace(",", "")) if last[:1].isdigit() else Fraction(0)

    assert sum(amount(row.paid) for row in found.rows) == amount(found.total_paid)
    assert sum(Fraction(row.quantity.replace(",", "")) for row in found.rows) == Fraction(
        found.total_quantity
    )
