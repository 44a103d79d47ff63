"""All pages of the site, at their addresses."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import Supply
from batchleaf.views import site_map
from batchleaf.views.batch import batch_page
from batchleaf.views.become import become_page
from batchleaf.views.bench import bench_page
from batchleaf.views.colours import colours_page
from batchleaf.views.compare.compare_data import compare_data
from batchleaf.views.compare.compare_page import COMPARE_PAGE
from batchleaf.views.designs import design_page, designs_made
from batchleaf.views.drawer import drawer_page, supplies_page
from batchleaf.views.figures_json import figures_json
from batchleaf.views.find.find_data import find_data
from batchleaf.views.find.finding import find_pages
from batchleaf.views.find.indexed import indexed
from batchleaf.views.finished import finished_page
from batchleaf.views.home import home_page
from batchleaf.views.how import how_page
from batchleaf.views.item import item_page
from batchleaf.views.more import has_several, more_of
from batchleaf.views.moved import moved_page
from batchleaf.views.offcuts import offcuts_page
from batchleaf.views.other_sheets import other_sheets_page
from batchleaf.views.outward import AT_HOME, Outward, with_words_out
from batchleaf.views.pages import Page, text_of
from batchleaf.views.pictures import Prepared
from batchleaf.views.prices import prices_page
from batchleaf.views.series import series_index_page, series_page
from batchleaf.views.tables.all_tables import tables_of_all, tables_of_batch
from batchleaf.views.tables.table import csv_text
from batchleaf.views.to_make import to_make_page
from batchleaf.views.today import today_page
from batchleaf.views.years import years_page


@dataclass(frozen=True, slots=True)
class PlacedPage:
    """A page model at its address; ``section`` is the word of the header it belongs to."""

    address: str
    title: str
    section: str
    page: Page

    @property
    def description(self) -> str:
        """What it says in one sentence, for lists of pages elsewhere."""
        return text_of(self.page.sentence)


@dataclass(frozen=True, slots=True)
class PlacedData:
    """A file of data at its address."""

    address: str
    text: str


Section = tuple[str, str, str]

SECTIONS: tuple[Section, ...] = (
    ("Batches", site_map.HOME, "batches"),
    ("Drawer", site_map.DRAWER, "drawer"),
    ("Bench", site_map.BENCH, "bench"),
    ("Series", site_map.SERIES, "series"),
    ("How", site_map.HOW, "how"),
)
"""The words that a header may have: title, address, section."""


def sections_of(figures: Figures) -> tuple[Section, ...]:
    """The words of the header of one archive: no bench without tools, no drawer of which nothing is told."""
    return tuple(_sections(figures))


def _sections(figures: Figures) -> Iterator[Section]:
    for title, address, section in SECTIONS:
        match address:
            case site_map.BENCH if not figures.archive.tools:
                pass
            case site_map.DRAWER if figures.ledger is None:
                if named_supplies(figures):
                    yield "Supplies", address, section
            case _:
                yield title, address, section


def named_supplies(figures: Figures) -> tuple[Supply, ...]:
    """The supplies that have a page."""
    return tuple(supply for supply in figures.archive.supplies if supply.named)


def pages_of_batch(
    batch: BatchFigures,
    figures: Figures,
    prepared: Prepared,
    prose: Callable[[str], str],
    out: Outward = AT_HOME,
    remembered: Remembering = afresh,
) -> Iterator[PlacedPage]:
    """The pages of one batch, which look at nothing of ``figures`` but what is ``near`` it."""
    page = batch_page(batch, figures, prepared, prose(batch.project.notes), remembered)
    page = with_words_out(page, batch, figures, out)
    yield PlacedPage(site_map.batch(batch.project.slug), page.title, "batches", page)
    if others := other_sheets_page(batch, figures, remembered):
        yield PlacedPage(site_map.other_sheets(batch.project.slug), others.title, "batches", others)
    for old in batch.project.was:
        yield PlacedPage(site_map.batch(old), page.title, "batches", moved_page(batch.project, old))


def pages_of_all(figures: Figures, prepared: Prepared) -> Iterator[PlacedPage]:
    """The pages that tell of more than one batch; the first page first."""
    yield PlacedPage(site_map.HOME, "Batches", "batches", home_page(figures, prepared))
    yield from _pages_of_supplies(figures, prepared)
    if figures.archive.tools:
        yield PlacedPage(site_map.BENCH, "Bench", "bench", bench_page(figures))
    for more in more_of(figures):
        if more.address in _PAGES_OF_MORE:
            page_of = _PAGES_OF_MORE[more.address]
            yield PlacedPage(more.address, more.title, "more", page_of(figures))
    if has_several(figures):
        for address, found in find_pages(indexed(figures), figures):
            yield PlacedPage(address, found.title, "more", found)
        yield PlacedPage(site_map.COMPARE, COMPARE_PAGE.title, "more", COMPARE_PAGE)
    for design in designs_made(figures):
        to_it = design_page(design, figures, prepared)
        yield PlacedPage(site_map.design(design.slug), to_it.title, "batches", to_it)
    yield PlacedPage(site_map.SERIES, "Series", "series", series_index_page(figures, prepared))
    for one in figures.archive.series:
        series = series_page(one, figures, prepared)
        yield PlacedPage(site_map.series(one.slug), series.title, "series", series)
    how = how_page(figures)
    yield PlacedPage(site_map.HOW, how.title, "how", how)


_PAGES_OF_MORE: Final[dict[str, Callable[[Figures], Page]]] = {
    site_map.COLOURS: colours_page,
    site_map.FINISHED: finished_page,
    site_map.PRICES: prices_page,
    site_map.TODAY: today_page,
    site_map.TO_MAKE: to_make_page,
    site_map.YEAR: years_page,
}


def _pages_of_supplies(figures: Figures, prepared: Prepared) -> Iterator[PlacedPage]:
    supplies = named_supplies(figures)
    if figures.ledger or supplies:
        index = drawer_page(figures, figures.ledger) if figures.ledger else supplies_page(figures)
        yield PlacedPage(site_map.DRAWER, index.title, "drawer", index)
    if figures.ledger and figures.could_become:
        become = become_page(figures, figures.ledger)
        yield PlacedPage(site_map.BECOME, become.title, "more", become)
    if figures.ledger and any(one.holding.piece and one.quantity for one in figures.ledger.balances):
        offcuts = offcuts_page(figures, figures.ledger)
        yield PlacedPage(site_map.OFFCUTS, offcuts.title, "drawer", offcuts)
    for supply in supplies:
        item = item_page(supply, figures, prepared)
        yield PlacedPage(site_map.item(supply.slug), item.title, "drawer", item)


def data_of_batch(batch: BatchFigures, figures: Figures, *, is_one_of_several: bool) -> Iterator[PlacedData]:
    """The files beside the page of a batch, which look at no more of ``figures`` than its pages."""
    page = site_map.batch(batch.project.slug)
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    designs = {design.slug: design for design in figures.archive.designs}
    content = figures_json(batch, supplies, designs, figures.settings)
    yield PlacedData(f"{page}{site_map.FIGURES}", json.dumps(content, ensure_ascii=False, indent=2) + "\n")
    for table in tables_of_batch(batch, figures):
        yield PlacedData(table.address, csv_text(table))
    if is_one_of_several:
        yield PlacedData(f"{page}{site_map.TOLD}", compare_data(batch, figures))


def data_of_all(figures: Figures, prepared: Prepared) -> Iterator[PlacedData]:
    """The files that tell of more than one batch."""
    for table in tables_of_all(figures):
        yield PlacedData(table.address, csv_text(table))
    if has_several(figures):
        yield PlacedData(site_map.FIND_DATA, find_data(indexed(figures), figures, prepared))
