"""What a batch stands on, in sentences: its design, whose idea it was, its tools; and where it went."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from batchleaf.core.figures import Figures
from batchleaf.facts import Credit, Project, Whereabouts
from batchleaf.views import site_map
from batchleaf.views.links import tool_named
from batchleaf.views.pages import Line, Link
from batchleaf.views.part_rows import Tools
from batchleaf.views.techniques import techniques_in_words
from batchleaf.views.words import capitalised, counted, joined, listed

_WENT = {
    Whereabouts.KEPT: "kept",
    Whereabouts.GIVEN: "given",
    Whereabouts.SOLD: "sold",
    Whereabouts.SAMPLE: "put by as samples",
    Whereabouts.CLASS: "used in class",
}


def about_batch(project: Project, figures: Figures, tools: Tools) -> tuple[Line, ...]:
    """One sentence for each thing that the record knows."""
    return (
        *_design(project, figures),
        *_credits(project, figures),
        *_tools(project, tools),
        *techniques_in_words(project),
    )


def _design(project: Project, figures: Figures) -> Iterator[Line]:
    """``Made to the design Strip bookmark; so are Fern marks and Moss marks.``"""
    if not project.design:
        return
    title = next(one.title for one in figures.archive.designs if one.slug == project.design)
    here = site_map.batch(project.slug)
    others: list[Line] = [
        (Link(batch.project.title, site_map.href(here, site_map.batch(batch.project.slug))),)
        for batch in figures.of_design(project.design)
        if batch.project.slug != project.slug
    ]
    be = "is" if len(others) == 1 else "are"
    also = (f"; so {be} ", *joined(others, ", ", " and ")) if others else ()
    yield (f"Made to the design {title}", *also, ".")


def _credits(project: Project, figures: Figures) -> Iterator[Line]:
    """The batch's own, and that of its design where it is another."""
    design = next((one for one in figures.archive.designs if one.slug == project.design), None)
    told = dict.fromkeys((project.credit, design.credit if design else None))
    yield from (_credit(credit) for credit in told if credit)


def _credit(credit: Credit) -> Line:
    words = capitalised(credit.words.rstrip("."))
    return (Link(words, credit.link), ".") if credit.link else (f"{words}.",)


def _tools(project: Project, tools: Tools) -> Iterator[Line]:
    if project.tools:
        here = site_map.batch(project.slug)
        names: list[Line] = [(tool_named(tools[slug], here),) for slug in project.tools]
        yield ("Tools: ", *joined(names, ", ", " and "), ".")


def went_in_words(project: Project) -> str:
    """``Of the 13 cards 8 were given, 3 sold and 2 kept.``: counts alone, the most first."""
    counts = went_counts(project)
    if not counts:
        return ""
    made = counted(project.finished, project.thing, project.things)
    ways = [(count, _way(where, count)) for where, count in counts.items()]
    if len(ways) == 1 and ways[0][0] == project.finished:
        return f"{_all_of(project)} {ways[0][1]}."
    first, *rest = ways
    verb = "was" if first[0] == 1 else "were"
    return f"Of the {made} {listed([f'{first[0]} {verb} {first[1]}', *(f'{n} {way}' for n, way in rest)])}."


def went_counts(project: Project) -> dict[Whereabouts, int]:
    """How many makes went each way, the most first."""
    counts = Counter[Whereabouts]()
    for one in project.went:
        counts[one.where] += one.count
    return dict(counts.most_common())


def _way(where: Whereabouts, count: int) -> str:
    return "put by as a sample" if where is Whereabouts.SAMPLE and count == 1 else _WENT[where]


def _all_of(project: Project) -> str:
    if project.finished == 1:
        return f"The {project.thing} was"
    return f"{'Both' if project.finished == 2 else f'All {project.finished:,}'} {project.things} were"
