"""The public edition: figures with nothing in them that readers are not to know.

It is built up, not cut down. Every fact is made anew from the fields that are named
here, so that a field which nobody thought of is left out. The figures are then
worked out from these facts alone; only what one make cost is taken over, since it
rests on prices that have no place here. No page can tell what it never gets.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from batchleaf.core.batch_cutting import Planner
from batchleaf.core.figures import BatchFigures, Figures, by_slug, work_out_batch
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import (
    NOWHERE,
    Archive,
    Collating,
    Companion,
    Cut,
    Design,
    PaperSide,
    Part,
    Project,
    Series,
    Status,
    Supply,
    Terms,
    Tool,
    Use,
    Work,
)
from batchleaf.facts.postage import Postage
from batchleaf.views.bench import tools_needed

Names = Mapping[str, str]
"""The short name of a supply → the one it has in this edition."""


@dataclass(frozen=True, slots=True)
class Told:
    """What the maker lets the public edition tell besides: what one cost, and from which supplies."""

    cost: bool = True
    supplies: bool = True


def public_edition(
    figures: Figures, told: Told, planner: Planner, remembered: Remembering = afresh
) -> Figures:
    """The published batches, and what belongs to them."""
    return _told_of("published", _published(figures), figures, told, planner, remembered)


def handed_out(figures: Figures, told: Told, planner: Planner, remembered: Remembering = afresh) -> Figures:
    """The batches whose notes are handed out, published or not, as the public edition tells a batch."""
    projects = [one for one in figures.archive.projects if one.companion is Companion.HAND_OUT]
    return _told_of("handed out", projects, figures, told, planner, remembered)


def as_told(
    figures: Figures, told: Told, planner: Planner, remembered: Remembering = afresh
) -> tuple[Figures, ...]:
    """What the public edition tells of the published batches, and would tell of all others."""
    others = [one for one in figures.archive.projects if one.status is not Status.PUBLISHED]
    return (
        public_edition(figures, told, planner, remembered),
        _told_of("others", others, figures, told, planner, remembered),
    )


def _published(figures: Figures) -> list[Project]:
    return [one for one in figures.archive.projects if one.status is Status.PUBLISHED]


def _told_of(
    which: str,
    projects: Sequence[Project],
    figures: Figures,
    told: Told,
    planner: Planner,
    remembered: Remembering,
) -> Figures:
    shown = _supplies(figures.archive.supplies, projects, told)
    names = {slug: supply.slug for slug, supply in shown.items()}
    archive = _archive(figures.archive, [_project(one, names) for one in projects], tuple(shown.values()))
    supplies = remembered(f"{which}: supplies", by_slug, archive.supplies)
    tools = remembered(f"{which}: tools", by_slug, archive.tools)

    def public(project: Project) -> BatchFigures:
        asked = project, supplies, tools, planner, archive.postage
        return remembered(f"{which}: {project.slug}", work_out_batch, *asked)

    batches = {
        project.slug: _batch(public(project), figures.batches[project.slug], names, told)
        for project in archive.projects
    }
    return Figures(archive, figures.settings, batches, ledger=None, problems=())


def _batch(public: BatchFigures, private: BatchFigures, names: Names, told: Told) -> BatchFigures:
    lacks = tuple(replace(lack, supply=names[lack.supply]) for lack in private.lacks)
    return BatchFigures(
        project=public.project,
        cutting=public.cutting,
        paper=public.paper,
        used=public.used if told.supplies else (),
        by_post=public.by_post,
        collated=public.collated,
        bench=public.bench,
        one=private.one if told.cost else None,
        lacks=lacks if told.cost else (),
    )


def _archive(private: Archive, projects: Sequence[Project], supplies: tuple[Supply, ...]) -> Archive:
    series = {project.series for project in projects}
    designs = {project.design for project in projects}
    tools = {slug for project in projects for slug in tools_needed(project)}
    return Archive(
        projects=tuple(projects),
        supplies=supplies,
        purchases=(),
        counts=(),
        series=tuple(Series(one.slug, one.title, one.about) for one in private.series if one.slug in series),
        designs=tuple(_design(one) for one in private.designs if one.slug in designs),
        tools=tuple(_tool(one) for one in private.tools if one.slug in tools),
        postage=Postage(private.postage.posts, clearance=private.postage.clearance),
    )


def _design(design: Design) -> Design:
    return Design(slug=design.slug, title=design.title, roles=(), credit=design.credit)


def _undated(terms: Terms) -> Terms:
    """Without the day on which they were read: often that of the purchase."""
    return Terms(terms.sale, terms.source)


def _tool(tool: Tool) -> Tool:
    return Tool(
        slug=tool.slug,
        name=tool.name,
        kind=tool.kind,
        length_unit=tool.length_unit,
        longest_cut=tool.longest_cut,
        narrowest_strip=tool.narrowest_strip,
        kerf=tool.kerf,
        stack=tool.stack,
        grooves=tool.grooves,
        plate=tool.plate,
        stroke=tool.stroke,
        images=tool.images,
        terms=_undated(tool.terms),
        link=tool.link,
        tie=tool.tie,
        about=tool.about,
    )


# --- a batch -------------------------------------------------------------------


def _project(project: Project, names: Names) -> Project:
    return Project(
        slug=project.slug,
        title=project.title,
        date=project.date,
        status=project.status,
        series=project.series,
        unit=project.unit,
        thing=project.thing,
        things=project.things,
        finished=project.finished,
        begun=project.begun,
        finished_size=project.finished_size,
        parts=tuple(_part(part, names) for part in project.parts),
        cut=tuple(Cut(names[cut.supply], cut.count, cut.scrap, cut.kept) for cut in project.cut),
        uses=tuple(
            Use(names[use.supply], use.quantity, use.per_make, purpose=use.purpose) for use in project.uses
        ),
        minutes=project.minutes,
        youngest=project.youngest,
        occasions=project.occasions,
        steps=project.steps,
        photos=project.photos,
        notes=project.notes,
        was=project.was,
        design=project.design,
        height=project.height,
        envelope=project.envelope,
        tools=project.tools,
        kerf=project.kerf,
        credit=project.credit,
        film=project.film,
        collating=tuple(Collating(one.letters, one.rule) for one in project.collating),
        companion=project.companion,
        works=tuple(_work(work, names) for work in project.works),
    )


def _work(work: Work, names: Names) -> Work:
    """What is worked in goes by its name here, as everywhere."""
    return Work(
        kind=work.kind,
        letters=work.letters,
        tool=work.tool,
        moment=work.moment,
        supply=names[work.supply] if work.supply else "",
        where=work.where,
        at=work.at,
        runs_down=work.runs_down,
        times=work.times,
        wait=work.wait,
    )


def _part(part: Part, names: Names) -> Part:
    """All that is said of a part is shown: it is what a reader makes."""
    spots = tuple(replace(spot, place=NOWHERE) for spot in part.spots)
    stuck = part.stuck and replace(part.stuck, supply=names[part.stuck.supply])
    return replace(
        part, papers=tuple(names[slug] for slug in part.papers), stuck=stuck, spots=spots, place=NOWHERE
    )


# --- supplies ------------------------------------------------------------------


def _supplies(supplies: Sequence[Supply], projects: Sequence[Project], told: Told) -> dict[str, Supply]:
    """Those that the batches name, by their short name, and the pads that numbered papers lie in."""
    named = {slug for project in projects for slug in _named_by(project)}
    pads = {supply.pad for supply in supplies if supply.slug in named}
    shown = [supply for supply in supplies if supply.slug in named | pads]
    return {supply.slug: _supply(supply) for supply in shown} if told.supplies else _by_kind(shown)


def _named_by(project: Project) -> Iterator[str]:
    for part in project.parts:
        yield from part.papers
    yield from (cut.supply for cut in project.cut)
    yield from (use.supply for use in project.uses)
    yield from (work.supply for work in project.works if work.supply)


def _supply(supply: Supply) -> Supply:
    return Supply(
        slug=supply.slug,
        name=supply.name,
        kind=supply.kind,
        unit=supply.unit,
        units=supply.units,
        length_unit=supply.length_unit,
        size=supply.size,
        grain=supply.grain,
        front=supply.front,
        back=supply.back,
        core=supply.core,
        see_through=supply.see_through,
        trim=supply.trim,
        colours=supply.colours,
        colours_are_about=supply.colours_are_about,
        collection=supply.collection,
        grammage=supply.grammage,
        pounds=supply.pounds,
        thickness=supply.thickness,
        weighs=supply.weighs,
        envelope=supply.envelope,
        pad=supply.pad,
        number=supply.number,
        terms=_undated(supply.terms),
        link=supply.link,
        tie=supply.tie,
        about=supply.about,
    )


def _by_kind(supplies: Sequence[Supply]) -> dict[str, Supply]:
    """Each under the name of its kind: ``card``; ``card 2`` where there are several.

    Nothing is left of it but what a cutting plan needs, and what one make weighs and how it is sent.
    """
    several = Counter(supply.kind for supply in supplies)
    seen = Counter[str]()
    slugs = {supply.slug: f"supply-{number}" for number, supply in enumerate(supplies, 1)}
    shown: dict[str, Supply] = {}
    for supply in supplies:
        seen[supply.kind] += 1
        number = f" {seen[supply.kind]}" if several[supply.kind] > 1 else ""
        shown[supply.slug] = _unnamed(supply, f"{supply.kind}{number}", slugs)
    return shown


def _unnamed(supply: Supply, name: str, slugs: Names) -> Supply:
    return Supply(
        slug=slugs[supply.slug],
        name=name,
        kind=supply.kind,
        unit=supply.unit,
        units=supply.units,
        length_unit=supply.length_unit,
        size=supply.size,
        grain=supply.grain,
        front=PaperSide(direction=supply.front.direction),
        back=PaperSide(direction=supply.back.direction),
        trim=supply.trim,
        grammage=supply.grammage,
        thickness=supply.thickness,
        weighs=supply.weighs,
        envelope=supply.envelope,
        pad=slugs.get(supply.pad, ""),
        number=supply.number,
        named=False,
    )
