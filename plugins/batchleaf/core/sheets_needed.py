"""How many whole sheets so many makes need, as if nothing were cut yet: counted, not drawn.

The question is that of a plan with every part dealt round over its papers; only which stocks it
takes is kept of the answer.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from batchleaf.core.batch_cutting import COST_STEPS, extras_of, one_of_each, that_holds, wanted_of
from batchleaf.core.beyond_a_plan import beyond_a_plan
from batchleaf.core.cutting.least_cost import least_sheets
from batchleaf.core.cutting.plan import CostPlan
from batchleaf.core.dealing import Supplies, dealt, job_of, lots_of
from batchleaf.facts import Project
from batchleaf.facts.jobs import Job


@dataclass(frozen=True, slots=True)
class SheetCount:
    """Of each stock so many sheets, and their cost, which is their area in mm²: the least for a job.

    ``cost``: ``None`` where the job cannot be cut. ``proved``: nothing costs less.
    """

    cost: Fraction | None
    proved: bool
    sheets: tuple[tuple[str, int], ...]


Counting = Callable[[Job], SheetCount]
"""The fewest sheets for a job, perhaps from memory."""


def count_of(plan: CostPlan) -> SheetCount:
    """What a plan takes."""
    sheets = Counter[str]()
    for one in plan.plans:
        sheets[one.stock] += one.times
    return SheetCount(plan.cost, plan.proved, tuple(sheets.items()))


def count_sheets(job: Job) -> SheetCount:
    """Worked out anew, by a plan that holds when it is looked over by other means."""
    return count_of(that_holds(job, least_sheets(job, 1, stop=lambda steps: steps > COST_STEPS)))


def count_text(found: SheetCount) -> str:
    """One line of JSON."""
    cost = None if found.cost is None else str(found.cost)
    return json.dumps([cost, found.proved, found.sheets])


def read_count(text: str) -> SheetCount:
    """The count of such a line."""
    cost, proved, sheets = json.loads(text)
    return SheetCount(
        None if cost is None else Fraction(cost), proved, tuple((stock, many) for stock, many in sheets)
    )


def remembering_counts(count: Counting, answers: int = 20_000) -> Counting:
    """``count`` with a memory: a job says all that its answer depends on."""
    return lru_cache(maxsize=answers)(count)


@dataclass(frozen=True, slots=True)
class SheetsFor:
    """Whole sheets of each supply for so many makes, and their area in mm²; ``proved``: none needs less."""

    makes: int
    sheets: tuple[tuple[str, int], ...]
    area: Fraction
    proved: bool


def sheets_for(project: Project, makes: int, supplies: Supplies, count: Counting) -> SheetsFor | None:
    """The sheets as bought from which ``makes`` and the extra parts can be cut with the least paper.

    As if nothing were cut yet, and no scraps were there; ``None`` where no plan could be followed.
    """
    parts = project.cut_parts
    if not parts:
        return SheetsFor(makes, (), Fraction(0), proved=True)
    if any(beyond_a_plan(project, supplies)):
        return None
    lots = lots_of(one_of_each(parts), parts, supplies, counted=False)
    wanted = wanted_of(project, parts, makes, extras_of(parts))
    found = count(replace(job_of(lots, dealt(wanted, lots, supplies)), kerf=project.kerf))
    if found.cost is None:
        return None
    paper_of = {lot.stock.id: lot.supply for lot in lots}
    sheets = Counter[str]()
    for stock, many in found.sheets:
        sheets[paper_of[stock]] += many
    in_order = dict.fromkeys(slug for slug in paper_of.values() if sheets[slug])
    return SheetsFor(makes, tuple((slug, sheets[slug]) for slug in in_order), found.cost, found.proved)


def sheets_for_each(
    counts: Sequence[int], begun: int, ask: Callable[[int], SheetsFor | None]
) -> tuple[SheetsFor, ...]:
    """For each of the rising ``counts``, no more for fewer; nothing where one of them has no plan.

    What serves for a greater number and is the least for a smaller one is the least for all between:
    these are not asked. ``begun`` always is, so that it takes what its own plan takes.
    """
    at = sorted({0, counts.index(begun), len(counts) - 1})
    found = {i: ask(counts[i]) for i in at}
    spans = list(pairwise(at))
    while spans:
        low, high = spans.pop()
        least, most = found[low], found[high]
        if least is None or most is None:
            return ()
        middle = (low + high) // 2
        if most.area <= least.area:
            found |= {i: replace(most, proved=least.proved) for i in range(low + 1, high)}
        elif middle > low:
            found[middle] = ask(counts[middle])
            spans += [(low, middle), (middle, high)]
    every = [found[i] for i in range(len(counts))]
    return no_more_for_fewer([replace(one, makes=n) for n, one in zip(counts, every, strict=True) if one])


def no_more_for_fewer(found: Sequence[SheetsFor]) -> tuple[SheetsFor, ...]:
    """A search that ends early may find less paper for more makes: that serves for fewer as well."""
    out: list[SheetsFor] = []
    for one in reversed(found):
        least = out[-1] if out and out[-1].area < one.area else one
        out.append(replace(least, makes=one.makes))
    return tuple(reversed(out))
