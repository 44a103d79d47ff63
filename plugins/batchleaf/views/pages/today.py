"""The page of what the drawer gives today."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class TodayRow:
    """One batch: how many more, what is used up first, what it takes to begin as many again."""

    batch: Link
    makes: str
    first_out: Line
    again_head: str
    again: Line
    ready: str


@dataclass(frozen=True, slots=True)
class TodayPage:
    """Every batch of which something is known."""

    title: str
    sentence: Line
    rows: tuple[TodayRow, ...]
    notes: tuple[str, ...]
    how: Link
    csv: Link | None
