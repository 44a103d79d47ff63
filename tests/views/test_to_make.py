"""What is to be made, and how a series went."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.figures import Figures, work_out
from batchleaf.facts import Opening, Series, Settings, Status
from batchleaf.measure.lengths import Unit
from batchleaf.measure.money import Currency
from batchleaf.views.drawing.charts.trend import draw_trend
from batchleaf.views.drawing.shapes import Stroke
from batchleaf.views.pages import text_of
from batchleaf.views.to_make import to_make_page
from batchleaf.views.trends import trends
from core.drawers import archive, batch_of, bought, day, part, supply

EUR = Currency.of("EUR")
SETTINGS = Settings(Unit.MM, EUR)
CARD = supply(opening=Opening(day(0), Fraction(3), 300))
SQUARES = batch_of(part("A", 50, 50, "card"), makes=4, cuts=(("card", 1),))
PLANNED = replace(
    batch_of(part("A", 90, 90, "card"), makes=3, planned=True),
    slug="planned",
    finished=0,
    date=day(40),
    occasions=("birthday", "new home"),
)
WINTER = Series("winter", "Winter", "")
IDEA = replace(PLANNED, slug="idea", title="An idea", status=Status.IDEA, date=day(20), occasions=())


def figures() -> Figures:
    """Of three sheets one is cut, three are needed."""
    return work_out(archive(SQUARES, PLANNED, IDEA, supplies=(CARD,)), SETTINGS)


def test_what_is_planned_stands_there_with_its_day_and_what_is_lacking() -> None:
    """The nearest day first; what is made is gone; an idea asks for nothing."""
    page = to_make_page(figures())
    said = [
        (row.batch.text, row.date_iso, row.occasion, row.makes, text_of(row.lacking)) for row in page.rows
    ]
    assert [tuple(text.replace("\u00a0", " ") for text in row) for row in said] == [
        ("An idea", day(20).isoformat(), "", "3 cards, an idea", ""),
        ("Batch 1", day(40).isoformat(), "birthday, new home", "3 cards", "card"),
    ]
    assert text_of(page.sentence) == "One planned and one an idea so far."
    assert page.rows[1].needs.replace("\u00a0", " ") == "3 sheets of card"


def test_how_a_series_went_needs_two_figures() -> None:
    """What one cost: 25 and 50; of the paper all is in the squares, and half in the others."""
    later = replace(SQUARES, slug="later", finished=2, date=day(9))
    worked = work_out(archive(SQUARES, later, bought(0, 10, 1000), supplies=(supply(),)), SETTINGS)
    cost, paper = trends(tuple(worked.batches.values()), EUR, WINTER)
    assert (cost.first, cost.last) == ("0.25\u00a0€", "0.50\u00a0€")
    assert (paper.first, paper.last) == ("100\u00a0%", "50\u00a0%")
    assert cost.drawing.description == "0.25\u00a0€ and 0.50\u00a0€."
    assert trends(tuple(worked.batches.values())[:1], EUR, WINTER) == ()


def test_a_line_stands_over_nothing() -> None:
    """Half of the highest is half as high; the base is the axis."""
    drawing = draw_trend([Fraction(1), Fraction(2), Fraction(0)], id="a", title="t", description="d")
    base, line, _ = (shape for shape in drawing.shapes if isinstance(shape, Stroke))
    (_, first, _, top), (_, _, _, last) = line.lines
    assert base.lines[0][1] == last == 0
    assert first == pytest.approx(top / 2)
