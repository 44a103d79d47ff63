"""The table of what is to be made."""

from __future__ import annotations

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.reserved import needed_sheets
from batchleaf.views import site_map
from batchleaf.views.tables.table import Column, Table, tabled


def to_make(figures: Figures) -> tuple[BatchFigures, ...]:
    """All that is not made yet, the nearest day first."""
    to_come = (batch for batch in figures.batches.values() if not batch.made)
    return tuple(sorted(to_come, key=lambda batch: batch.project.date))


def to_make_table(figures: Figures) -> Table:
    """A row for each batch."""
    columns: list[Column[BatchFigures]] = [
        ("batch", lambda batch: batch.project.slug),
        ("title", lambda batch: batch.project.title),
        ("date", lambda batch: batch.project.date),
        ("status", lambda batch: batch.project.status.value),
        ("occasion", lambda batch: ", ".join(batch.project.occasions)),
        ("makes", lambda batch: batch.project.begun),
        ("thing", lambda batch: batch.project.thing),
        ("sheets", lambda batch: sum(cut.count for cut in needed_sheets(batch) if cut.scrap is None)),
    ]
    return tabled(f"{site_map.TO_MAKE}batches.csv", "To make", columns, to_make(figures))
