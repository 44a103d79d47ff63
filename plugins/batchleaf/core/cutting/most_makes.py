"""How many makes the sheets at hand can give."""

from __future__ import annotations

from batchleaf.core.cutting import reasons
from batchleaf.core.cutting.choose import Chosen, cheapest, cost_of, fewest_plans
from batchleaf.core.cutting.effort import Effort, Stop
from batchleaf.core.cutting.job import Job
from batchleaf.core.cutting.plan import CuttingPlan
from batchleaf.core.cutting.question import asked
from batchleaf.core.cutting.search import Search, begin, finish
from batchleaf.core.cutting.strips import stops_of
from batchleaf.core.cutting.write_up import sheet_plans, spares_of


def most_makes(job: Job, *, stop: Stop | None = None) -> CuttingPlan:
    """The most full sets of parts that the stocks of ``job`` can give by through cuts.

    ``stop`` is told how many steps of work are done and returns True to end the
    search; what comes back then is the best that was found, with a bound that
    holds. Raises :class:`ValueError` where a stock has no limit.
    """
    if any(stock.have is None for stock in job.stocks):
        raise ValueError("the most makes are asked of sheets that are counted")
    if not job.parts:
        return CuttingPlan(0, 0, reasons.nothing_wanted(), (), ())
    question = asked(job)
    if question.stranded:
        return CuttingPlan(0, 0, reasons.fits_nothing(job, question.stranded), (), ())
    effort = Effort(stop)
    searches = [begin(question.whole.sheets, terms, effort) for terms in question.groups]
    makes, bound = _together(searches)
    chosen = tuple(cut for search in searches for cut in _chosen(search, makes)) if makes else ()
    plans = sheet_plans(job, question.whole, chosen, makes)
    reason = reasons.why_no_more(job, question.whole, makes, bound)
    return CuttingPlan(makes, bound, reason, plans, spares_of(job, plans, makes))


def _together(searches: list[Search]) -> tuple[int, int]:
    """The makes and the bound of the poorest group; richer ones only have to keep up."""
    makes = bound = max(search.bound.at_most for search in searches)
    for search in sorted(searches, key=lambda search: search.bound.at_most):
        found, at_most = finish(search, makes)
        makes, bound = min(makes, found), min(bound, at_most)
    return makes, bound


def _chosen(search: Search, makes: int) -> Chosen:
    """Few sheets, then few different plans, then few settings."""
    patterns, terms = search.pool.patterns, search.terms.times(makes)
    chosen = cheapest(patterns, terms, 1).chosen
    if chosen is None:
        raise AssertionError("patterns that gave these makes no longer do")
    stops = [stops_of(pattern.piece) for pattern in patterns]
    return fewest_plans(patterns, terms, 1, cost_of(chosen, terms), stops) or chosen
