"""Batches that were found, for a terminal and for programs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from batchleaf.core.figures import BatchFigures
from batchleaf.measure.money import Currency
from batchleaf.views.columns import in_columns
from batchleaf.views.sentence import short_line
from batchleaf.views.words import counted

Json = dict[str, Any]


def find_lines(found: Sequence[BatchFigures], currency: Currency) -> Iterator[str]:
    """``2026-05-16  hawthorn-boxes  8 boxes, 0.53 € each.  6 boxes from the drawer``."""
    if not found:
        yield "No batch is all of this."
    rows = [
        (
            batch.project.date.isoformat(),
            batch.project.slug,
            short_line(batch, currency).replace("\u00a0", " "),
            _from_drawer(batch),
        )
        for batch in found
    ]
    yield from in_columns(rows)


def _from_drawer(batch: BatchFigures) -> str:
    one = batch.from_drawer
    if one is None:
        return ""
    least = "" if one.proved else "at least "
    made = counted(one.makes, batch.project.thing, batch.project.things) if one.makes else "none"
    return f"{least}{made} from the drawer"


def find_json(found: Sequence[BatchFigures], currency: Currency) -> list[Json]:
    """What the lines tell, by name; money as plain text, ``None`` where something is not known."""
    return [
        {
            "slug": batch.project.slug,
            "title": batch.project.title,
            "date": batch.project.date.isoformat(),
            "status": batch.project.status.value,
            "thing": batch.project.thing,
            "finished": batch.project.finished,
            "begun": batch.project.begun,
            "cost_of_one": None if batch.one is None else currency.plain(batch.one),
            "from_the_drawer": batch.from_drawer.makes if batch.from_drawer else None,
        }
        for batch in found
    ]
