"""How a series went: what one cost, and how much of the paper is in finished makes, from batch to batch."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Series
from batchleaf.measure.display import NBSP
from batchleaf.measure.money import Currency
from batchleaf.views.drawing.charts.trend import draw_trend
from batchleaf.views.pages.series import TrendView
from batchleaf.views.words import listed, uncapitalised


def trends(batches: Sequence[BatchFigures], currency: Currency, series: Series) -> tuple[TrendView, ...]:
    """Those of which two batches or more tell a figure."""
    return tuple(_trends(batches, currency, series))


def _trends(batches: Sequence[BatchFigures], currency: Currency, series: Series) -> Iterator[TrendView]:
    made = [batch for batch in batches if batch.made]
    costs = [
        (Fraction(batch.one), currency.show_with_sign(batch.one)) for batch in made if batch.one is not None
    ]
    if len(costs) > 1:
        yield _trend("One cost", costs, series, "cost")
    papers = [batch.paper for batch in made if batch.paper and batch.paper.cut]
    shares = [paper.used / paper.cut for paper in papers]
    told = [(share, f"{round(share * 100)}{NBSP}%") for share in shares]
    if len(told) > 1:
        yield _trend("Of the paper in finished makes", told, series, "paper")


def _trend(head: str, told: Sequence[tuple[Fraction, str]], series: Series, what: str) -> TrendView:
    words = [text for _, text in told]
    return TrendView(
        head=head,
        first=words[0],
        last=words[-1],
        drawing=draw_trend(
            [value for value, _ in told],
            id=f"{series.slug}-{what}",
            title=f"{series.title}: {uncapitalised(head)}, from batch to batch",
            description=f"{listed(words)}.",
        ),
    )
