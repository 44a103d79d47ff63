"""What is said beside a plan: to measure a sheet of which all is used, and how to hold a strip."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.bench_limits import REMEDY, Tools
from batchleaf.core.dealing import Supplies
from batchleaf.core.figures import BatchFigures, work_out
from batchleaf.facts import Archive, Settings, Tool
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.plan import ToldPlan, plans_to_show, told_plans
from core.drawers import batch, cut, part, size, supply

SETTINGS = Settings(Unit.MM, Currency.of("EUR"))


def _told(figures: BatchFigures, supplies: Supplies, tools: Tools) -> tuple[ToldPlan, ...]:
    plans = plans_to_show(figures.project, figures.cutting, supplies)
    return told_plans(plans, figures.project, supplies, tools)


@pytest.mark.parametrize(
    ("measures", "said"),
    [
        ((150, 100), "Measure the sheet first: all of it is used."),
        ((150, 90), "Measure the sheet first: its whole width is used."),
        ((140, 100), "Measure the sheet first: its whole height is used."),
        ((140, 90), ""),
    ],
)
def test_where_nothing_is_to_spare(measures: tuple[int, int], said: str) -> None:
    """Four parts from a sheet of 300 by 200 that reach its far edges, one of them, or none."""
    one = batch(1, cut=(cut(1),), slug="cards", finished=4)
    cards = replace(one, parts=(replace(part("A", *measures, "card"), turns=False),), begun=4)
    card = supply("card", size=size(300, 200))
    figures = work_out(Archive((cards,), (card,), (), (), ()), SETTINGS)
    (plan,) = _told(figures.batches["cards"], {"card": card}, {})
    assert plan.remark == said


def test_a_strip_that_the_trimmer_does_not_hold() -> None:
    """Beside the plan stands what is usually done about it; not where every trimmer's limit is unknown."""
    trimmer = Tool("small", "the small trimmer", "trimmer", Unit.MM, narrowest_strip=Fraction(25))
    one = replace(batch(1, cut=(cut(1),), slug="cards", finished=4), tools=("small",))
    cards = replace(one, parts=(part("A", 20, 90, "card"),), begun=4)
    card = supply("card", size=size(300, 200))
    figures = work_out(Archive((cards,), (card,), (), (), (), tools=(trimmer,)), SETTINGS)
    for tool, said in (
        (trimmer, f"A is narrower than the 25\u00a0mm that the trimmer holds: {REMEDY}."),
        (replace(trimmer, narrowest_strip=None), ""),
    ):
        (plan,) = _told(figures.batches["cards"], {"card": card}, {"small": tool})
        assert plan.remark == said


def test_what_comes_before_a_cut_stands_before_it() -> None:
    """At the cuts that part a strip from its piece: an edge is punched while there is something to hold."""
    first = replace(part("A", 20, 190, "card"), before="punch one edge.")
    one = replace(batch(1, cut=(cut(1),), slug="tags", finished=4), parts=(first,), begun=4)
    card = supply("card", size=size(300, 200))
    figures = work_out(Archive((one,), (card,), (), (), ()), SETTINGS)
    (plan,) = _told(figures.batches["tags"], {"card": card}, {})
    told = [(row.setting, row.before) for row in plan.settings]
    assert ("20", "First, for A: punch one edge.") in told
    assert [before for setting, before in told if setting != "20"] == [""] * (len(told) - 1)
