"""All that is made of one batch, its pages and the files beside them, from what they look at alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from batchleaf.core.batch_cutting import Planner
from batchleaf.core.figures import BatchFigures, Figures, in_full
from batchleaf.core.remembered import Remembering
from batchleaf.core.sheets_needed import Counting
from batchleaf.facts import Companion
from batchleaf.render.html import render
from batchleaf.render.notes import notes_html
from batchleaf.render.prose import prose_html
from batchleaf.views import site_map
from batchleaf.views.masthead import Masthead
from batchleaf.views.near import near
from batchleaf.views.notes.sheet import hand_out_sheets, has_notes, notes_sheets
from batchleaf.views.outward import Outward
from batchleaf.views.pages import BatchPage, MovedPage, NotesSheet, OtherSheetsPage
from batchleaf.views.pictures import Prepared
from batchleaf.views.site import PlacedData, PlacedPage, data_of_batch, pages_of_batch
from batchleaf.views.video_text import VideoText

Text = str | Path
"""What a file says, or a file that says it."""


def said(text: Text) -> str:
    """What it says."""
    return text if isinstance(text, str) else text.read_bytes().decode()


@dataclass(frozen=True, slots=True)
class MadePage:
    """A page with its ``body``; ``meta``: what its frame and the search are told besides."""

    address: str
    title: str
    section: str
    description: str
    meta: dict[str, object]
    body: Text


@dataclass(frozen=True, slots=True)
class MadeFile:
    """A file of data at its address."""

    address: str
    text: Text


@dataclass(frozen=True, slots=True)
class MadeBatch:
    """Pages and files, in the order in which a site has them."""

    pages: tuple[MadePage, ...]
    files: tuple[MadeFile, ...]


@dataclass(frozen=True, slots=True)
class ToMake:
    """A batch, and all that its pages look at; ``hand_out``: the batch as those know it who get its notes."""

    batch: BatchFigures
    around: Figures
    hand_out: BatchFigures | None
    around_hand_out: Figures | None
    prepared: Prepared
    masthead: Masthead
    video: VideoText | None
    is_one_of_several: bool

    @property
    def told(self) -> str:
        """All of it as text: what is made of equal texts is equal.

        Where a fact stands in its file is no part of it (``repr=False``), since no page tells it.
        """
        return repr(self)


FOUND_FIRST: Final = 2000
"""A word anywhere on a batch's page counts twice as much as one in another page's title (1000)."""


def made_page(placed: PlacedPage) -> MadePage:
    """A page model to its body."""
    page = placed.page
    meta: dict[str, object] = {}
    match page:
        case BatchPage():
            meta["search"] = {"boost": FOUND_FIRST}
        case MovedPage():
            meta |= {"moved": page.href, "search": {"exclude": True}}
        case OtherSheetsPage():
            # Its words are those of the batch, which is found.
            meta["search"] = {"exclude": True}
    return MadePage(placed.address, placed.title, placed.section, placed.description, meta, render(page))


def to_make(
    batch: BatchFigures,
    figures: Figures,
    hand_outs: Figures | None,
    prepared: Prepared,
    masthead: Masthead,
    video: VideoText | None,
) -> ToMake:
    """What is made of ``batch``, apart from all other batches."""
    hand_out = hand_outs.batches.get(batch.project.slug) if hand_outs else None
    return ToMake(
        batch=batch,
        around=near(batch, figures),
        hand_out=hand_out,
        around_hand_out=near(hand_out, hand_outs) if hand_outs and hand_out else None,
        prepared={photo.path: prepared[photo.path] for photo in batch.project.photos},
        masthead=masthead,
        video=video,
        is_one_of_several=len(figures.batches) > 1,
    )


def made_batch(asked: ToMake, planner: Planner, count: Counting, remembered: Remembering) -> MadeBatch:
    """Its pages and files."""
    batch, figures = _in_full(asked.batch, asked.around, planner, count)
    videos = {batch.project.slug: asked.video} if asked.video else {}
    out = Outward(asked.masthead, videos)
    pages = pages_of_batch(batch, figures, asked.prepared, prose_html, out, remembered)
    files = data_of_batch(batch, figures, is_one_of_several=asked.is_one_of_several)
    return MadeBatch(
        tuple(map(made_page, pages)),
        tuple(
            MadeFile(one.address, one.text)
            for one in (*files, *_video(asked), *_notes(batch, figures, asked, remembered))
        ),
    )


def _in_full(
    batch: BatchFigures, figures: Figures, planner: Planner, count: Counting
) -> tuple[BatchFigures, Figures]:
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    full = in_full(batch, supplies, figures.settings.other_sheets, planner, count)
    return full, replace(figures, batches={**figures.batches, batch.project.slug: full})


def _video(asked: ToMake) -> Iterator[PlacedData]:
    if asked.video:
        page = site_map.batch(asked.batch.project.slug)
        yield PlacedData(f"{page}{site_map.VIDEO}", asked.video.text)


def _notes(
    batch: BatchFigures, figures: Figures, asked: ToMake, remembered: Remembering
) -> Iterator[PlacedData]:
    """Whole pages of their own, so that the frame of the site, its search and its map know none of them."""
    if batch.project.companion is Companion.PUBLIC and has_notes(batch.project):
        yield from map(_sheet, notes_sheets(batch, figures, asked.masthead, remembered))
    given, around = asked.hand_out, asked.around_hand_out
    if given and around and has_notes(given.project):
        yield from map(_sheet, hand_out_sheets(given, around, asked.masthead, remembered))


def _sheet(placed: tuple[str, NotesSheet]) -> PlacedData:
    address, sheet = placed
    return PlacedData(f"{address}index.html", notes_html(sheet))
