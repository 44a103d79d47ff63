"""The cutting of one batch: what its sheets could have given, and how to cut the makes begun.

Before anything is cut, the sheets that the makes need take the place of those
that were cut.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache, partial
from typing import Final

from batchleaf.core.beyond_a_plan import beyond_a_plan
from batchleaf.core.cutting.from_one_sheet import FromOneSheet, OneSize, most_from_one_sheet
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import CostPlan, CuttingPlan, SheetPlan
from batchleaf.core.cutting.verify import cost_faults, faults
from batchleaf.core.dealing import (
    Cheapest,
    Lot,
    Supplies,
    Wanted,
    as_they_come,
    dealt_round,
    kind_of,
    lots_of,
    may_come_from,
)
from batchleaf.facts import Cut, Part, Project, Rule
from batchleaf.facts.jobs import Job

MOST_STEPS: Final = 6_000
"""Work on one question for a page: about a second and a half. A plan on a page need not be the cheapest."""
COST_STEPS: Final = 3_000

Extras = tuple[tuple[str, int], ...]
"""(Part, how many) on top of what the makes need."""


@dataclass(frozen=True, slots=True)
class Planner:
    """Answers the questions about a batch's sheets, perhaps from memory."""

    most: Callable[[Job], CuttingPlan]
    cheapest: Callable[[Job, int], CostPlan]
    of_one_size: Callable[[OneSize], FromOneSheet] = most_from_one_sheet


def checked(planner: Planner) -> Planner:
    """``planner``, whose plans are shown only if they hold when they are looked over by other means."""

    def most(job: Job) -> CuttingPlan:
        plan = planner.most(job)
        return replace(NO_PLAN, bound=plan.bound) if faults(job, plan) else plan

    def cheapest(job: Job, makes: int) -> CostPlan:
        plan = planner.cheapest(job, makes)
        return CostPlan(makes, None, Fraction(0), NO_PLAN.reason, (), ()) if cost_faults(job, plan) else plan

    return Planner(most, cheapest, planner.of_one_size)


NO_PLAN: Final = CuttingPlan(0, 0, "the plan that was found did not hold when it was checked", (), ())
PLANNER: Final = checked(
    Planner(
        most=partial(most_makes, stop=lambda steps: steps > MOST_STEPS),
        cheapest=partial(least_cost, stop=lambda steps: steps > COST_STEPS),
    )
)


def remembering(planner: Planner, answers: int = 20_000) -> Planner:
    """``planner`` with a memory: a job says all that its plan depends on."""
    memory = lru_cache(maxsize=answers)
    return Planner(memory(planner.most), memory(planner.cheapest), memory(planner.of_one_size))


@dataclass(frozen=True, slots=True)
class Cutting:
    """How the makes begun are cut, from as little paper as that takes and scraps first.

    ``makes``: how many the plans give, fewer than were begun where the sheets do not reach.
    ``sheets``: stock id → the line of the record it stands for, or, before anything
    is cut, the sheets that are needed. ``most``: the most makes that the sheets could
    have given; ``None`` before anything is cut. ``extras``: what the plans give on top
    of the makes because the record asks for it; ``left_out``: the same where the sheets
    do not give it too. ``spares``: (part, how many) beyond both.
    """

    job: Job
    sheets: Mapping[str, Cut]
    most: CuttingPlan | None
    makes: int
    plans: tuple[SheetPlan, ...]
    spares: tuple[tuple[str, int], ...]
    extras: Extras = ()
    left_out: Extras = ()


def cutting_of(project: Project, supplies: Supplies, planner: Planner) -> Cutting | None:
    """The cutting of a batch; ``None`` where nothing is cut from sheets, or no plan could be followed."""
    if any(beyond_a_plan(project, supplies)):
        return None
    if project.cut:
        return _of_sheets_cut(project, supplies, planner)
    return None if project.status.moves_the_drawer else _of_sheets_needed(project, supplies, planner)


def uncut_parts(project: Project, supplies: Supplies) -> tuple[Part, ...]:
    """The parts that come from sheets, and of whose papers none is among what was cut."""
    cut = {line.supply for line in project.cut}
    return tuple(
        part for part in project.cut_parts if not any(may_come_from(part, supply, supplies) for supply in cut)
    )


def _of_sheets_cut(project: Project, supplies: Supplies, planner: Planner) -> Cutting | None:
    sheets = {f"s{i}": cut for i, cut in enumerate(project.cut)}
    left_out = uncut_parts(project, supplies)
    parts = tuple(part for part in project.cut_parts if part not in left_out)
    if not parts:
        return None
    job = _job(parts, sheets, supplies, project.kerf, counted=True)
    most = planner.most(job)
    makes = min(project.begun, most.makes)
    lots = lots_of(sheets, parts, supplies, counted=True)
    for extras in _tries(parts, makes):
        wanted = wanted_of(project, parts, makes, extras)
        plan = _cheapest(wanted, lots, supplies, _asking(planner, project.kerf))
        if plan:
            asked = extras_of(parts) if makes else ()
            return Cutting(job, sheets, most, makes, plan.plans, plan.spares, extras, () if extras else asked)
    return Cutting(job, sheets, most, most.makes, most.plans, most.spares, left_out=extras_of(parts))


def _of_sheets_needed(project: Project, supplies: Supplies, planner: Planner) -> Cutting | None:
    found = _plan_of_sheets_needed(project, supplies, planner)
    if found is None:
        return None
    counted, plan = found
    parts = project.cut_parts
    job = _job(parts, one_of_each(parts), supplies, project.kerf, counted=False)
    return Cutting(job, counted, None, project.begun, plan.plans, plan.spares, extras_of(parts))


def one_of_each(parts: Sequence[Part]) -> dict[str, Cut]:
    """A line of the record for each paper, as it stands before it is known how many sheets there are."""
    papers = dict.fromkeys(slug for part in parts for slug in part.papers)
    return {f"s{i}": Cut(slug, 1, None) for i, slug in enumerate(papers)}


def _plan_of_sheets_needed(
    project: Project, supplies: Supplies, planner: Planner
) -> tuple[dict[str, Cut], CostPlan] | None:
    """The lines of the sheets that are needed, and the plan of the least paper."""
    parts = project.cut_parts
    if not parts:
        return None
    sheets = one_of_each(parts)
    lots = lots_of(sheets, parts, supplies, counted=False)
    wanted = wanted_of(project, parts, project.begun, extras_of(parts))
    plan = dealt_round(wanted, lots, supplies, _asking(planner, project.kerf))
    if plan.cost is None:
        return None
    needed = Counter[str]()
    for sheet_plan in plan.plans:
        needed[sheet_plan.stock] += sheet_plan.times
    return {id_: replace(cut, count=needed[id_]) for id_, cut in sheets.items() if needed[id_]}, plan


def _job(
    parts: Sequence[Part], sheets: Mapping[str, Cut], supplies: Supplies, kerf: Fraction, *, counted: bool
) -> Job:
    """Full sets of parts from the lines of the record, each line one stock."""
    lots = lots_of(sheets, (), supplies, counted=counted)
    kinds = tuple(
        kind_of(part, tuple(lot.line for lot in lots if may_come_from(part, lot.supply, supplies)))
        for part in parts
    )
    return Job(tuple(lot.stock for lot in lots), kinds, kerf)


def _asking(planner: Planner, kerf: Fraction) -> Cheapest:
    """How the least cost is asked, with what each cut takes away."""
    return lambda job, makes: planner.cheapest(replace(job, kerf=kerf), makes)


def extras_of(parts: Sequence[Part]) -> Extras:
    """What the record asks for of each part on top of the makes."""
    return tuple((part.letter, part.extra) for part in parts if part.extra)


def _tries(parts: Sequence[Part], makes: int) -> Iterator[Extras]:
    """With all the extras first, then with none; where nothing is made, there is nothing on top of it."""
    extras = extras_of(parts)
    if extras and makes:
        yield extras
    yield ()


def wanted_of(project: Project, parts: Sequence[Part], makes: int, extras: Extras) -> tuple[Wanted, ...]:
    """How many of each part ``makes`` take, with ``extras``."""
    more, alike = dict(extras), alike_in(project)
    return tuple(
        Wanted(part, makes * part.each + more.get(part.letter, 0), alike=part.letter in alike)
        for part in parts
    )


def alike_in(project: Project) -> frozenset[str]:
    """The letters of the parts that come from one paper in each make."""
    ruled = (one.letters for one in project.collating if one.rule is Rule.ALIKE)
    return frozenset(letter for letters in ruled for letter in letters)


def _cheapest(
    wanted: Sequence[Wanted], lots: Sequence[Lot], supplies: Supplies, ask: Cheapest
) -> CostPlan | None:
    """Dealt round where the sheets allow it, else as it comes; ``None`` where neither is found."""
    for way in (dealt_round, as_they_come):
        plan = way(wanted, lots, supplies, ask)
        if plan.cost is not None:
            return plan
    return None
