"""What a batch stands on, in sentences: its design, whose idea it was, its tools."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Credit, Project, Supply, Tool
from batchleaf.views import site_map
from batchleaf.views.bench import tools_needed
from batchleaf.views.disclosure import tie_of
from batchleaf.views.links import tool_named
from batchleaf.views.pages import Aside, Line, Link
from batchleaf.views.part_rows import Tools
from batchleaf.views.techniques import techniques_in_words
from batchleaf.views.words import capitalised, joined


def about_batch(project: Project, figures: Figures, tools: Tools) -> tuple[Line, ...]:
    """One sentence for each thing that the record knows."""
    return (
        *_design(project, figures),
        *credits_of(project, figures),
        *_film(project),
        *_tools(project, tools),
        *techniques_in_words(project),
        *_occasions(project),
    )


def _design(project: Project, figures: Figures) -> Iterator[Line]:
    """``Made to the design Strip bookmark; so are Fern marks and Moss marks.``"""
    if not project.design:
        return
    title = next(one.title for one in figures.archive.designs if one.slug == project.design)
    here = site_map.batch(project.slug)
    design = Link(title, site_map.href(here, site_map.design(project.design)))
    others: list[Line] = [
        (Link(batch.project.title, site_map.href(here, site_map.batch(batch.project.slug))),)
        for batch in figures.of_design(project.design)
        if batch.project.slug != project.slug
    ]
    be = "is" if len(others) == 1 else "are"
    also = (f"; so {be} ", *joined(others, ", ", " and ")) if others else ()
    yield ("Made to the design ", design, *also, ".")


def credits_of(project: Project, figures: Figures) -> Iterator[Line]:
    """Whose design it is, in a sentence each."""
    yield from map(credit_line, credited(project, figures))


def credited(project: Project, figures: Figures) -> tuple[Credit, ...]:
    """The batch's own, and that of its design where it is another."""
    design = next((one for one in figures.archive.designs if one.slug == project.design), None)
    told = dict.fromkeys((project.credit, design.credit if design else None))
    return tuple(credit for credit in told if credit)


def credit_line(credit: Credit) -> Line:
    """``After a fold by a friend.``, which leads there."""
    words = capitalised(credit.words.rstrip("."))
    return (Link(words, credit.link), ".") if credit.link else (f"{words}.",)


def _film(project: Project) -> Iterator[Line]:
    if project.film:
        yield ("How it is made is shown in ", Link("a film", project.film.start), ".")


def _tool(tool: Tool, here: str) -> Line:
    tie = tie_of(tool)
    return (tool_named(tool, here), Aside(f" ({tie})")) if tie else (tool_named(tool, here),)


def _tools(project: Project, tools: Tools) -> Iterator[Line]:
    if project.tools:
        here = site_map.batch(project.slug)
        names: list[Line] = [_tool(tools[slug], here) for slug in project.tools]
        yield ("Tools: ", *joined(names, ", ", " and "), ".")


def _occasions(project: Project) -> Iterator[Line]:
    """``For: new home, thank you.``"""
    if project.occasions:
        yield (f"For: {', '.join(project.occasions)}.",)


def things_named(
    batch: BatchFigures, supplies: Mapping[str, Supply], tools: Mapping[str, Tool]
) -> Iterator[Supply | Tool]:
    """All that a batch names and that somebody sells."""
    project = batch.project
    slugs = {use.supply for use in batch.used} | {cut.supply for cut in project.cut}
    papers = {slug for part in project.parts for slug in part.papers}
    yield from (supplies[slug] for slug in sorted(slugs | papers))
    yield from (tools[slug] for slug in sorted(tools_needed(project)))
