"""The answer to a job that was asked by itself, whatever it asks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cutting.best_use import best_use
from batchleaf.core.cutting.effort import Stop
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import CostPlan, SheetPlan
from batchleaf.core.cutting.steps import LaidOut
from batchleaf.core.cutting.verify import cost_faults, faults, use_faults
from batchleaf.facts.jobs import CostQuestion, FillQuestion, Job, JobQuestion, MakesQuestion


@dataclass(frozen=True, slots=True)
class AnsweredPlan:
    """One way of cutting, with every place worked out."""

    plan: SheetPlan
    laid: LaidOut


@dataclass(frozen=True, slots=True)
class Answer:
    """``makes``, ``cost`` and ``value`` are None where the question is not about them.

    ``bound`` counts what was asked: no way of through cuts gives more makes or more value, or
    costs less. ``reason`` says in a sentence why.
    """

    makes: int | None
    cost: Fraction | None
    value: Fraction | None
    bound: Fraction
    reason: str
    spares: tuple[tuple[str, int], ...]
    plans: tuple[AnsweredPlan, ...]

    @property
    def best(self) -> Fraction:
        """What was asked for: value, else cost, else makes."""
        asked = self.value if self.value is not None else self.cost
        return asked if asked is not None else Fraction(self.makes or 0)

    @property
    def proved(self) -> bool:
        """True where the bound is met."""
        return self.best == self.bound


@dataclass(frozen=True, slots=True)
class NoAnswer:
    """Why there is none, as a sentence without its point."""

    sentence: str


def answered(question: JobQuestion, stop: Stop) -> Answer | NoAnswer:
    """The best answer that is found before ``stop`` ends the search."""
    match question:
        case MakesQuestion(job):
            return _most(job, stop)
        case CostQuestion(job, makes):
            return _least(job, makes, stop)
        case FillQuestion():
            return _filled(question, stop)


def _most(job: Job, stop: Stop) -> Answer | NoAnswer:
    plan = most_makes(job, stop=stop)
    if wrong := faults(job, plan):
        return _not_shown(wrong)
    if not plan.makes:
        return NoAnswer(plan.reason)
    return Answer(
        plan.makes, None, None, Fraction(plan.bound), plan.reason, plan.spares, _laid(plan.plans, job)
    )


def _least(job: Job, makes: int, stop: Stop) -> Answer | NoAnswer:
    plan = least_cost(job, makes, stop=stop)
    if wrong := cost_faults(job, plan):
        return _not_shown(wrong)
    if plan.cost is None or plan.bound is None:
        return NoAnswer(_too_few(job, plan, makes, stop))
    return Answer(makes, plan.cost, None, plan.bound, plan.reason, plan.spares, _laid(plan.plans, job))


def _too_few(job: Job, plan: CostPlan, makes: int, stop: Stop) -> str:
    """Why ``makes`` are too many, and, where all sheets are counted, how many they would give."""
    if any(stock.have is None for stock in job.stocks):
        return plan.reason
    most = most_makes(job, stop=stop)
    if not most.makes:
        return most.reason
    return f"{plan.reason}; they give {most.makes}" + ("" if most.proved else f", and at most {most.bound}")


def _filled(question: FillQuestion, stop: Stop) -> Answer | NoAnswer:
    use = best_use(question.stock, question.offers, kerf=question.kerf, stop=stop)
    if wrong := use_faults(question.stock, question.offers, use, kerf=question.kerf):
        return _not_shown(wrong)
    if not use.worth:
        return NoAnswer("none of these parts fits on this sheet")
    unit = question.worth_unit
    job = Job((question.stock,), tuple(offer.part for offer in question.offers), question.kerf)
    reason = (
        "no way of cutting this sheet is worth more"
        if use.proved
        else "whether another way is worth more is not known"
    )
    plans = _laid((use.plan,), job)
    return Answer(None, None, use.worth * unit, use.bound * unit, reason, (), plans)


def _not_shown(wrong: Sequence[str]) -> NoAnswer:
    """The planner was wrong: better no plan than one that spoils paper."""
    return NoAnswer(f"the plan that was found did not hold when it was checked: {wrong[0]}")


def _laid(plans: tuple[SheetPlan, ...], job: Job) -> tuple[AnsweredPlan, ...]:
    return tuple(AnsweredPlan(plan, lay_out(plan, job)) for plan in plans)
