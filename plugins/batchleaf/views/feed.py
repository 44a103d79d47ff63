"""The newest batches for a reader of feeds: what was made, with one sentence each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.measure.licences import Licence
from batchleaf.views import site_map
from batchleaf.views.masthead import Masthead
from batchleaf.views.pages import text_of
from batchleaf.views.sentence import batch_sentence

NEWEST: Final = 20
"""So many batches are in a feed; a reader keeps what it has seen before."""


@dataclass(frozen=True, slots=True)
class FeedEntry:
    """A batch; ``address`` is its page's on the web, ``day`` its date as ``2026-03-14``."""

    title: str
    address: str
    day: str
    sentence: str


@dataclass(frozen=True, slots=True)
class Feed:
    """An Atom feed; ``address`` is that of the page it goes with, ``own`` its own, ``place`` that below
    the site's root; ``day`` that of its newest entry.
    """

    title: str
    author: str
    address: str
    own: str
    place: str
    day: str
    entries: tuple[FeedEntry, ...]
    licence: Licence | None = None


def feeds(figures: Figures, masthead: Masthead) -> Iterator[Feed]:
    """Those of an archive that has an address: of all batches, and of each series that has made something."""
    newest = feed(figures, masthead)
    if newest is None:
        return
    yield newest
    for series in figures.archive.series:
        title = f"{series.title} · {masthead.name}"
        batches, page = figures.in_series(series.slug), site_map.series(series.slug)
        if made := [batch for batch in batches if batch.made]:
            yield _feed(title, page, made, figures, masthead)


def feed(figures: Figures, masthead: Masthead) -> Feed | None:
    """The feed of an archive that has an address and has made something."""
    made = [batch for batch in figures.batches.values() if batch.made]
    if not made or not masthead.address:
        return None
    return _feed(masthead.name, site_map.HOME, made, figures, masthead)


def _feed(title: str, page: str, made: Sequence[BatchFigures], figures: Figures, masthead: Masthead) -> Feed:
    entries = tuple(_entry(batch, figures, masthead) for batch in reversed(made[-NEWEST:]))
    place = f"{page}{site_map.FEED}"
    return Feed(
        title=title,
        author=masthead.author or masthead.name,
        address=f"{masthead.address}{page}",
        own=f"{masthead.address}{place}",
        place=place,
        day=entries[0].day,
        entries=entries,
        licence=masthead.licence,
    )


def _entry(batch: BatchFigures, figures: Figures, masthead: Masthead) -> FeedEntry:
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    return FeedEntry(
        title=batch.project.title,
        address=f"{masthead.address}{site_map.batch(batch.project.slug)}",
        day=batch.project.date.isoformat(),
        sentence=text_of(batch_sentence(batch, supplies, figures.settings.currency)),
    )
