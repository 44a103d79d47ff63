"""The table of a batch's bench work, work by work in order."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.core.bench.work import Done, InHand
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views import site_map
from batchleaf.views.tables.table import Column, Table, tabled


@dataclass(frozen=True, slots=True)
class _PileOfWork:
    """One pile of one work, which is the ``number``-th."""

    number: int
    done: Done
    one: InHand


def bench_table(batch: BatchFigures, figures: Figures) -> Table:
    """A row for each work and pile; what is waited for stands in the first row of a work alone."""
    tools = {tool.slug: tool.name for tool in figures.archive.tools}
    columns: list[Column[_PileOfWork]] = [
        ("work", lambda row: row.number),
        ("what", lambda row: row.done.work.kind.value),
        ("letter", lambda row: row.one.pile.letter),
        ("tool", lambda row: tools.get(row.done.work.tool)),
        ("worked in", lambda row: row.done.work.supply or None),
        ("when", lambda row: row.done.work.moment.value),
        ("supplies", lambda row: ", ".join(row.one.pile.papers)),
        ("of", lambda row: "sheets" if row.one.pile.sheets else "pieces"),
        ("count", lambda row: row.one.pile.count),
        ("at once", lambda row: row.one.at_once),
        ("strokes", lambda row: row.one.strokes),
        (
            "wait in minutes",
            lambda row: row.done.work.wait.minutes if row.done.work.wait and _leads(row) else None,
        ),
    ]
    address = f"{site_map.batch(batch.project.slug)}bench.csv"
    return tabled(address, "Bench work", columns, _piles(batch))


def _piles(batch: BatchFigures) -> Iterator[_PileOfWork]:
    for number, done in enumerate(batch.bench.works if batch.bench else (), 1):
        for one in done.piles:
            yield _PileOfWork(number, done, one)


def _leads(row: _PileOfWork) -> bool:
    return row.one is row.done.piles[0]
