"""Batches as the first page and the series show them."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Box, Cutout, Stroke
from batchleaf.views.pages.pieces import Line, Link, Picture


@dataclass(frozen=True, slots=True)
class GalleryEntry:
    """A batch as the home page and series pages show it.

    ``stand_in``: drawn where there is no picture, the first shape being the frame.
    """

    title: str
    href: str
    picture: Picture | None
    line: str
    date: str
    date_iso: str
    stand_in: tuple[Box | Cutout | Stroke, ...]


@dataclass(frozen=True, slots=True)
class ComingEntry:
    """A batch that is planned, or only an idea: what it needs."""

    batch: Link
    line: str
    date: str
    date_iso: str


@dataclass(frozen=True, slots=True)
class HomePage:
    """The gallery of what was made, newest first; ``to_come``: what is planned, nearest first.

    ``more``: pages that no word of the header leads to.
    """

    title: str
    sentence: Line
    entries: tuple[GalleryEntry, ...]
    series: tuple[Link, ...]
    more: tuple[Link, ...]
    to_come: tuple[ComingEntry, ...]
    csv: Link | None = None
