"""Sheets are seldom as large as they are called: what is said where a plan leaves nothing to spare."""

from __future__ import annotations

from dataclasses import replace

import pytest

from batchleaf.core.figures import work_out
from batchleaf.facts import Archive, Settings
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.plan import plan_views
from core.drawers import batch, cut, part, size, supply


@pytest.mark.parametrize(
    ("measures", "said"),
    [
        ((150, 100), "Measure the sheet first: nothing is to spare either way."),
        ((150, 90), "Measure the sheet first: nothing is to spare across."),
        ((140, 100), "Measure the sheet first: nothing is to spare down."),
        ((140, 90), ""),
    ],
)
def test_where_nothing_is_to_spare(measures: tuple[int, int], said: str) -> None:
    """Four parts from a sheet of 300 by 200 that reach its far edges, one of them, or none."""
    one = batch(1, cut=(cut(1),), slug="cards", finished=4)
    cards = replace(one, parts=(replace(part("A", *measures, "card"), turns=False),), begun=4)
    card = supply("card", size=size(300, 200))
    figures = work_out(Archive((cards,), (card,), (), (), ()), Settings(Unit.MM, Currency.of("EUR")))
    (plan,) = plan_views(figures.batches["cards"], {"card": card})
    assert plan.remark == said
