"""All batches, or those of a series, as a table."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from batchleaf.core.cost import Cost
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Series
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.tables.table import Column, Money, Table, how_far_known, money_known, tabled
from batchleaf.views.unpriced import is_whole

Batches = Sequence[BatchFigures]


def batches_table(figures: Figures) -> Table:
    """All of them, oldest first."""
    return _table(f"{site_map.HOME}batches.csv", tuple(figures.batches.values()), figures)


def series_table(series: Series, figures: Figures) -> Table:
    """Those of one series."""
    address = f"{site_map.series(series.slug)}batches.csv"
    return _table(address, figures.in_series(series.slug), figures)


def _table(address: str, batches: Batches, figures: Figures) -> Table:
    series = {one.slug: one.title for one in figures.archive.series}
    columns: list[Column[BatchFigures]] = [
        ("slug", lambda batch: batch.project.slug),
        ("title", lambda batch: batch.project.title),
        ("date", lambda batch: batch.project.date),
        ("status", lambda batch: batch.project.status.value),
        ("series", lambda batch: series.get(batch.project.series or "", "")),
        ("thing", lambda batch: batch.project.thing),
        ("finished", lambda batch: batch.project.finished),
        ("begun", lambda batch: batch.project.begun),
        ("minutes", lambda batch: batch.project.minutes),
        ("sheets", lambda batch: _taken(batch, scraps=False)),
        ("scraps", lambda batch: _taken(batch, scraps=True)),
        ("could have given", _could_have),
        *_of_cost(batches, figures.settings.currency),
    ]
    return tabled(address, "Batches", columns, batches)


def _taken(batch: BatchFigures, *, scraps: bool) -> int | None:
    cuts = [cut.count for cut in batch.project.cut if bool(cut.scrap) is scraps]
    return sum(cuts) if batch.taken and batch.project.cut else None


def _could_have(batch: BatchFigures) -> int | None:
    most = batch.cutting.most if batch.cutting and batch.made else None
    return most.makes if most else None


def _of_cost(batches: Batches, currency: Currency) -> Iterator[Column[BatchFigures]]:
    """What an edition tells of it."""
    if any(batch.cost for batch in batches):
        yield f"cost in {currency.code}", lambda batch: _whole(batch, currency)
    if any(batch.one is not None for batch in batches):
        yield f"cost of one in {currency.code}", lambda batch: _one(batch, currency)
        yield "price known", _how_far


def _cost(batch: BatchFigures, known: int) -> Cost:
    return Cost(known, is_whole(batch))


def _whole(batch: BatchFigures, currency: Currency) -> Money | None:
    told = batch.cost if batch.taken and batch.cost and batch.cost.counted else None
    return money_known(_cost(batch, told.batch.known), currency) if told else None


def _how_far(batch: BatchFigures) -> str:
    known = batch.cost.batch.known if batch.cost and batch.cost.counted else batch.one
    return how_far_known(_cost(batch, known)) if batch.taken and known is not None else ""


def _one(batch: BatchFigures, currency: Currency) -> Money | None:
    return None if batch.one is None else money_known(_cost(batch, batch.one), currency)
