"""The pages of finished makes and of prices, and the ways to them.

Each sheet of sea card, of which the batches below take one, was bought for 0.10.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.figures import Figures, work_out
from batchleaf.facts import (
    Archive,
    Asked,
    Project,
    Purchase,
    Sale,
    Status,
    Terms,
    Went,
    Whereabouts,
)
from batchleaf.views.finished import finished_page
from batchleaf.views.more import more_links, more_of
from batchleaf.views.pages import FinishedPage, HomePage, Link, PricesPage
from batchleaf.views.prices import prices_page, time_in_words
from core.drawers import bought, cut
from views.test_batch_page import BASE, DESIGN, SEA, SETTINGS, SUPPLIES, TOOLS, WORDS, card_batch
from views.test_small import plain, said
from whole_site import all_pages

KEPT, GIVEN, SOLD, SAMPLE = Whereabouts.KEPT, Whereabouts.GIVEN, Whereabouts.SOLD, Whereabouts.SAMPLE


def made(slug: str, on: int, *went: Went, asks: int | None = None, minutes: int | None = None) -> Project:
    """Six cards from one sheet."""
    one = card_batch(BASE, cuts=(cut(1, slug="sea-card"),), on=on, slug=slug)
    return replace(one, went=went, asks=Asked(asks) if asks else None, minutes=minutes)


GIVEN_AWAY = made("early", 3, Went(6, GIVEN))
FOR_SALE = made(
    "market", 4, Went(2, SOLD, 7_00, dt.date(2026, 2, 1)), Went(1, SOLD, 3_00), Went(1, SAMPLE),
    asks=3_50, minutes=70,
)  # fmt: skip
UNTOLD = made("later", 5, minutes=50)
PLANNED = replace(made("planned", 6, asks=9_99), status=Status.PLANNED, finished=0, begun=6)
ALL = (GIVEN_AWAY, FOR_SALE, UNTOLD, PLANNED)


def worked(*projects: Project, purchases: tuple[Purchase, ...] | None = None) -> Figures:
    """These batches, from ninety sheets for 9.00."""
    paid = (bought(0, 90, 900, "sea-card"),) if purchases is None else purchases
    return work_out(Archive(projects, SUPPLIES, paid, (), (), (DESIGN,), TOOLS), SETTINGS)


@pytest.fixture(scope="module")
def finished() -> FinishedPage:
    """The page of finished makes."""
    return finished_page(worked(*ALL))


@pytest.fixture(scope="module")
def prices() -> PricesPage:
    """The page of prices."""
    return prices_page(worked(*ALL))


def test_all_finished_makes_in_a_sentence(finished: FinishedPage) -> None:
    """The most first; then those that are not told, and what was brought in."""
    assert said(finished.sentence) == (
        "18 pieces are finished, in three batches: 6 were given, 3 sold and 1 put by as a sample,"
        " and of 8 it is not told. Those sold brought in 10.00 €."
    )


def test_every_batch_by_where_its_makes_went(finished: FinishedPage) -> None:
    """Newest first, and none that is only planned; counts of none are empty, and the columns add up."""
    assert finished.ways == ("Kept", "Given", "Sold", "Sample", "Class")
    rows = [
        (row.batch.text, row.finished, row.ways, row.not_told, row.brought)
        for row in (*finished.rows, finished.total)
    ]
    assert rows == [
        ("later", "6", ("", "", "", "", ""), "6", ""),
        ("market", "6", ("", "", "3", "1", ""), "2", "10.00"),
        ("early", "6", ("", "6", "", "", ""), "", ""),
        ("Three batches", "18", ("", "6", "3", "1", ""), "8", "10.00"),
    ]
    assert [row.batch.href for row in finished.rows] == [
        "../projects/later/", "../projects/market/#went", "../projects/early/#went",
    ]  # fmt: skip


def test_one_piece_that_was_kept() -> None:
    """One is, one was; nothing is not told and nothing was sold."""
    page = finished_page(worked(replace(made("one", 3, Went(1, KEPT)), finished=1, begun=1)))
    assert said(page.sentence) == "1 piece is finished, in one batch: 1 was kept."


@pytest.mark.parametrize(
    ("values", "told"),
    [
        ((700, None), "Those sold brought in at least 7.00 €."),
        ((None, None), "Those sold brought in an amount that is not known."),
    ],
)
def test_a_sale_without_a_price(values: tuple[int | None, ...], told: str) -> None:
    """What is not known is never nothing."""
    page = finished_page(worked(made("one", 3, *(Went(1, SOLD, value) for value in values))))
    assert said(page.sentence).endswith(told)


def test_what_is_asked_and_what_stays(prices: PricesPage) -> None:
    """0.10 among six is 0.02 each. Of 3.50 stay 3.48; 21.00 less 0.10 in 70 minutes are 17.91 an hour."""
    rows = [
        (row.batch.text, row.cost, plain(row.time), row.asked, row.stays, row.per_hour) for row in prices.rows
    ]
    assert rows == [
        ("later", "0.02", "8.3 min", "", "", ""),
        ("market", "0.02", "12 min", "3.50", "3.48", "17.91"),
        ("early", "0.02", "", "", "", ""),
    ]


def test_what_was_sold(prices: PricesPage) -> None:
    """Three of six carry half of 0.10."""
    assert said(prices.sentence) == (
        "A price is asked for one batch. 3 pieces were sold and brought in 10.00 €; 9.95 € of it stayed."
    )
    assert prices.total is not None
    rows = [
        (row.batch.text, row.sold, row.brought, row.cost, row.stayed) for row in (*prices.sold, prices.total)
    ]
    assert rows == [
        ("market", "3", "10.00", "0.05", "9.95"),
        ("One batch", "3", "10.00", "0.05", "9.95"),
    ]


def test_before_anything_is_sold() -> None:
    """There is no table of it."""
    page = prices_page(worked(made("one", 3, asks=3_50)))
    assert said(page.sentence) == "A price is asked for one batch. Nothing was sold yet."
    assert (page.sold, page.total) == ((), None)


def test_where_a_cost_is_not_known() -> None:
    """It is at least so much, so that what stays is at most so much; a loss is said as one."""
    unknown = worked(made("one", 3, Went(1, SOLD, 7_00), asks=3_50, minutes=60), purchases=())
    page = prices_page(unknown)
    (row,) = page.rows
    assert (row.cost, row.stays, row.per_hour) == ("not known", "at most 3.50", "at most 21.00")
    assert said(page.sentence).endswith("brought in 7.00 €; at most 7.00 € of it stayed.")
    both = worked(made("one", 3, Went(1, SOLD), asks=3_50), purchases=())
    assert [row.stayed for row in prices_page(both).sold] == ["not known"]
    assert said(prices_page(both).sentence).endswith("and brought in an amount that is not known.")
    dear = worked(made("one", 3, Went(6, SOLD, 4), asks=1))
    assert said(prices_page(dear).sentence).endswith("brought in 0.04 €, 0.06 € less than they cost.")
    assert [row.stays for row in prices_page(dear).rows] == ["−0.01"]


def test_terms_of_what_is_for_sale_are_told_once() -> None:
    """With the batches they concern, and not for what is given away."""
    words = replace(WORDS, terms=Terms(Sale.HANDMADE, "printed on the packet", noted=True))
    card = replace(SEA, terms=Terms(noted=True))
    stamped = [
        replace(one, tools=("words",)) for one in (GIVEN_AWAY, FOR_SALE, replace(FOR_SALE, slug="next"))
    ]
    archive = Archive(tuple(stamped), (card,), (), (), (), (), (words,))
    page = prices_page(work_out(archive, SETTINGS))
    assert [said(line) for line in page.terms] == [
        "Sea card: not known; in market and market.",
        "The tide words: handmade only (printed on the packet); in market and market.",
    ]
    assert prices_page(worked(*ALL)).terms == ()


@pytest.mark.parametrize(
    ("minutes", "told"),
    [
        (Fraction(1, 30), "0 min"),
        (Fraction(25, 8), "3.1 min"),
        (Fraction(63, 20), "3.2 min"),
        (Fraction(9), "9 min"),
        (Fraction(999, 100), "10 min"),
        (Fraction(29, 2), "15 min"),
        (Fraction(645, 10), "1 h 05"),
    ],
)
def test_the_time_of_one_in_words(minutes: Fraction, told: str) -> None:
    """Below ten minutes to a tenth, then to the minute; halves go up."""
    assert plain(time_in_words(minutes)) == told


def _to_them(links: tuple[Link, ...]) -> list[Link]:
    return [link for link in links if link.text in ("Finished makes", "Prices")]


def test_the_first_page_leads_to_both() -> None:
    """And only where there is something on them: a price of what is only planned is none yet."""
    both = worked(*ALL)
    home = next(one.page for one in all_pages(both) if isinstance(one.page, HomePage))
    assert _to_them(home.more) == [Link("Finished makes", "finished/"), Link("Prices", "prices/")]
    assert _to_them(more_links(both, "how/")) == [
        Link("Finished makes", "../finished/"),
        Link("Prices", "../prices/"),
    ]
    for some, there in (((UNTOLD, PLANNED), []), ((GIVEN_AWAY,), ["finished/"])):
        figures = worked(*some)
        assert [one.address for one in more_of(figures) if one.address in ("finished/", "prices/")] == there
        pages = {one.address for one in all_pages(figures)}
        assert {"finished/", "prices/"} & pages == set(there)
