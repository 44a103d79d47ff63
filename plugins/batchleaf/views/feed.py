"""The newest batches for a reader of feeds: what was made, with one sentence each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views import site_map
from batchleaf.views.masthead import Masthead
from batchleaf.views.pages import text_of
from batchleaf.views.sentence import batch_sentence

NEWEST: Final = 20
"""So many batches are in the feed; a reader keeps what it has seen before."""


@dataclass(frozen=True, slots=True)
class FeedEntry:
    """A batch; ``address`` is its page's on the web, ``day`` its date as ``2026-03-14``."""

    title: str
    address: str
    day: str
    sentence: str


@dataclass(frozen=True, slots=True)
class Feed:
    """An Atom feed; ``own`` is its address, ``day`` that of its newest entry."""

    title: str
    author: str
    address: str
    own: str
    day: str
    entries: tuple[FeedEntry, ...]


def feed(figures: Figures, masthead: Masthead) -> Feed | None:
    """The feed of an archive that has an address and has made something."""
    made = [batch for batch in figures.batches.values() if batch.made]
    if not made or not masthead.address:
        return None
    entries = tuple(_entry(batch, figures, masthead) for batch in reversed(made[-NEWEST:]))
    return Feed(
        title=masthead.name,
        author=masthead.author or masthead.name,
        address=masthead.address,
        own=f"{masthead.address}{site_map.FEED}",
        day=entries[0].day,
        entries=entries,
    )


def _entry(batch: BatchFigures, figures: Figures, masthead: Masthead) -> FeedEntry:
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    return FeedEntry(
        title=batch.project.title,
        address=f"{masthead.address}{site_map.batch(batch.project.slug)}",
        day=batch.project.date.isoformat(),
        sentence=text_of(batch_sentence(batch, supplies, figures.settings.currency)),
    )
