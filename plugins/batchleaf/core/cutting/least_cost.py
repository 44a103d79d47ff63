"""The cheapest sheets for a number of makes."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.core.cutting import reasons
from batchleaf.core.cutting.choose import Chosen, Terms, fewest_plans
from batchleaf.core.cutting.cost_search import Cost, least_cost_of_group, patterns_for
from batchleaf.core.cutting.effort import Effort, Stop
from batchleaf.core.cutting.job import Job
from batchleaf.core.cutting.patterns import Pool
from batchleaf.core.cutting.plan import CostPlan
from batchleaf.core.cutting.question import Question, asked
from batchleaf.core.cutting.strips import stops_of
from batchleaf.core.cutting.write_up import sheet_plans, spares_of


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
    pools: list[Pool] = []
    for terms in question.groups:
        enough = patterns_for(question.whole.sheets, terms.times(makes), effort)
        if enough.pool is None:
            return _too_few(makes, never=enough.never)
        pools.append(enough.pool)
    found = [
        least_cost_of_group(question.whole.sheets, terms.times(makes), pool, effort)
        for terms, pool in zip(question.groups, pools, strict=True)
    ]
    return _written(job, question, makes, found, pools)


def _too_few(makes: int, *, never: bool) -> CostPlan:
    bound = None if never else Fraction(0)
    return CostPlan(makes, None, bound, reasons.too_few_sheets(makes, never=never), (), ())


def _written(job: Job, question: Question, makes: int, found: list[Cost], pools: list[Pool]) -> CostPlan:
    cost = sum(group.cost for group in found) * question.cost_unit
    bound = sum(group.at_least for group in found) * question.cost_unit
    chosen: Chosen = ()
    for group, terms, pool in zip(found, question.groups, pools, strict=True):
        chosen += _tidied(group, terms.times(makes), pool)
    plans = sheet_plans(job, question.whole, chosen, makes)
    reason = reasons.why_not_cheaper(proved=cost == bound)
    return CostPlan(makes, cost, bound, reason, plans, spares_of(job, plans, makes))


def _tidied(group: Cost, wanted: Terms, pool: Pool) -> Chosen:
    """The same cost with few different plans and few settings."""
    stops = [stops_of(pattern.piece) for pattern in pool.patterns]
    return fewest_plans(pool.patterns, wanted, 1, group.cost, stops) or group.chosen
