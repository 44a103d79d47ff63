"""A batch that is cut and of which nothing is finished yet: it is neither made nor spoiled.

Twelve cards of 100 x 90 from two sheets of 300 x 200 (six each), and a tape of which each
takes two; beside it, in the same series, five cards that are made from one sheet.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.figures import Figures, work_out
from batchleaf.facts import Archive, Project, Series, Settings, Status, Use
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.render.html import render
from batchleaf.views.batch import batch_page
from batchleaf.views.figures_json import figures_json
from batchleaf.views.home import home_page
from batchleaf.views.pages import BatchPage
from batchleaf.views.series import series_page
from core.drawers import batch, bought, cut, part, size, supply
from views.test_small import said

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))
SUPPLIES = (supply("card", size=size(300, 200)), replace(supply("tape"), size=None), supply("ink"))
PER_MAKE = Fraction(2)


def cards(on: int, sheets: int, finished: int, begun: int, status: Status) -> Project:
    """So many cards, of which each takes two of the tape; ink is not measured."""
    uses = (Use("tape", PER_MAKE * finished, PER_MAKE), Use("ink", None))
    one = batch(on, cut=(cut(sheets),), slug=f"day-{on}", finished=finished, status=status)
    return replace(
        one, parts=(replace(part("A", 100, 90, "card"), name="base"),), begun=begun, uses=uses, series="tides"
    )


def worked(cut_now: Project) -> Figures:
    """A batch that is made, and this one."""
    made = cards(1, 1, 5, 5, Status.MADE)
    purchases = tuple(bought(0, 40, 40_00, one.slug) for one in SUPPLIES)
    return work_out(
        Archive((made, cut_now), SUPPLIES, purchases, (), (Series("tides", "Tides", ""),)), SETTINGS
    )


@pytest.fixture(scope="module")
def figures() -> Figures:
    """Twelve are cut, none is finished."""
    return worked(cards(2, 2, 0, 12, Status.CUT))


@pytest.fixture(scope="module")
def shown(figures: Figures) -> BatchPage:
    """The page of the batch that is cut."""
    return batch_page(figures.batches["day-2"], figures, {}, "")


def test_it_says_how_many_are_cut(shown: BatchPage) -> None:
    """Nothing could have been given more: none is finished, and twelve are all that the sheets hold."""
    assert said(shown.sentence) == "12 cards cut from 2 sheets of card."
    assert (
        shown.paper == "12 is the most these sheets can give: each sheet of card gives at most 6 of base A."
    )


def test_its_cost_is_that_of_its_sheets(shown: BatchPage) -> None:
    """Two sheets at a euro each; no tape, no ink, and no cost of one."""
    assert [(row.supply.text, row.batch) for row in shown.cost.rows] == [("card", "2.00")]
    assert (shown.cost.total_label, shown.cost.total_batch, shown.cost.total_one) == (
        "12 cards cut",
        "2.00",
        "",
    )
    assert shown.cost.notes == ()
    html = render(shown)
    assert ("Cost of one" in html, "One, €" in html) == (False, False)


def test_its_paper_is_not_waste(figures: Figures) -> None:
    """Where it goes is known once the cards are finished; on the first page it counts nowhere before."""
    assert figures.batches["day-2"].paper is None
    supplies = {one.slug: one for one in SUPPLIES}
    assert figures_json(figures.batches["day-2"], supplies, {}, SETTINGS)["paper"] is None
    # Five cards of 9,000 mm² out of 60,000.
    assert said(home_page(figures, {}).sentence) == (
        "5 pieces since January 2026 from 1 sheet. Of all the paper cut, 75\u00a0% is in finished pieces."
    ).replace("\u00a0", " ")


def test_in_its_series_it_stands_as_cut(figures: Figures) -> None:
    """Its sheets and their cost are told, and it is not held against what they could have given."""
    page = series_page(figures.archive.series[0], figures, {})
    assert said(page.sentence) == "5 pieces in 1 batch, and 1 cut; made from 1 sheet."
    rows = [(row.makes, row.sheets, row.could_have, row.cost, row.one) for row in (*page.rows, page.total)]
    assert rows == [
        ("5", "1", "6", "11.00", "2.20"),
        ("cut", "2", "", "2.00", ""),
        ("5", "3", "6", "13.00", ""),
    ]


def test_what_has_an_amount_of_its_own_is_used_at_once() -> None:
    """Three of the tape in all went into the jig."""
    jig = replace(cards(2, 2, 0, 12, Status.CUT), uses=(Use("tape", Fraction(3)),))
    lines = worked(jig).batches["day-2"].used
    assert [(one.supply, one.taken[0].quantity) for one in lines] == [
        ("card", Fraction(2)),
        ("tape", Fraction(3)),
    ]


def test_with_the_first_one_finished_it_is_read_as_made() -> None:
    """Seven of twelve: the other five are not there."""
    figures = worked(cards(2, 2, 7, 12, Status.CUT))
    page = batch_page(figures.batches["day-2"], figures, {}, "")
    assert said(page.sentence).startswith("7 cards from 2 sheets of card; these sheets could have given 12.")
