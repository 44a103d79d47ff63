"""The tables of the site that there is a file of."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.years import has_years
from batchleaf.views.buying import buy_table
from batchleaf.views.more import tells_prices, tells_today, tells_where
from batchleaf.views.offcuts import offcuts_table
from batchleaf.views.tables.batch import cuts_table, parts_table, supplies_table
from batchleaf.views.tables.batches import batches_table, series_table
from batchleaf.views.tables.bench_work import bench_table
from batchleaf.views.tables.collating import collating_table
from batchleaf.views.tables.drawer import drawer_table, movements_table
from batchleaf.views.tables.finished import finished_table, prices_table, sold_table, went_table
from batchleaf.views.tables.for_makes import for_makes_table
from batchleaf.views.tables.table import Table
from batchleaf.views.tables.to_make import to_make_table
from batchleaf.views.tables.today import today_table
from batchleaf.views.tables.years import bought_table, months_table


def tables_of_batch(batch: BatchFigures, figures: Figures) -> Iterator[Table]:
    """The tables of the pages of a batch that have rows."""
    tables = (
        parts_table(batch, figures),
        cuts_table(batch, figures),
        bench_table(batch, figures),
        collating_table(batch, figures),
        supplies_table(batch, figures),
        for_makes_table(batch, figures),
        went_table(batch, figures.settings.currency),
    )
    return (table for table in tables if table.rows)


def tables_of_all(figures: Figures) -> Iterator[Table]:
    """The tables of all other pages that have rows."""
    return (table for table in _tables(figures) if table.rows)


def _tables(figures: Figures) -> Iterator[Table]:
    yield batches_table(figures)
    for series in figures.archive.series:
        yield series_table(series, figures)
    if tells_where(figures):
        yield finished_table(figures)
    if tells_prices(figures):
        yield prices_table(figures)
        yield sold_table(figures)
    named = [supply for supply in figures.archive.supplies if supply.named]
    if named:
        yield drawer_table(figures)
    if has_years(figures):
        yield months_table(figures)
    yield to_make_table(figures)
    if tells_today(figures):
        yield today_table(figures)
    if figures.ledger:
        for supply in named:
            yield movements_table(supply, figures, figures.ledger)
            yield bought_table(supply, figures)
        yield buy_table(figures, figures.ledger)
        yield offcuts_table(figures, figures.ledger)
