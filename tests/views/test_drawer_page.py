"""The index of the drawer, where a supply is in many batches."""

from __future__ import annotations

from dataclasses import replace

import pytest

from batchleaf.core.figures import work_out
from batchleaf.facts import Archive, Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.drawer import drawer_page
from core.drawers import batch, cut, supply


@pytest.mark.parametrize(
    ("many", "named"), [(3, ["day 3", "day 2", "day 1"]), (5, ["day 5", "day 4", "3 more"])]
)
def test_of_many_batches_the_newest_are_named(many: int, named: list[str]) -> None:
    """Three are named; of more the two newest, and how many others the supply's own page shows."""
    days = (batch(day, cut=(cut(1),), slug=f"day-{day}") for day in range(1, many + 1))
    titled = tuple(replace(one, title=one.slug.replace("-", " ")) for one in days)
    figures = work_out(Archive(titled, (supply(),), (), (), ()), Settings(Unit.MM, Currency.of("EUR")))
    assert figures.ledger is not None
    (shelf,) = drawer_page(figures, figures.ledger).shelves
    assert [link.text for link in shelf.rows[0].used_in] == named
    assert shelf.rows[0].used_in[-1].href == ("card/#went" if many > 3 else "../projects/day-1/")
