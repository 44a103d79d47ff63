"""All figures of an archive, worked out from its facts.

Pure: the same facts give the same figures on every machine.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import TypeVar

from batchleaf.core.batch_cutting import PLANNER, Cutting, Planner, cutting_of, uncut_parts
from batchleaf.core.bench.problems import bench_problems
from batchleaf.core.bench.work import Bench, bench_work
from batchleaf.core.bench_limits import Tools, bench_limits
from batchleaf.core.beyond_a_plan import beyond_a_plan
from batchleaf.core.collate.collated import Collated, collated
from batchleaf.core.collate.short_of_sets import short_of_sets
from batchleaf.core.cost_kinds import KindCost, cost_by_kind
from batchleaf.core.costing import BatchCost, Unpriced, batch_cost
from batchleaf.core.could_become import CouldBecome, could_become, equal_pieces, wanted_parts
from batchleaf.core.cutting.from_one_sheet import FromOneSheet, OneSize
from batchleaf.core.dealing import Supplies, may_come_from
from batchleaf.core.entries import newest_day
from batchleaf.core.folds_across import folds_across
from batchleaf.core.for_makes import ForMakes, ForMakesOn, for_makes, for_makes_on
from batchleaf.core.from_the_drawer import FromTheDrawer, from_the_drawer, on_hand
from batchleaf.core.geometry.problems import misplaced
from batchleaf.core.geometry.seen_through import seen_through
from batchleaf.core.ledger import Ledger, keep_ledger
from batchleaf.core.other_sheets import OnOther, on_other_sheets
from batchleaf.core.paper import PaperUse, paper_use
from batchleaf.core.post.by_post import ByPost, by_post
from batchleaf.core.remembered import Remembering, afresh, places_in
from batchleaf.core.sheets_needed import Counting
from batchleaf.core.terms_of_sale import terms_of_sale
from batchleaf.core.todays_prices import TodaysCost, last_prices, todays_cost
from batchleaf.core.too_tight import too_tight
from batchleaf.core.used import Used, used_by
from batchleaf.facts import (
    Archive,
    OtherSheet,
    Part,
    Place,
    Problem,
    Project,
    Settings,
    Supply,
    Tool,
    Weight,
)
from batchleaf.facts.postage import NO_POSTAGE, Postage
from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Size

Named = TypeVar("Named", Supply, Tool)


@dataclass(frozen=True, slots=True)
class PartFromSheet:
    """How many of one part one sheet of one supply gives."""

    letter: str
    supply: str
    count: FromOneSheet


@dataclass(frozen=True, slots=True)
class BatchFigures:
    """Every number of one batch. ``paper`` is ``None`` before the first one is finished.

    ``one`` is what one make cost, in minor units; ``None`` where none is finished,
    nothing was measured, or an edition does not tell it. ``lacks``: what has no known
    price, so that it cost more. ``cost``: the account of the whole batch, where an
    edition tells it; ``kinds``: what it was spent on; ``today``: what the same would
    cost at the prices last paid. ``by_post``: what one weighs, and how it is sent.
    ``collated`` is ``None`` where every make gets the same, ``bench`` where nothing is done but cutting.
    ``from_drawer``: what it could be made of today. Only the pages of the batch itself ask for what
    :func:`in_full` adds: ``from_one_sheet``; ``on_other``, the makes begun from sheets that readers elsewhere
    have; ``for_makes``, what other numbers of makes take, and ``for_makes_on`` from those other sheets.
    """

    project: Project
    cutting: Cutting | None
    paper: PaperUse | None
    used: tuple[Used, ...]
    one: int | None = None
    lacks: tuple[Unpriced, ...] = ()
    cost: BatchCost | None = None
    kinds: tuple[KindCost, ...] = ()
    today: TodaysCost | None = None
    by_post: ByPost | None = None
    collated: Collated | None = None
    bench: Bench | None = None
    from_one_sheet: tuple[PartFromSheet, ...] = ()
    on_other: tuple[OnOther, ...] = ()
    for_makes: tuple[ForMakes, ...] = ()
    for_makes_on: tuple[ForMakesOn, ...] = ()
    from_drawer: FromTheDrawer | None = None

    @property
    def taken(self) -> bool:
        """Whether sheets have left the drawer; what is only planned counts nowhere."""
        return self.project.status.moves_the_drawer

    @property
    def made(self) -> bool:
        """Whether there is something to show for them: what is cut lies in parts first."""
        return self.taken and not self.project.in_hand

    @property
    def cost_is_whole(self) -> bool:
        """True where nothing is missing from the cost, so far as it is counted."""
        return not self.lacks and not self.paper_unknown

    @property
    def paper_unknown(self) -> bool:
        """Made, with parts that are cut from paper, but the record does not say from how much."""
        return self.taken and not self.project.cut and bool(self.project.cut_parts)


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of every batch by slug, the drawer over time, and what cannot be.

    ``ledger`` is ``None`` in an edition that tells nothing of the drawer; else it is
    that of the day ``as_of``, which may be before the newest records. ``could_become``: what lies there with
    the parts that it gives; only pages ask for it.
    """

    archive: Archive
    settings: Settings
    batches: Mapping[str, BatchFigures]
    ledger: Ledger | None
    problems: tuple[Problem, ...]
    as_of: dt.date | None = None
    could_become: tuple[CouldBecome, ...] = ()

    def in_series(self, series: str) -> tuple[BatchFigures, ...]:
        """The batches of a series, oldest first."""
        return tuple(batch for batch in self.batches.values() if batch.project.series == series)

    def of_design(self, design: str) -> tuple[BatchFigures, ...]:
        """The batches that stand on a design, oldest first."""
        return tuple(batch for batch in self.batches.values() if batch.project.design == design)


def work_out(
    archive: Archive, settings: Settings, planner: Planner = PLANNER, remembered: Remembering = afresh
) -> Figures:
    """Facts to figures."""
    supplies, tools = by_slug(archive.supplies), by_slug(archive.tools)
    # Those of last time where they are equal, so that a batch is quickly held against them.
    same_supplies = remembered("supplies", _placed, archive.supplies, tuple(places_in(archive.supplies)))
    same_tools = remembered("tools", _placed, archive.tools, tuple(places_in(archive.tools)))
    newest = newest_day(archive)
    as_of = settings.as_of or newest
    designs = {design.slug: design for design in archive.designs}
    ledger = keep_ledger(archive, settings.cost_flow)
    prices = last_prices(archive.purchases, supplies, as_of)
    postage = archive.postage.until(as_of)
    problems = list(ledger.problems)
    batches: dict[str, BatchFigures] = {}
    for project in archive.projects:
        misfits = list(_too_large(project, supplies))
        cost = batch_cost(ledger.draws.get(project.slug, ()), project.finished)
        one = cost.one if cost.counted else None
        asked = project, tuple(places_in(project)), same_supplies, same_tools, planner, postage
        uncosted = remembered(project.slug, _placed_batch, *asked)
        kinds = cost_by_kind(cost, project, supplies) if one is not None else ()
        today = todays_cost(project, supplies, prices) if one is not None else None
        # What is not compared, such as whether terms were noted, is that of today as well.
        batch = replace(
            uncosted, project=project, one=one, lacks=cost.lacks, cost=cost, kinds=kinds, today=today
        )
        problems += misfits or _misfits(batch, supplies)
        problems += bench_limits(project, batch.cutting, supplies, tools)
        problems += bench_problems(project, batch.bench, supplies, tools)
        problems += beyond_a_plan(project, supplies)
        problems += misplaced(project)
        problems += too_tight(project, supplies)
        problems += seen_through(project, supplies)
        problems += folds_across(project, batch.cutting, supplies)
        problems += terms_of_sale(project, supplies, tools, designs)
        problems += short_of_sets(project, batch.collated)
        batches[project.slug] = batch
    if newest and as_of and as_of < newest:
        ledger = keep_ledger(archive, settings.cost_flow, as_of)
    return Figures(archive, settings, batches, ledger, tuple(sorted(problems)), as_of)


def by_slug(things: tuple[Named, ...]) -> Mapping[str, Named]:
    """Each under its short name."""
    return {one.slug: one for one in things}


def _placed(things: tuple[Named, ...], _where: tuple[Place, ...]) -> Mapping[str, Named]:
    """Anew where they stand elsewhere: problems name the places."""
    return by_slug(things)


def _placed_batch(
    project: Project,
    _where: tuple[Place, ...],
    supplies: Supplies,
    tools: Tools,
    planner: Planner,
    postage: Postage,
) -> BatchFigures:
    """Anew where it stands elsewhere: problems name the places."""
    return work_out_batch(project, supplies, tools, planner, postage)


def work_out_batch(
    project: Project,
    supplies: Supplies,
    tools: Tools,
    planner: Planner,
    postage: Postage = NO_POSTAGE,
) -> BatchFigures:
    """All of one batch but its cost, which depends on every batch before it."""
    was_made = project.status.moves_the_drawer and project.cut and not project.in_hand
    cutting = cutting_of(project, supplies, planner)
    return BatchFigures(
        project=project,
        cutting=cutting,
        paper=paper_use(project, supplies) if was_made else None,
        used=used_by(project),
        by_post=by_post(project, supplies, postage),
        collated=collated(project, cutting, supplies),
        bench=bench_work(project, cutting, supplies, tools),
    )


def in_full(
    batch: BatchFigures,
    supplies: Supplies,
    other_sheets: tuple[OtherSheet, ...],
    planner: Planner,
    count: Counting,
) -> BatchFigures:
    """``batch`` with what only its own pages tell: many plans and counts of sheets."""
    project = batch.project
    on_other = tuple(on_other_sheets(project, supplies, other_sheets, planner))
    return replace(
        batch,
        from_one_sheet=tuple(_from_one_sheet(project, supplies, planner)),
        on_other=on_other,
        for_makes=for_makes(project, batch.cost, supplies, count),
        for_makes_on=tuple(for_makes_on(project, batch.cost, on_other, count)),
    )


def all_in_full(figures: Figures, planner: Planner, count: Counting) -> Figures:
    """``figures`` with every batch :func:`in_full`."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    sheets = figures.settings.other_sheets
    batches = {
        slug: in_full(batch, supplies, sheets, planner, count) for slug, batch in figures.batches.items()
    }
    return replace(figures, batches=batches)


def with_the_drawer(figures: Figures, planner: Planner) -> Figures:
    """``figures``, which say how often each batch could be made from what is on hand, and what that gives."""
    if figures.ledger is None:
        return figures
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    there = on_hand(figures.ledger, supplies)
    batches = {
        slug: replace(batch, from_drawer=from_the_drawer(batch.project, there, supplies, planner))
        for slug, batch in figures.batches.items()
    }
    wanted = wanted_parts(figures.archive.projects, supplies)
    become = tuple(could_become(equal_pieces(there.lying, supplies), wanted, planner))
    return replace(figures, batches=batches, could_become=become)


def _from_one_sheet(project: Project, supplies: Supplies, planner: Planner) -> Iterator[PartFromSheet]:
    for part in project.cut_parts:
        for slug in part.papers:
            asked = OneSize(supplies[slug].usable, part.cut_size, part.turns, project.kerf)
            yield PartFromSheet(part.letter, slug, planner.of_one_size(asked))


def _too_large(project: Project, supplies: Supplies) -> Iterator[Problem]:
    """A part that lies on no sheet of any of its papers, once they are trimmed."""
    for part in project.cut_parts:
        papers = [supplies[slug] for slug in part.papers]
        if papers and not any(_fits(part, paper.usable) for paper in papers):
            unit, paper = project.unit, papers[0]
            trimmed = (
                f", of which {show_size(paper.usable, unit)} {unit.value} is left after trimming"
                if paper.usable != paper.sheet
                else ""
            )
            yield Problem(
                part.place,
                f"{part.letter} is {show_size(part.cut_size, unit)} {unit.value} and does not fit a"
                f" {paper.unit} of {paper.name}, {show_size(paper.sheet, unit)} {unit.value}{trimmed}",
            )


def _fits(part: Part, sheet: Size) -> bool:
    return any(
        size.width <= sheet.width and size.height <= sheet.height
        for size in ((part.cut_size, part.cut_size.turned) if part.turns else (part.cut_size,))
    )


def _misfits(batch: BatchFigures, supplies: Supplies) -> Iterator[Problem]:
    """What the record says was made, held against what it says was cut."""
    project = batch.project
    made = f"{project.finished} {project.name_of(project.finished)}"
    if batch.paper_unknown:
        yield _notice(project.place, "the record does not say what was cut, so the paper is not in the cost")
    if not project.cut:
        return
    if batch.paper is not None and batch.paper.waste < 0 <= batch.paper.cut - batch.paper.kept:
        yield Problem(
            project.cut[0].place, f"the parts of {made} and what was kept need more paper than was cut"
        )
    elif batch.taken and batch.cutting and batch.cutting.most and batch.cutting.most.bound < project.finished:
        most = batch.cutting.most.bound
        yield _notice(
            project.cut[0].place,
            f"by through cuts these sheets give at most {most} {project.name_of(most)},"
            f" and the record says {project.finished}",
        )
    for part in uncut_parts(project, supplies):
        yield _notice(
            part.place, f"nothing was cut that {part.letter} could come from; it is left out of the plan"
        )
    parts = project.cut_parts
    for cut in project.cut:
        if parts and not any(may_come_from(part, cut.supply, supplies) for part in parts):
            yield _notice(cut.place, f"no part is cut from {supplies[cut.supply].name}")


def _notice(place: Place, sentence: str) -> Problem:
    return Problem(place, sentence, Weight.NOTICE)
