"""A whole site, made: pages with their bodies, data and photos, ready to be handed over."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from batchleaf.core.figures import Figures
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import Problem, Project
from batchleaf.render.at_the_table import table_files
from batchleaf.render.feed import feed_xml
from batchleaf.render.html import render
from batchleaf.render.look import Look
from batchleaf.render.notes import notes_html
from batchleaf.render.photos import PhotoFile, ReadyPhotos, prepare
from batchleaf.render.prose import prose_html
from batchleaf.render.social import SocialPicture, social_pictures
from batchleaf.store import Store
from batchleaf.views import site_map
from batchleaf.views.at_the_table import table_page
from batchleaf.views.feed import feeds
from batchleaf.views.masthead import Masthead
from batchleaf.views.more import MorePage, more_of
from batchleaf.views.notes.all_notes import all_notes
from batchleaf.views.outward import Outward
from batchleaf.views.problems import problems_page
from batchleaf.views.shared import shared_pictures
from batchleaf.views.site import SECTIONS, PlacedData, PlacedPage, Section, all_data, all_pages, sections_of
from batchleaf.views.video_text import NO_VIDEOS, Videos


@dataclass(frozen=True, slots=True)
class MadeSite:
    """``bodies``: the Markdown file that stands for a page → the HTML of its body.

    ``sections``: the words of the header; ``more``: where the foot of each page leads besides.
    ``social``: address of a page → its picture for those who pass the address on; ``photos``
    holds its file too.
    """

    pages: tuple[PlacedPage, ...]
    bodies: Mapping[str, str]
    data: tuple[PlacedData, ...]
    photos: tuple[PhotoFile, ...]
    sections: tuple[Section, ...]
    more: tuple[MorePage, ...]
    social: Mapping[str, SocialPicture]


NOTHING_MADE = MadeSite((), {}, (), (), (), (), {})


def made_site(
    figures: Figures,
    masthead: Masthead,
    look: Look,
    store: Store,
    hand_outs: Figures | None = None,
    videos: Videos = NO_VIDEOS,
    remembered: Remembering = afresh,
) -> tuple[MadeSite, tuple[Problem, ...]]:
    """The site of an archive, and the pictures that could not be read.

    ``hand_outs``: the batches whose notes are handed out, as those who get them may know them.
    ``videos``: the texts for videos. ``remembered``: what was made for a site before.

    What names pages by their whole address, the feeds and the pictures that are passed on, is made
    where the site has an address.
    """
    ready = prepared_photos(figures.archive.projects, store)
    if ready.problems:
        return NOTHING_MADE, ready.problems
    pages = tuple(all_pages(figures, ready.prepared, prose_html, Outward(masthead, videos), remembered))
    outward = _going_out(figures, masthead, videos)
    apart = (*_notes(figures, hand_outs, masthead, remembered), *_table(figures, masthead, look))
    data = (*all_data(figures, ready.prepared), *outward, *apart)
    shared = shared_pictures(figures) if masthead.address else {}
    social = social_pictures(shared, ready, look, store)
    photos = dict.fromkeys((*ready.files, *(one.file for one in social.values())))
    sections, more = sections_of(figures), more_of(figures)
    return MadeSite(pages, _bodies(pages), data, tuple(photos), sections, more, social), ()


def _going_out(figures: Figures, masthead: Masthead, videos: Videos) -> Iterator[PlacedData]:
    for one in feeds(figures, masthead):
        yield PlacedData(one.place, feed_xml(one))
    for slug in figures.batches:
        if text := videos.get(slug):
            yield PlacedData(f"{site_map.batch(slug)}{site_map.VIDEO}", text.text)


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
    pages = tuple(PlacedPage(address, page.title, section, page) for address, section in sections.items())
    return MadeSite(pages, _bodies(pages), (), (), SECTIONS, (), {})


def _notes(
    figures: Figures, hand_outs: Figures | None, masthead: Masthead, remembered: Remembering
) -> Iterator[PlacedData]:
    """Whole pages of their own, so that the frame of the site, its search and its map know none of them."""
    for address, sheet in all_notes(figures, hand_outs, masthead, remembered):
        yield PlacedData(f"{address}index.html", notes_html(sheet))


def _table(figures: Figures, masthead: Masthead, look: Look) -> Iterator[PlacedData]:
    for address, text in table_files(table_page(figures.settings.unit, masthead), look):
        yield PlacedData(address, text)


def _bodies(pages: tuple[PlacedPage, ...]) -> dict[str, str]:
    return {site_map.source(page.address): render(page.page) for page in pages}
