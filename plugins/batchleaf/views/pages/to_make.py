"""The list of what is to be made."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class ToMakeRow:
    """One batch to come; ``lacking``: of what the drawer has too little, nothing where it is not told."""

    batch: Link
    date: str
    date_iso: str
    occasion: str
    makes: str
    needs: str
    lacking: Line


@dataclass(frozen=True, slots=True)
class ToMakePage:
    """All of them, the nearest day first."""

    title: str
    sentence: Line
    rows: tuple[ToMakeRow, ...]
    csv: Link | None
