"""Where finished makes are: the section of a batch, and the page of all of them."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class WentRow:
    """Makes that went one way; ``letter`` names their group in the drawing.

    ``words`` is what the maker says of it, ``one`` and ``value`` what was paid for one and for all.
    """

    letter: str
    where: str
    words: str
    date: str
    date_iso: str
    count: str
    one: str
    value: str


@dataclass(frozen=True, slots=True)
class WentView:
    """Where all finished makes of a batch are. ``currency`` is empty where none was sold."""

    drawing: Drawing
    caption: str
    currency: str
    rows: tuple[WentRow, ...]
    total_label: str
    total_count: str
    total_value: str
    all_of_them: Link
    csv: Link | None = None


@dataclass(frozen=True, slots=True)
class FinishedRow:
    """One batch, or all: how many makes went each way. Counts of none are empty."""

    batch: Link
    finished: str
    ways: tuple[str, ...]
    not_told: str
    brought: str


@dataclass(frozen=True, slots=True)
class FinishedPage:
    """All batches with finished makes; ``ways`` heads the columns of :attr:`FinishedRow.ways`."""

    title: str
    sentence: Line
    ways: tuple[str, ...]
    currency: str
    rows: tuple[FinishedRow, ...]
    total: FinishedRow
    note: Line
    csv: Link | None = None
