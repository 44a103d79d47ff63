"""A whole site, made: pages with their bodies, data and photos, ready to be handed over."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from batchleaf.core.figures import Figures
from batchleaf.facts import Problem, Project
from batchleaf.render.html import render
from batchleaf.render.photos import PhotoFile, ReadyPhotos, prepare
from batchleaf.render.prose import prose_html
from batchleaf.store import Store
from batchleaf.views import site_map
from batchleaf.views.problems import problems_page
from batchleaf.views.site import SECTIONS, PlacedData, PlacedPage, Section, all_data, all_pages, sections_of


@dataclass(frozen=True, slots=True)
class MadeSite:
    """``bodies``: the Markdown file that stands for a page → the HTML of its body.

    ``sections``: the words of the header.
    """

    pages: tuple[PlacedPage, ...]
    bodies: Mapping[str, str]
    data: tuple[PlacedData, ...]
    photos: tuple[PhotoFile, ...]
    sections: tuple[Section, ...]


NOTHING_MADE = MadeSite((), {}, (), (), ())


def made_site(figures: Figures, store: Store) -> tuple[MadeSite, tuple[Problem, ...]]:
    """The site of an archive, and the pictures that could not be read."""
    ready = prepared_photos(figures.archive.projects, store)
    if ready.problems:
        return NOTHING_MADE, ready.problems
    pages = tuple(all_pages(figures, ready.prepared, prose_html))
    data = tuple(all_data(figures))
    return MadeSite(pages, _bodies(pages), data, ready.files, sections_of(figures)), ()


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
    return MadeSite(pages, _bodies(pages), (), (), SECTIONS)


def _bodies(pages: tuple[PlacedPage, ...]) -> dict[str, str]:
    return {site_map.source(page.address): render(page.page) for page in pages}
