"""At the bench: what is done besides cutting, in an order that takes each tool in hand seldom."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from batchleaf.core.bench.work import Bench, Done, InHand
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Part, Project
from batchleaf.measure.display import NBSP
from batchleaf.measure.durations import show_minutes
from batchleaf.views import site_map
from batchleaf.views.bench_words import about_minutes, wait_in_words, waiting_in_words, work_in_words
from batchleaf.views.links import supply_named, together
from batchleaf.views.pages import BenchView, Line, Link, ToolInHand, WorkRow
from batchleaf.views.part_rows import Tools
from batchleaf.views.sentence import Supplies
from batchleaf.views.tables.bench_work import bench_table
from batchleaf.views.words import capitalised, counted, listed


def bench_view(batch: BatchFigures, figures: Figures, supplies: Supplies, tools: Tools) -> BenchView | None:
    """The section of a batch that something is done to besides cutting."""
    bench, project = batch.bench, batch.project
    if bench is None:
        return None
    here = site_map.batch(project.slug)
    return BenchView(
        sentences=tuple(_sentences(bench, batch)),
        runs=tuple(_run(run, project, supplies, tools) for run in bench.runs),
        waits=any(done.work.wait for done in bench.works),
        notes=tuple(_by_paper(bench, supplies)),
        csv=bench_table(batch, figures).link(here),
    )


def _sentences(bench: Bench, batch: BatchFigures) -> Iterator[str]:
    project = batch.project
    makes = counted(project.begun, project.thing, project.things)
    yield f"For the {makes} {'begun' if batch.taken else 'planned'}, in this order."
    works = sum(done.seconds for done in bench.works)
    cutting = f"Cutting takes {about_minutes(bench.cutting.seconds)}, these works" if bench.cutting else ""
    yield f"{cutting or 'These works take'} {about_minutes(works)}, by estimate; sticking is not estimated."
    if waits := tuple(done.work.wait for done in bench.works if done.work.wait):
        yield f"On top of that come {waiting_in_words(waits)}."
    if project.minutes:
        yield f"The record says {show_minutes(project.minutes)} at the table."


def _run(run: Sequence[Done], project: Project, supplies: Supplies, tools: Tools) -> ToolInHand:
    work = run[0].work
    return ToolInHand(
        tool=_in_hand(run[0], project, supplies, tools),
        when=work.moment.value,
        rows=tuple(_row(done, project, supplies) for done in run),
    )


def _in_hand(done: Done, project: Project, supplies: Supplies, tools: Tools) -> Line:
    """The tool, which leads to the page of the bench; what is worked in; or bare hands."""
    work, here = done.work, site_map.batch(project.slug)
    if work.tool:
        there = site_map.href(here, site_map.BENCH, site_map.tool(work.tool))
        return (Link(capitalised(tools[work.tool].name), there),)
    if work.supply:
        named = supply_named(supplies[work.supply], here)
        return (capitalised(named) if isinstance(named, str) else Link(capitalised(named.text), named.href),)
    return ("By hand",)


def _row(done: Done, project: Project, supplies: Supplies) -> WorkRow:
    work = done.work
    parts = [part for part in project.parts if part.letter in work.letters]
    pieces = f"{done.pieces:,}"
    return WorkRow(
        work=work_in_words(work, project.unit),
        parts=listed([part.name for part in parts]),
        details=tuple(_details(done, parts, supplies)),
        pieces=f"{pieces}{NBSP}{'sheet' if done.pieces == 1 else 'sheets'}" if done.of_sheets else pieces,
        at_once=listed([str(one) for one in dict.fromkeys(pile.at_once for pile in done.piles)], "or"),
        strokes=f"{done.strokes:,}",
        wait=wait_in_words(work.wait),
    )


def _details(done: Done, parts: Sequence[Part], supplies: Supplies) -> Iterator[str]:
    """What is worked in with a tool, and that a piece takes several strokes."""
    work = done.work
    if work.tool and work.supply:
        yield f"with {supplies[work.supply].name}"
    each = {pile.pile.each for pile in done.piles}
    if each - {1}:
        yield f"{listed([str(one) for one in sorted(each)], 'or')}{NBSP}strokes each"


def _by_paper(bench: Bench, supplies: Supplies) -> Iterator[str]:
    """``Punch A: 2 at once of sea card, 1 of moss card.``, where the weight of the paper decides."""
    for done in bench.works:
        if len({one.at_once for one in done.piles}) > 1:
            said = listed([_at_once(one, supplies) for one in done.piles])
            yield f"{capitalised(done.work.kind.value)} {listed(done.work.letters)}: {said}."


def _at_once(one: InHand, supplies: Supplies) -> str:
    papers = listed([paper.name for paper in together(supplies[slug] for slug in one.pile.papers)])
    return f"{one.at_once} at once of {one.pile.letter}{f', {papers}' if papers else ''}"
