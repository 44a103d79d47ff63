"""The cutting of one batch: what its sheets could have given, and how to cut the makes begun.

Before anything is cut, the sheets that the makes need take the place of those
that were cut.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache, partial
from typing import Final

from batchleaf.core.cutting.job import Job, PartKind, Stock
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import CostPlan, CuttingPlan, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.facts import Cut, Part, Project, Supply
from batchleaf.measure.money import share

Supplies = Mapping[str, Supply]

MOST_STEPS: Final = 6_000
"""Work on one question for a page: about a second and a half. A plan on a page need not be the cheapest."""
COST_STEPS: Final = 3_000


@dataclass(frozen=True, slots=True)
class Planner:
    """Answers the two questions about a batch's sheets, perhaps from memory."""

    most: Callable[[Job], CuttingPlan]
    cheapest: Callable[[Job, int], CostPlan]


PLANNER: Final = Planner(
    most=partial(most_makes, stop=lambda steps: steps > MOST_STEPS),
    cheapest=partial(least_cost, stop=lambda steps: steps > COST_STEPS),
)


def remembering(planner: Planner, answers: int = 20_000) -> Planner:
    """``planner`` with a memory: a job says all that its plan depends on."""
    memory = lru_cache(maxsize=answers)
    return Planner(most=memory(planner.most), cheapest=memory(planner.cheapest))


@dataclass(frozen=True, slots=True)
class Cutting:
    """How the makes begun are cut, from as little paper as that takes and scraps first.

    ``makes``: how many the plans give, fewer than were begun where the sheets do not reach.
    ``sheets``: stock id → the line of the record it stands for, or, before anything
    is cut, the sheets that are needed. ``most``: the most makes that the sheets could
    have given; ``None`` before anything is cut. ``spares``: (part, how many) the plans
    give beyond the makes.
    """

    job: Job
    sheets: Mapping[str, Cut]
    most: CuttingPlan | None
    makes: int
    plans: tuple[SheetPlan, ...]
    spares: tuple[tuple[str, int], ...]


def cutting_of(project: Project, supplies: Supplies, planner: Planner) -> Cutting | None:
    """The cutting of a batch; ``None`` where nothing is cut from sheets."""
    if project.cut:
        return _of_sheets_cut(project, supplies, planner)
    return None if project.status.moves_the_drawer else _of_sheets_needed(project, supplies, planner)


def uncut_parts(project: Project) -> tuple[Part, ...]:
    """The parts of which no paper is among what was cut."""
    cut = {line.supply for line in project.cut}
    return tuple(part for part in project.parts if not cut.intersection(part.papers))


def _of_sheets_cut(project: Project, supplies: Supplies, planner: Planner) -> Cutting | None:
    sheets = {f"s{i}": cut for i, cut in enumerate(project.cut)}
    stocks = tuple(_stock(id_, cut, cut.count, supplies) for id_, cut in sheets.items())
    left_out = uncut_parts(project)
    parts = tuple(_kind(part, sheets) for part in project.parts if part not in left_out)
    if not parts:
        return None
    job = Job(stocks, parts)
    most = planner.most(job)
    makes = min(project.begun, most.makes)
    plan = _dealt_round(job, project, makes, sheets, planner) or planner.cheapest(job, makes)
    if plan.cost is None:
        return Cutting(job, sheets, most, most.makes, most.plans, most.spares)
    return Cutting(job, sheets, most, makes, plan.plans, plan.spares)


def _of_sheets_needed(project: Project, supplies: Supplies, planner: Planner) -> Cutting | None:
    papers = dict.fromkeys(slug for part in project.parts for slug in part.papers)
    sheets = {f"s{i}": Cut(slug, 1, None) for i, slug in enumerate(papers)}
    stocks = tuple(_stock(id_, cut, None, supplies) for id_, cut in sheets.items())
    job = Job(stocks, tuple(_kind(part, sheets) for part in project.parts))
    plan = _dealt_round(job, project, project.begun, sheets, planner) if project.parts else None
    if plan is None:
        return None
    needed = Counter[str]()
    for sheet_plan in plan.plans:
        needed[sheet_plan.stock] += sheet_plan.times
    counted = {id_: replace(cut, count=needed[id_]) for id_, cut in sheets.items() if needed[id_]}
    return Cutting(job, counted, None, project.begun, plan.plans, plan.spares)


def _stock(id_: str, cut: Cut, have: int | None, supplies: Supplies) -> Stock:
    """A sheet costs its area, so that the least paper is sought; a scrap costs nothing."""
    supply = supplies[cut.supply]
    size = cut.scrap or supply.sheet
    worth = Fraction(0) if cut.scrap else size.area
    return Stock(id_, size, have=have, cost=worth, scrap=cut.scrap is not None, name=supply.name)


def _kind(part: Part, sheets: Mapping[str, Cut]) -> PartKind:
    return PartKind(
        id=part.letter,
        size=part.size,
        each=part.each,
        turns=part.turns,
        sources=_sources(part.papers, sheets),
        name=part.name,
    )


def _sources(papers: tuple[str, ...], sheets: Mapping[str, Cut]) -> tuple[str, ...]:
    return tuple(id_ for id_, cut in sheets.items() if cut.supply in papers)


def _dealt_round(
    job: Job, project: Project, makes: int, sheets: Mapping[str, Cut], planner: Planner
) -> CostPlan | None:
    """The cheapest sheets for ``makes`` if each part comes evenly from its papers, or ``None``."""
    kinds: list[PartKind] = []
    letters: dict[str, str] = {}
    wanted = {kind.id for kind in job.parts}
    for part in project.parts:
        if part.letter in wanted:
            for kind in _by_paper(part, makes, sheets):
                kinds.append(kind)
                letters[kind.id] = part.letter
    plan = planner.cheapest(replace(job, parts=tuple(kinds)), 1)
    if plan.cost is None:
        return None
    spares = Counter[str]()
    for id_, count in plan.spares:
        spares[letters[id_]] += count
    plans = tuple(replace(one, tree=_relettered(one.tree, letters)) for one in plan.plans)
    return replace(plan, makes=makes, plans=plans, spares=tuple(spares.items()))


def _by_paper(part: Part, makes: int, sheets: Mapping[str, Cut]) -> Iterator[PartKind]:
    """All that the makes need of one part, shared out among the papers that are there."""
    papers = [slug for slug in part.papers if _sources((slug,), sheets)]
    for slug, count in zip(papers, share(makes * part.each, [Fraction(1)] * len(papers)), strict=True):
        if count:
            kind = _kind(part, sheets)
            yield replace(kind, id=f"{part.letter} {slug}", each=count, sources=_sources((slug,), sheets))


def _relettered(tree: Node, letters: Mapping[str, str]) -> Node:
    match tree:
        case PartLeaf(part=part):
            return replace(tree, part=letters[part])
        case ThroughCut(first=first, second=second):
            return replace(tree, first=_relettered(first, letters), second=_relettered(second, letters))
        case Leftover():
            return tree
