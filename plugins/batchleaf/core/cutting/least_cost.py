"""The cheapest sheets for a number of makes."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import partial

from batchleaf.core.cutting import reasons
from batchleaf.core.cutting.charge import Asked, by_charge
from batchleaf.core.cutting.choose import Chosen
from batchleaf.core.cutting.cost_search import Cost, least_cost_of_group, patterns_for
from batchleaf.core.cutting.effort import Effort, Stop
from batchleaf.core.cutting.patterns import Pool
from batchleaf.core.cutting.plan import CostPlan, Least, SheetPlan
from batchleaf.core.cutting.question import Question, asked
from batchleaf.core.cutting.tidy import tidied
from batchleaf.core.cutting.write_up import sheet_plans, spares_of
from batchleaf.facts.jobs import Job


@dataclass(frozen=True, slots=True)
class _Solved:
    asked: Asked
    found: Cost
    pool: Pool


@dataclass(frozen=True, slots=True)
class _Found:
    question: Question
    solved: tuple[_Solved, ...]
    effort: Effort

    @property
    def cost(self) -> Fraction:
        """In the unit of the stocks' costs."""
        return sum(one.found.cost for one in self._charged) * self.question.cost_unit

    @property
    def bound(self) -> Fraction:
        """No way costs less."""
        return sum(one.found.at_least for one in self._charged) * self.question.cost_unit

    @property
    def _charged(self) -> tuple[_Solved, ...]:
        return tuple(one for one in self.solved if one.asked.charged)


def least_cost(job: Job, makes: int, *, stop: Stop | None = None) -> CostPlan:
    """The sheets that give ``makes`` full sets of parts at the least cost.

    ``stop`` as in :func:`~batchleaf.core.cutting.most_makes.most_makes`.
    """
    found = _solve(job, makes, stop)
    return found if isinstance(found, CostPlan) else _written(job, makes, found)


def least_alone(job: Job, makes: int, *, stop: Stop | None = None) -> Least:
    """The same cost and bound without a plan: to look for the easiest cuts takes most of the time."""
    found = _solve(job, makes, stop)
    return Least(found.cost, found.bound)


def _solve(job: Job, makes: int, stop: Stop | None) -> CostPlan | _Found:
    """A plan where there is nothing to choose."""
    if not makes or not job.parts:
        return CostPlan(makes, Fraction(0), Fraction(0), reasons.nothing_wanted(), (), ())
    question = asked(job)
    if question.stranded:
        return CostPlan(makes, None, None, reasons.fits_nothing(job, question.stranded), (), ())
    effort = Effort(stop)
    solved: list[_Solved] = []
    for terms in question.groups:
        for asked_for in by_charge(question.whole.sheets, terms.times(makes)):
            enough = patterns_for(asked_for.sheets, asked_for.wanted, effort)
            if enough.chosen is None:
                return _too_few(makes, never=enough.never)
            cost = least_cost_of_group(asked_for.sheets, asked_for.wanted, enough.pool, enough.chosen, effort)
            solved.append(_Solved(asked_for, cost, enough.pool))
    return _Found(question, tuple(solved), effort)


def _too_few(makes: int, *, never: bool) -> CostPlan:
    bound = None if never else Fraction(0)
    return CostPlan(makes, None, bound, reasons.too_few_sheets(makes, never=never), (), ())


def _written(job: Job, makes: int, all_found: _Found) -> CostPlan:
    chosen: Chosen = ()
    for group in all_found.solved:
        found, wanted = group.found, group.asked.wanted
        within = partial(found.bound.within, terms=wanted, cost=found.cost)
        chosen += tidied(found.chosen, group.pool, found.bound.tables, within, wanted, all_found.effort)
    return _plan(job, makes, all_found, sheet_plans(job, all_found.question.whole, chosen, makes))


def _plan(job: Job, makes: int, found: _Found, plans: tuple[SheetPlan, ...]) -> CostPlan:
    reason = reasons.why_not_cheaper(job, makes, found.cost, proved=found.cost == found.bound)
    return CostPlan(makes, found.cost, found.bound, reason, plans, spares_of(job, plans, makes))
