"""The page of one batch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import takewhile

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.core.reserved import needed_sheets, reservations
from batchleaf.core.shortage import shortages
from batchleaf.facts import Project, Step, Supply, Tool
from batchleaf.measure.display import NBSP, show_length, show_number, show_size
from batchleaf.measure.durations import show_film_time
from batchleaf.measure.lengths import Size
from batchleaf.measure.money import share
from batchleaf.views import site_map
from batchleaf.views.about_batch import about_batch, things_named
from batchleaf.views.bench_work import bench_view
from batchleaf.views.cautions import cautions_for
from batchleaf.views.collating import collating_view
from batchleaf.views.cost import cost_view
from batchleaf.views.disclosure import disclosure_for
from batchleaf.views.filming import film_rows, step_quantities
from batchleaf.views.for_makes import for_makes_view
from batchleaf.views.in_both import for_readers, in_both
from batchleaf.views.ink_on_paper import ink_notes
from batchleaf.views.links import together
from batchleaf.views.measures import measures_view
from batchleaf.views.notes.sheet import companion_line
from batchleaf.views.other_sheets import link_to_other_sheets
from batchleaf.views.pages import (
    BatchPage,
    BenchView,
    CostView,
    Line,
    Link,
    Neighbour,
    PartRow,
    Picture,
    PlanView,
    PostView,
    ScoreView,
    StepView,
    TogetherView,
)
from batchleaf.views.part_rows import Tools, part_notes, part_rows
from batchleaf.views.pictures import Prepared, cover, picture
from batchleaf.views.plan import alike_plans, plan_views, plans_to_show
from batchleaf.views.post import post_view
from batchleaf.views.scoring import score_views
from batchleaf.views.sentence import Supplies, batch_sentence
from batchleaf.views.tables.batch import cuts_table, parts_table, supplies_table
from batchleaf.views.tables.for_makes import for_makes_table
from batchleaf.views.together import first_together
from batchleaf.views.went import went_view
from batchleaf.views.words import counted, listed, long_date, ordinal, sheets_and_scraps_in_words


@dataclass(frozen=True, slots=True)
class _Measured:
    """What of the page names lengths."""

    parts_unit: str
    parts: tuple[PartRow, ...]
    parts_notes: tuple[str, ...]
    plan_notes: tuple[str, ...]
    bench: BenchView | None
    scoring: tuple[ScoreView, ...]
    paper_notes: tuple[str, ...]
    cost: CostView
    post: PostView | None
    step_uses: tuple[str, ...]


def _measured(batch: BatchFigures, figures: Figures, supplies: Supplies, tools: Tools) -> _Measured:
    """All of it in the unit of the batch."""
    project = batch.project
    return _Measured(
        parts_unit=project.unit.word,
        parts=part_rows(project, supplies, tools),
        parts_notes=(*part_notes(batch, supplies), *ink_notes(project, supplies, tools)),
        plan_notes=_plan_notes(batch, supplies),
        bench=bench_view(batch, figures, supplies, tools),
        scoring=score_views(project, tools),
        paper_notes=_paper_notes(batch, supplies),
        cost=cost_view(batch, supplies, figures.settings),
        post=post_view(batch, supplies, figures.settings),
        step_uses=step_quantities(batch, supplies, tools),
    )


@dataclass(frozen=True, slots=True)
class _Drawn:
    """What of the page is mostly drawings."""

    plans: tuple[PlanView, ...]
    together: TogetherView | None


def _to_draw(batch: BatchFigures) -> BatchFigures:
    """What of the batch is drawn: nothing that the drawer or its prices change."""
    return BatchFigures(batch.project, batch.cutting, None, (), collated=batch.collated)


def _drawn(batch: BatchFigures, supplies: tuple[Supply, ...], tools: tuple[Tool, ...]) -> _Drawn:
    """In the unit of the record and in the other."""
    papers = {supply.slug: supply for supply in supplies}
    by_slug = {tool.slug: tool for tool in tools}
    plans = plans_to_show(batch.project, batch.cutting, papers)
    written, other = (
        _Drawn(plan_views(plans, one.project, papers, by_slug), first_together(one, papers))
        for one in (batch, for_readers(batch))
    )
    return in_both(written, other)


def batch_page(
    batch: BatchFigures,
    figures: Figures,
    prepared: Prepared,
    notes_html: str,
    remembered: Remembering = afresh,
) -> BatchPage:
    """Everything about one batch, in order; its lengths in the unit of the record and in the other."""
    project = batch.project
    here = site_map.batch(project.slug)
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    tools = {tool.slug: tool for tool in figures.archive.tools}
    archive = figures.archive
    drawn = remembered(project.slug, _drawn, _to_draw(batch), archive.supplies, archive.tools)
    told = in_both(
        _measured(batch, figures, supplies, tools), _measured(for_readers(batch), figures, supplies, tools)
    )
    return BatchPage(
        title=project.title,
        when=long_date(project.date),
        when_iso=project.date.isoformat(),
        series=_series(project, figures),
        sentence=batch_sentence(batch, supplies, figures.settings.currency),
        cover=cover(project, prepared, here),
        notes_html=notes_html,
        about=about_batch(project, figures, tools),
        disclosure=disclosure_for(things_named(batch, supplies, tools), figures.settings),
        other_sheets=link_to_other_sheets(batch),
        measures=measures_view(project.unit),
        parts_unit=told.parts_unit,
        parts_cut="Cut" if batch.taken else "To cut",
        parts=told.parts,
        parts_notes=told.parts_notes,
        plan_intro=_plan_intro(batch, supplies),
        plans=drawn.plans,
        plan_notes=(*told.plan_notes, *_what_lacks(batch, figures, supplies)),
        collating=collating_view(batch, figures, supplies, tools),
        scoring=told.scoring,
        paper=_paper(batch),
        paper_notes=told.paper_notes,
        cost=told.cost,
        post=told.post,
        steps=tuple(
            replace(step, uses=uses)
            for step, uses in zip(_steps(project, prepared, here), told.step_uses, strict=True)
        ),
        filming=film_rows(batch, supplies, tools) if figures.ledger else (),
        together=drawn.together,
        pictures=_other_pictures(project, prepared, here),
        went=went_view(batch, figures.settings.currency),
        neighbours=_neighbours(project, figures),
        cautions=cautions_for(batch, supplies, tools),
        figures_href=site_map.FIGURES,
        how_href=site_map.href(here, site_map.HOW),
        parts_csv=parts_table(batch, figures).link(here),
        bench=told.bench,
        plan_csv=cuts_table(batch, figures).link(here),
        cost_csv=supplies_table(batch, figures).link(here),
        companion=companion_line(batch, figures),
        for_makes=for_makes_view(batch, supplies, figures.settings),
        for_makes_csv=for_makes_table(batch, figures).link(here),
    )


def _series(project: Project, figures: Figures) -> Line:
    if project.series is None:
        return ()
    title = next(one.title for one in figures.archive.series if one.slug == project.series)
    place = [batch.project for batch in figures.in_series(project.series)].index(project) + 1
    there = site_map.href(site_map.batch(project.slug), site_map.series(project.series))
    return (f"{ordinal(place)} of ", Link(title, there))


def _neighbours(project: Project, figures: Figures) -> tuple[Neighbour, ...]:
    if project.series is None:
        return ()
    mine = [batch.project for batch in figures.in_series(project.series)]
    at = mine.index(project)
    here = site_map.batch(project.slug)
    around = (
        ("earlier", mine[at - 1] if at else None),
        ("later", mine[at + 1] if at + 1 < len(mine) else None),
    )
    return tuple(
        Neighbour(word, Link(other.title, site_map.href(here, site_map.batch(other.slug))))
        for word, other in around
        if other
    )


def _plan_intro(batch: BatchFigures, supplies: Supplies) -> str:
    if batch.cutting is None:
        return ""
    if not batch.cutting.plans:
        return "No way of cutting these sheets was found that gives them all."
    alike, cuts = alike_plans(batch.cutting, supplies), batch.cutting.sheets
    scraps = sum(plan.times for plan in batch.cutting.plans if cuts[plan.stock].scrap)
    sheets = sheets_and_scraps_in_words(sum(group.sheets for group in alike) - scraps, scraps)
    plans = counted(len(alike), "plan", "plans")
    return (
        f"{sheets}, {plans}. Set each measure once, and take every sheet of that plan through"
        " before you set the next."
    )


def _plan_notes(batch: BatchFigures, supplies: Supplies) -> tuple[str, ...]:
    cutting, project = batch.cutting, batch.project
    if cutting is None or not cutting.plans:
        return ()
    makes = counted(cutting.makes, project.thing, project.things)
    meant = (
        "" if cutting.makes < project.begun else " that were begun" if batch.taken else " that are planned"
    )
    scraps = any(cutting.sheets[plan.stock].scrap for plan in cutting.plans)
    extras = f", with {_times(cutting.extras)} as extras" if cutting.extras else ""
    first = ", and take the scraps first" if scraps else ""
    notes = [f"These plans give {'the ' if meant else ''}{makes}{meant}{extras}{first}."]
    if cutting.left_out:
        notes.append(
            f"The extras, {_times(cutting.left_out)}, are left out: the sheets do not give them too."
        )
    if cutting.spares:
        notes.append(f"Spare parts: {_times(cutting.spares)}.")
    if project.kerf:
        taken = f"{show_length(project.kerf, project.unit)}{NBSP}{project.unit.word}"
        notes.append(f"Each cut takes {taken} away, which is counted.")
    return (*notes, *_idle_sheets(cutting, supplies))


def _times(parts: Sequence[tuple[str, int]]) -> str:
    """``2 × B and 1 × C``, each on one line."""
    return listed([f"{count}{NBSP}×{NBSP}{letter}" for letter, count in parts])


def _idle_sheets(cutting: Cutting, supplies: Supplies) -> Iterator[str]:
    """Sheets that were cut although the plans do without them."""
    needed = Counter[str]()
    for plan in cutting.plans:
        needed[plan.stock] += plan.times
    for id_, cut in cutting.sheets.items():
        supply, idle = supplies[cut.supply], cut.count - needed[id_]
        noun = ("scrap", "scraps") if cut.scrap else (supply.unit, supply.units)
        if idle:
            yield f"They do without {counted(idle, *noun)} of the {supply.name}."


def _what_lacks(batch: BatchFigures, figures: Figures, supplies: Supplies) -> Iterator[str]:
    """``The drawer has 8 of the 10 sheets of snow card.``, before they are cut."""
    if batch.taken or figures.ledger is None:
        return
    claims = takewhile(lambda one: one.project is not batch.project, reservations(figures.batches.values()))
    for one in shortages(needed_sheets(batch), figures.ledger, supplies, claims):
        supply, unit = supplies[one.holding.supply], batch.project.unit
        size = f" {show_size(one.holding.piece, unit)} {unit.word}" if one.holding.piece else ""
        noun = ("scrap", "scraps") if size else (supply.unit, supply.units)
        of = f"of {supply.name}{size}"
        there = show_number(one.there, 2) if one.there else "none"
        if one.needed == 1 and not one.there:
            yield f"The drawer has no {noun[0]} {of}."
        else:
            yield f"The drawer has {there} of the {counted(one.needed, *noun)} {of}."


def _paper(batch: BatchFigures) -> str:
    """Where the paper went, and why the sheets could not have given more."""
    paper, project = batch.paper, batch.project
    most = _most(batch)
    if project.in_hand:
        return most
    if paper is None or not paper.cut or (project.parts and not project.cut_parts):
        return ""
    made = counted(project.finished, project.thing, project.things)
    used, kept, waste = share(100, [paper.used, paper.kept, paper.waste])
    stayed = f", {kept}{NBSP}% was kept" if paper.kept else ""
    went = f"Of all that was cut, {used}{NBSP}% is in the {made}{stayed} and {waste}{NBSP}% is waste"
    went += f", {_spoiled(project)} with it." if project.begun > project.finished else "."
    return f"{went} {most}" if most else went


def _most(batch: BatchFigures) -> str:
    """How many the sheets could have given, and why no more."""
    most = batch.cutting.most if batch.cutting else None
    if most is None:
        return ""
    if most.proved:
        return f"{most.makes} is the most these sheets can give: {most.reason}."
    return f"These sheets give {most.makes}, and no more than {most.bound}: {most.reason}."


def _spoiled(project: Project) -> str:
    spoiled = project.begun - project.finished
    return f"the spoiled {project.thing}" if spoiled == 1 else f"the {spoiled} spoiled {project.things}"


def _paper_notes(batch: BatchFigures, supplies: Supplies) -> tuple[str, ...]:
    unit = batch.project.unit
    count_of = Counter[tuple[str, Size]]()
    for cut in batch.project.cut:
        for piece in cut.kept:
            count_of[cut.supply, piece.size] += piece.count
    alike: dict[str, list[Supply]] = {}
    for (slug, size), count in count_of.items():
        pieces = f"{count} of {show_size(size, unit)} {unit.word}"
        alike.setdefault(pieces, []).append(supplies[slug])
    kept = [
        f"{pieces}{' each' if len(papers) > 1 else ''} ({listed([paper.name for paper in together(papers)])})"
        for pieces, papers in alike.items()
    ]
    return (f"Kept: {listed(kept)}.",) if kept else ()


def _steps(project: Project, prepared: Prepared, here: str) -> list[StepView]:
    return [
        StepView(
            sentence=step.sentence,
            film=_moment(step, project),
            pictures=tuple(
                picture(photo, photo.alt or step.sentence, prepared, here)
                for photo in project.photos
                if photo.step == number
            ),
        )
        for number, step in enumerate(project.steps, 1)
    ]


def _moment(step: Step, project: Project) -> Line:
    """``1:05``, which leads there where the film has an address; nothing without a time."""
    if step.film_seconds is None:
        return ()
    time = show_film_time(step.film_seconds)
    return (Link(time, project.film.at(step.film_seconds)),) if project.film else (time,)


def _other_pictures(project: Project, prepared: Prepared, here: str) -> tuple[Picture, ...]:
    return tuple(
        picture(photo, photo.alt or project.title, prepared, here)
        for photo in project.photos
        if not photo.step and not photo.cover
    )
