"""The series: ``projects/series.yml``."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.facts import Series
from batchleaf.records.nodes import Node, key_place
from batchleaf.records.written import SeriesFileWritten


def series_of(written: SeriesFileWritten, node: Node) -> Iterator[Series]:
    """Each series of the file."""
    for slug, one in written.series.items():
        yield Series(slug, one.title, one.about or "", key_place(node, ("series", slug)))
