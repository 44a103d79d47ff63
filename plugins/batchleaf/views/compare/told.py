"""What is told of a batch where it stands beside others: the same heads for all, in one order."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.cost import Cost
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.reserved import needed_sheets
from batchleaf.facts import Part, Supply, Tool
from batchleaf.measure.display import NBSP, show_share, show_size
from batchleaf.measure.durations import show_minutes
from batchleaf.views.bench import tools_needed
from batchleaf.views.links import together
from batchleaf.views.pages import text_of
from batchleaf.views.post import post_view
from batchleaf.views.sentence import cost_of_one, made_of_begun, papers_in_words
from batchleaf.views.techniques import techniques
from batchleaf.views.unpriced import is_whole
from batchleaf.views.words import listed, money_said

Told = tuple[str, str]
"""A head, and what is told under it."""


def told_of(batch: BatchFigures, figures: Figures) -> tuple[Told, ...]:
    """All that is known, in the unit of the record."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    tools = {tool.slug: tool for tool in figures.archive.tools}
    told = (
        *_made(batch, figures),
        *_parts(batch, supplies),
        *_sheets(batch, supplies),
        *_cost(batch, figures),
        *_post(batch, figures, supplies),
        *_how(batch, tools),
    )
    return tuple((head, text) for head, text in told if text)


def _made(batch: BatchFigures, figures: Figures) -> Iterator[Told]:
    project = batch.project
    yield "Made", made_of_begun(project)
    yield "For", ", ".join(project.occasions)
    yield "Series", next((one.title for one in figures.archive.series if one.slug == project.series), "")
    if project.finished_size:
        yield "Finished size", f"{show_size(project.finished_size, project.unit)}{NBSP}{project.unit.word}"


def _parts(batch: BatchFigures, supplies: dict[str, Supply]) -> Iterator[Told]:
    """``B mat`` → ``moss card, 3 3/4 × 5 in``."""
    unit = batch.project.unit
    for part in batch.project.parts:
        size = f"{show_size(part.size, unit)}{NBSP}{unit.word}"
        times = f"{part.each}{NBSP}×{NBSP}" if part.each > 1 else ""
        papers = _papers(part, supplies)
        yield f"{part.letter}{NBSP}{part.name}".rstrip(), f"{times}{size}{f', {papers}' if papers else ''}"


def _papers(part: Part, supplies: dict[str, Supply]) -> str:
    names = listed([paper.name for paper in together(supplies[slug] for slug in part.papers)], last="or")
    return f"any {part.any_of} of {names}" if part.any_of else names


def _sheets(batch: BatchFigures, supplies: dict[str, Supply]) -> Iterator[Told]:
    cuts = needed_sheets(batch)
    papers = text_of(papers_in_words(batch, cuts, supplies)) if cuts else ""
    yield "Sheets", papers
    if batch.cutting and batch.cutting.most:
        most = batch.cutting.most
        yield "Could have given", f"{'' if most.proved else 'at least '}{most.makes}"
    if batch.paper and batch.paper.cut:
        yield "Paper in finished makes", show_share(batch.paper.used, batch.paper.cut)


def _cost(batch: BatchFigures, figures: Figures) -> Iterator[Told]:
    currency = figures.settings.currency
    yield "One", cost_of_one(batch, currency)
    if batch.cost and batch.cost.counted and batch.taken:
        yield "Batch", money_said(Cost(batch.cost.batch.known, is_whole(batch)), currency)


def _post(batch: BatchFigures, figures: Figures, supplies: dict[str, Supply]) -> Iterator[Told]:
    """Weight, thickness, envelope: without the rules and rates."""
    view = post_view(batch, supplies, figures.settings)
    for row in view.rows if view else ():
        if row.head in ("Weight", "Thickness", "Height", "Envelope"):
            yield row.head, row.text


def _how(batch: BatchFigures, tools: dict[str, Tool]) -> Iterator[Told]:
    project = batch.project
    yield "Techniques", ", ".join(techniques(project))
    names = sorted(tools[slug].name.removeprefix("the ") for slug in tools_needed(project))
    yield "Tools", ", ".join(names)
    yield "Time", show_minutes(project.minutes) if project.minutes else ""
