"""How many whole sheets so many makes need, as if nothing were cut yet: counted, not drawn.

Every part is dealt round over its papers, as in a plan; so each paper is a question of its own, and
papers of one size that give equal parts are one question.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from itertools import pairwise

from batchleaf.core.batch_cutting import COST_STEPS, extras_of, one_of_each, wanted_of
from batchleaf.core.beyond_a_plan import beyond_a_plan
from batchleaf.core.cutting.least_cost import least_alone
from batchleaf.core.cutting.plan import Least
from batchleaf.core.dealing import Dealt, Lot, Supplies, dealt, lots_of
from batchleaf.facts import Project
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Size

Counting = Callable[[Job], Least]
"""The fewest sheets of one stock, of which each costs 1; perhaps from memory."""


def count_sheets(job: Job) -> Least:
    """Worked out anew."""
    return least_alone(job, 1, stop=lambda steps: steps > COST_STEPS)


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


def asking_for_sheets(
    project: Project, supplies: Supplies, count: Counting
) -> Callable[[int], SheetsFor | None]:
    """The sheets as bought from which so many makes and the extra parts can be cut with the least paper.

    As if nothing were cut yet, and no scraps were there; ``None`` where no plan could be followed.
    """
    parts = project.cut_parts
    if any(beyond_a_plan(project, supplies)):
        return lambda _: None
    lots = lots_of(one_of_each(parts), parts, supplies, counted=False)

    def ask(makes: int) -> SheetsFor | None:
        kinds = dealt(wanted_of(project, parts, makes, extras_of(parts)), lots, supplies)
        sheets, area, proved = Counter[str](), Fraction(0), True
        for lot in lots:
            found = count(_job_of_one(lot, kinds, project.kerf))
            if found.cost is None:
                return None
            sheets[lot.supply] += int(found.cost)
            area += found.cost * lot.stock.cost
            proved = proved and found.cost == found.bound
        return SheetsFor(makes, tuple((slug, many) for slug, many in sheets.items() if many), area, proved)

    return ask


def _job_of_one(lot: Lot, kinds: Dealt, kerf: Fraction) -> Job:
    """All that is dealt to one paper; parts of one size are one kind, whatever they are called."""
    many = Counter[tuple[Size, bool]]()
    for kind in kinds.kinds:
        if lot.stock.id in kind.sources:
            many[kind.size, kind.turns] += kind.each
    parts = tuple(
        PartKind(str(at), size, each, turns) for at, ((size, turns), each) in enumerate(many.items()) if each
    )
    return Job((Stock("sheet", lot.stock.size, None, Fraction(1)),), parts, kerf)


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
