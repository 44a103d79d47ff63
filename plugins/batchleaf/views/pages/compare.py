"""Batches side by side: on the page of a design, and wherever a reader puts some of them together."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.gallery import GalleryEntry
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class ComparedBatch:
    """The head of a column."""

    batch: Link
    date: str
    date_iso: str


@dataclass(frozen=True, slots=True)
class CompareView:
    """``differs``: a head, and what is told of each batch in their order; ``alike``: the same of all.

    Where nothing is told of a batch, its text is empty.
    """

    batches: tuple[ComparedBatch, ...]
    differs: tuple[tuple[str, tuple[str, ...]], ...]
    alike: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class DesignPage:
    """A design that stands alone, with the batches that were made to it."""

    title: str
    sentence: Line
    credits: tuple[Line, ...]
    entries: tuple[GalleryEntry, ...]
    compared: CompareView | None


@dataclass(frozen=True, slots=True)
class ComparePage:
    """Where a script lays batches side by side; ``root``: the way to the root of the site."""

    title: str
    sentence: Line
    root: str
