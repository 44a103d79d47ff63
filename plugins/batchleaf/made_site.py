"""A whole site, made: pages with their bodies, data and photos, ready to be handed over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain

from batchleaf.core.figures import Figures
from batchleaf.facts import Problem, Project
from batchleaf.kept_batches import Making, made_batches, making
from batchleaf.made_batch import MadeFile, MadePage, made_page, to_make
from batchleaf.render.at_the_table import table_files
from batchleaf.render.feed import feed_xml
from batchleaf.render.look import Look
from batchleaf.render.photos import PhotoFile, ReadyPhotos, prepare
from batchleaf.render.social import SIZE, SocialPicture, social_pictures
from batchleaf.store import Store
from batchleaf.views import site_map
from batchleaf.views.at_the_table import table_page
from batchleaf.views.feed import feeds
from batchleaf.views.masthead import Masthead
from batchleaf.views.more import MorePage, more_of
from batchleaf.views.problems import problems_page
from batchleaf.views.shared import shared_pictures
from batchleaf.views.site import (
    SECTIONS,
    PlacedPage,
    Section,
    data_of_all,
    pages_of_all,
    sections_of,
)
from batchleaf.views.video_text import NO_VIDEOS, Videos


@dataclass(frozen=True, slots=True)
class MadeSite:
    """``sections``: the words of the header; ``more``: where the foot of each page leads besides.

    ``social``: address of a page → its picture for those who pass the address on; ``photos``
    holds its file too.
    """

    pages: tuple[MadePage, ...]
    data: tuple[MadeFile, ...]
    photos: tuple[PhotoFile, ...]
    sections: tuple[Section, ...]
    more: tuple[MorePage, ...]
    social: Mapping[str, SocialPicture]


NOTHING_MADE = MadeSite((), (), (), (), (), {})


def made_site(
    figures: Figures,
    masthead: Masthead,
    look: Look,
    store: Store,
    hand_outs: Figures | None = None,
    videos: Videos = NO_VIDEOS,
    how: Making | None = None,
) -> tuple[MadeSite, tuple[Problem, ...]]:
    """The site of an archive, and the pictures that could not be read.

    ``hand_outs``: the batches whose notes are handed out, as those who get them may know them.
    ``videos``: the texts for videos. ``how``: what batches are made with, where it is not new.

    What names pages by their whole address, the feeds and the pictures that are passed on, is made
    where the site has an address.
    """
    ready = prepared_photos(figures.archive.projects, store)
    if ready.problems:
        return NOTHING_MADE, ready.problems
    asked = (
        to_make(batch, figures, hand_outs, ready.prepared, masthead, videos.get(slug))
        for slug, batch in figures.batches.items()
    )
    batches = list(made_batches(asked, store, how or making(store)))
    first, *others = map(made_page, pages_of_all(figures, ready.prepared))
    shared = shared_pictures(figures) if masthead.address else {}
    social = social_pictures(shared, ready, look, store)
    feeds_made = tuple(_feeds(figures, masthead))
    pages = (first, *chain.from_iterable(one.pages for one in batches), *others)
    data = (
        *chain.from_iterable(one.files for one in batches),
        *(MadeFile(one.address, one.text) for one in data_of_all(figures, ready.prepared)),
        *feeds_made,
        *_table(figures, masthead, look),
    )
    photos = dict.fromkeys((*ready.files, *(one.file for one in social.values())))
    sections, more = sections_of(figures), more_of(figures)
    return MadeSite(_framed(pages, social, feeds_made), data, tuple(photos), sections, more, social), ()


def _feeds(figures: Figures, masthead: Masthead) -> Iterator[MadeFile]:
    for one in feeds(figures, masthead):
        yield MadeFile(one.place, feed_xml(one))


def _framed(
    pages: Sequence[MadePage], social: Mapping[str, SocialPicture], fed: Sequence[MadeFile]
) -> tuple[MadePage, ...]:
    """The pages, whose frames know their pictures for elsewhere and their feeds."""
    places = {one.address for one in fed}
    return tuple(replace(page, meta=_meta(page, social, places)) for page in pages)


def _meta(page: MadePage, social: Mapping[str, SocialPicture], places: set[str]) -> dict[str, object]:
    meta = dict(page.meta)
    if page.address in social:
        picture, (wide, high) = social[page.address], SIZE
        address = f"{site_map.PHOTOS}{picture.file.name}"
        meta["social"] = {"address": address, "width": wide, "height": high, "alt": picture.alt}
    feed = f"{page.address}{site_map.FEED}"
    if page.address and feed in places:
        meta["feed"] = feed
    return meta


def _table(figures: Figures, masthead: Masthead, look: Look) -> Iterator[MadeFile]:
    for address, text in table_files(table_page(figures.settings.unit, masthead), look):
        yield MadeFile(address, text)


def prepared_photos(projects: Sequence[Project], store: Store) -> ReadyPhotos:
    """The photos of all projects, made ready or taken from the store."""
    return prepare([photo for project in projects for photo in project.photos], store)


def problem_site(
    problems: tuple[Problem, ...], slugs: Sequence[str] = (), before: MadeSite = NOTHING_MADE
) -> MadeSite:
    """The problems at every address that somebody may be looking at.

    These are the sections, the batches ``slugs`` and all that the sound site ``before``
    had: a browser that waits there is shown its page again after the repair.
    """
    page = problems_page(problems)
    sections = {address: section for _, address, section in SECTIONS}
    for slug in slugs:
        sections[site_map.batch(slug)] = "batches"
    sections |= {placed.address: placed.section for placed in before.pages}
    pages = tuple(
        made_page(PlacedPage(address, page.title, section, page)) for address, section in sections.items()
    )
    return MadeSite(pages, (), (), SECTIONS, (), {})
