"""The cheapest sheets for a number of makes."""

from __future__ import annotations

from fractions import Fraction
from functools import partial

from batchleaf.core.cutting import reasons
from batchleaf.core.cutting.choose import Chosen
from batchleaf.core.cutting.cost_search import Cost, least_cost_of_group, patterns_for
from batchleaf.core.cutting.effort import Effort, Stop
from batchleaf.core.cutting.patterns import Pool
from batchleaf.core.cutting.plan import CostPlan
from batchleaf.core.cutting.question import Question, asked
from batchleaf.core.cutting.tidy import tidied
from batchleaf.core.cutting.write_up import sheet_plans, spares_of
from batchleaf.facts.jobs import Job


def least_cost(job: Job, makes: int, *, stop: Stop | None = None) -> CostPlan:
    """The sheets that give ``makes`` full sets of parts at the least cost.

    ``stop`` as in :func:`~batchleaf.core.cutting.most_makes.most_makes`.
    """
    if not makes or not job.parts:
        return CostPlan(makes, Fraction(0), Fraction(0), reasons.nothing_wanted(), (), ())
    question = asked(job)
    if question.stranded:
        return CostPlan(makes, None, None, reasons.fits_nothing(job, question.stranded), (), ())
    effort = Effort(stop)
    groups: list[tuple[Cost, Pool]] = []
    for terms in question.groups:
        wanted = terms.times(makes)
        enough = patterns_for(question.whole.sheets, wanted, effort)
        if enough.chosen is None:
            return _too_few(makes, never=enough.never)
        cost = least_cost_of_group(question.whole.sheets, wanted, enough.pool, enough.chosen, effort)
        groups.append((cost, enough.pool))
    return _written(job, question, makes, groups, effort)


def _too_few(makes: int, *, never: bool) -> CostPlan:
    bound = None if never else Fraction(0)
    return CostPlan(makes, None, bound, reasons.too_few_sheets(makes, never=never), (), ())


def _written(
    job: Job, question: Question, makes: int, groups: list[tuple[Cost, Pool]], effort: Effort
) -> CostPlan:
    cost = sum(found.cost for found, _ in groups) * question.cost_unit
    bound = sum(found.at_least for found, _ in groups) * question.cost_unit
    chosen: Chosen = ()
    for (found, pool), terms in zip(groups, question.groups, strict=True):
        wanted = terms.times(makes)
        within = partial(found.bound.within, terms=wanted, cost=found.cost)
        chosen += tidied(found.chosen, pool, found.bound.tables, within, wanted, effort)
    plans = sheet_plans(job, question.whole, chosen, makes)
    reason = reasons.why_not_cheaper(proved=cost == bound)
    return CostPlan(makes, cost, bound, reason, plans, spares_of(job, plans, makes))
