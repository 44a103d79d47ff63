"""The index of series, and the page of one."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.gallery import ComingEntry, GalleryEntry
from batchleaf.views.pages.pieces import Line, Link, Picture


@dataclass(frozen=True, slots=True)
class TrendView:
    """A small line with the figures at its ends."""

    head: str
    first: str
    last: str
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class SeriesRow:
    """One series in the index of series; ``totals``: what its batches took and cost together."""

    series: Link
    line: str
    about: str
    picture: Picture | None
    totals: str = ""
    trends: tuple[TrendView, ...] = ()


@dataclass(frozen=True, slots=True)
class SeriesIndexPage:
    """All series."""

    title: str
    sentence: Line
    rows: tuple[SeriesRow, ...]


@dataclass(frozen=True, slots=True)
class SeriesBatchRow:
    """One batch in a series' table."""

    ordinal: str
    batch: Link
    date: str
    date_iso: str
    makes: str
    sheets: str
    could_have: str
    cost: str
    one: str


@dataclass(frozen=True, slots=True)
class SeriesPage:
    """One series in order, with totals."""

    title: str
    sentence: Line
    about: str
    currency: str
    entries: tuple[GalleryEntry, ...]
    to_come: tuple[ComingEntry, ...]
    rows: tuple[SeriesBatchRow, ...]
    total: SeriesBatchRow
    csv: Link | None = None
