"""What is to be made: every batch that is planned, the nearest day first, with what it is for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.core.buying import to_buy
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.reserved import needed_sheets
from batchleaf.facts import Status
from batchleaf.views import site_map
from batchleaf.views.links import supply_named
from batchleaf.views.pages import Line, Link, ToMakePage, ToMakeRow, text_of
from batchleaf.views.sentence import Supplies, papers_in_words
from batchleaf.views.tables.to_make import to_make, to_make_table
from batchleaf.views.words import capitalised, counted, joined, listed, long_date, number_word

HERE: Final = site_map.TO_MAKE


def to_make_page(figures: Figures) -> ToMakePage:
    """A list to print and to tick off."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    batches = to_make(figures)
    lacking = dict(_lacking(figures))
    return ToMakePage(
        title="To make",
        sentence=_sentence(batches),
        rows=tuple(_row(batch, lacking.get(batch.project.slug, ()), figures, supplies) for batch in batches),
        csv=to_make_table(figures).link(HERE),
    )


def _sentence(batches: tuple[BatchFigures, ...]) -> Line:
    counts = [(sum(batch.project.status is status for batch in batches), word) for status, word in _STAGES]
    return (f"{capitalised(listed([f'{number_word(count)} {word}' for count, word in counts if count]))}.",)


_STAGES: Final = ((Status.CUT, "cut"), (Status.PLANNED, "planned"), (Status.IDEA, "an idea so far"))


def _lacking(figures: Figures) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Batch → the papers of which the drawer has too little for it."""
    found: dict[str, tuple[str, ...]] = {}
    if figures.ledger:
        for one in to_buy(figures, figures.ledger):
            for lack in one.lacks:
                found[lack.project] = (*found.get(lack.project, ()), one.holding.supply)
    yield from found.items()


def _row(batch: BatchFigures, lacking: tuple[str, ...], figures: Figures, supplies: Supplies) -> ToMakeRow:
    project = batch.project
    cuts = needed_sheets(batch)
    return ToMakeRow(
        batch=Link(project.title, site_map.href(HERE, site_map.batch(project.slug))),
        date=long_date(project.date),
        date_iso=project.date.isoformat(),
        occasion=", ".join(project.occasions),
        makes=f"{counted(project.begun, project.thing, project.things)}{_stage(project.status)}",
        needs=text_of(papers_in_words(batch, cuts, supplies)) if cuts else "",
        lacking=_named(lacking, supplies) if figures.ledger and project.status is Status.PLANNED else (),
    )


def _stage(status: Status) -> str:
    return {Status.CUT: ", cut", Status.IDEA: ", an idea"}.get(status, "")


def _named(lacking: tuple[str, ...], supplies: Supplies) -> Line:
    if not lacking:
        return ("nothing",)
    names: list[Line] = [(supply_named(supplies[slug], HERE),) for slug in dict.fromkeys(lacking)]
    return joined(names, ", ", " and ")
