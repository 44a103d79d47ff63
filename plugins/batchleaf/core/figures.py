"""All figures of an archive, worked out from its facts.

Pure: the same facts give the same figures on every machine. ``stop`` bounds the
search for cutting plans by work done, never by the clock.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import partial
from typing import Final

from batchleaf.core.costing import BatchCost, batch_cost
from batchleaf.core.cutting.from_one_sheet import FromOneSheet, from_one_sheet
from batchleaf.core.cutting.job import Job, PartKind, Stock
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import CostPlan, CuttingPlan, SheetPlan
from batchleaf.core.ledger import Ledger, keep_ledger
from batchleaf.core.paper import PaperUse, paper_use
from batchleaf.facts import Archive, Cut, Part, Problem, Project, Settings, Supply, Weight


@dataclass(frozen=True, slots=True)
class Planner:
    """Answers the two questions about a batch's sheets, perhaps from memory."""

    most: Callable[[Job], CuttingPlan]
    cheapest: Callable[[Job, int], CostPlan]


@dataclass(frozen=True, slots=True)
class PartFromSheet:
    """How many of one part one sheet of one supply gives."""

    letter: str
    supply: str
    count: FromOneSheet


@dataclass(frozen=True, slots=True)
class Cutting:
    """The job that a batch's sheets pose.

    ``most``: the most makes that they could have given. ``plans``: how to cut
    the makes that were begun, from as little paper as that takes and scraps first;
    ``spares``: (part, how many) these plans give beyond that.
    """

    job: Job
    most: CuttingPlan
    plans: tuple[SheetPlan, ...]
    spares: tuple[tuple[str, int], ...]
    sheets: Mapping[str, Cut]
    """Stock id → the line of the record that it stands for."""


@dataclass(frozen=True, slots=True)
class BatchFigures:
    """Every number of one batch. Before anything is cut, ``cutting`` and ``paper`` are ``None``."""

    project: Project
    cutting: Cutting | None
    from_one_sheet: tuple[PartFromSheet, ...]
    paper: PaperUse | None
    cost: BatchCost


@dataclass(frozen=True, slots=True)
class Figures:
    """The figures of every batch by slug, the drawer over time, and what cannot be."""

    archive: Archive
    settings: Settings
    batches: Mapping[str, BatchFigures]
    ledger: Ledger
    problems: tuple[Problem, ...]

    def batches_using(self, supply: str) -> tuple[BatchFigures, ...]:
        """The batches that drew from a supply, oldest first."""
        return tuple(
            batch
            for batch in self.batches.values()
            if any(line.supply == supply for line in batch.cost.lines)
        )


MOST_STEPS: Final = 6_000
"""Work on one question for a page: about a second and a half. A plan on a page need not be the cheapest."""
COST_STEPS: Final = 3_000
PLANNER: Final = Planner(
    most=partial(most_makes, stop=lambda steps: steps > MOST_STEPS),
    cheapest=partial(least_cost, stop=lambda steps: steps > COST_STEPS),
)


def work_out(archive: Archive, settings: Settings, planner: Planner = PLANNER) -> Figures:
    """Facts to figures."""
    supplies = {supply.slug: supply for supply in archive.supplies}
    ledger = keep_ledger(archive, settings.cost_flow)
    problems = list(ledger.problems)
    batches: dict[str, BatchFigures] = {}
    for project in archive.projects:
        batch = _batch(project, supplies, ledger, planner)
        problems += _misfits(batch)
        batches[project.slug] = batch
    return Figures(archive, settings, batches, ledger, tuple(sorted(problems)))


def _batch(project: Project, supplies: dict[str, Supply], ledger: Ledger, planner: Planner) -> BatchFigures:
    return BatchFigures(
        project=project,
        cutting=_cutting(project, supplies, planner),
        from_one_sheet=tuple(_from_one_sheet(project, supplies)),
        paper=paper_use(project, supplies) if project.cut else None,
        cost=batch_cost(ledger.draws.get(project.slug, ()), project.finished),
    )


def _cutting(project: Project, supplies: dict[str, Supply], planner: Planner) -> Cutting | None:
    if not project.cut or not project.parts:
        return None
    sheets = {f"s{i}": cut for i, cut in enumerate(project.cut)}
    stocks = tuple(_stock(id_, cut, supplies) for id_, cut in sheets.items())
    parts = tuple(
        PartKind(
            id=part.letter,
            size=part.size,
            each=part.each,
            turns=part.turns,
            sources=tuple(id_ for id_, cut in sheets.items() if cut.supply in part.papers),
            name=part.name,
        )
        for part in project.parts
        if part.papers
    )
    job = Job(stocks, parts)
    most = planner.most(job)
    begun = planner.cheapest(job, project.begun) if project.begun <= most.makes else None
    if begun is None or begun.cost is None:
        return Cutting(job, most, most.plans, most.spares, sheets)
    return Cutting(job, most, begun.plans, begun.spares, sheets)


def _stock(id_: str, cut: Cut, supplies: dict[str, Supply]) -> Stock:
    size = cut.scrap or supplies[cut.supply].sheet
    worth = Fraction(0) if cut.scrap else size.area
    name = supplies[cut.supply].name
    return Stock(id_, size, have=cut.count, cost=worth, scrap=cut.scrap is not None, name=name)


def _from_one_sheet(project: Project, supplies: dict[str, Supply]) -> list[PartFromSheet]:
    return [
        PartFromSheet(part.letter, slug, from_one_sheet(sheet, part.size, turns=part.turns))
        for part in project.parts
        for slug in part.papers
        if (sheet := supplies[slug].size) is not None
    ]


def _misfits(batch: BatchFigures) -> list[Problem]:
    """What the record says was made, held against what its sheets can give."""
    project, found = batch.project, []
    if batch.paper is not None and batch.paper.waste < 0 <= batch.paper.cut - batch.paper.kept:
        found.append(
            Problem(
                project.cut[0].place,
                f"the parts of {project.finished} {project.name_of(project.finished)} and what was kept"
                " need more paper than was cut",
            )
        )
    elif batch.cutting is not None and batch.cutting.most.bound < project.finished:
        most = batch.cutting.most.bound
        found.append(
            Problem(
                project.cut[0].place,
                f"by through cuts these sheets give at most {most} {project.name_of(most)},"
                f" and the record says {project.finished}",
                Weight.NOTICE,
            )
        )
    return found


def part_named(project: Project, letter: str) -> Part:
    """The part of ``project`` with this letter."""
    return next(part for part in project.parts if part.letter == letter)
