"""Several batches side by side: what differs, and what is the same of all."""

from __future__ import annotations

from collections.abc import Sequence

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views import site_map
from batchleaf.views.compare.told import told_of
from batchleaf.views.pages import ComparedBatch, CompareView, Link
from batchleaf.views.words import long_date


def compared(batches: Sequence[BatchFigures], figures: Figures, here: str) -> CompareView:
    """In the order of the batches; heads in the order in which they are first told."""
    told = [dict(told_of(batch, figures)) for batch in batches]
    heads = in_one_order([list(one) for one in told])
    texts = {head: tuple(one.get(head, "") for one in told) for head in heads}
    return CompareView(
        batches=tuple(_head(batch, here) for batch in batches),
        differs=tuple((head, of_each) for head, of_each in texts.items() if len(set(of_each)) > 1),
        alike=tuple((head, of_each[0]) for head, of_each in texts.items() if len(set(of_each)) == 1),
    )


def in_one_order(lists: Sequence[Sequence[str]]) -> tuple[str, ...]:
    """Every head once; what one list has besides stands behind what it follows there, and last among that."""
    order: list[str] = []
    for heads in lists:
        at = 0
        for head in heads:
            if head not in order:
                at += next((n for n, other in enumerate(order[at:]) if other in heads), len(order) - at)
                order.insert(at, head)
            at = order.index(head) + 1
    return tuple(order)


def _head(batch: BatchFigures, here: str) -> ComparedBatch:
    project = batch.project
    return ComparedBatch(
        batch=Link(project.title, site_map.href(here, site_map.batch(project.slug))),
        date=long_date(project.date),
        date_iso=project.date.isoformat(),
    )
