"""How many makes the sheets at hand can give."""

from __future__ import annotations

from functools import partial

from batchleaf.core.cutting import reasons
from batchleaf.core.cutting.choose import Chosen, Makes, cheapest
from batchleaf.core.cutting.effort import Effort, Stop
from batchleaf.core.cutting.plan import CuttingPlan
from batchleaf.core.cutting.question import asked
from batchleaf.core.cutting.search import Search, begin, finish
from batchleaf.core.cutting.tidy import tidied
from batchleaf.core.cutting.write_up import sheet_plans, spares_of
from batchleaf.facts.jobs import Job


def most_makes(job: Job, *, stop: Stop | None = None) -> CuttingPlan:
    """The most full sets of parts that the stocks of ``job`` can give by through cuts.

    ``stop`` is told how many steps of work are done and returns True to end the
    search, or is a :class:`~batchleaf.core.cutting.effort.Deadline`; what comes back
    then is the best that was found, with a bound that holds. Raises :class:`ValueError`
    where a stock has no limit.
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
    found = _together(searches)
    makes = min(group.makes for group in found)
    bound = min(group.at_most for group in found)
    chosen: Chosen = ()
    for search, group in zip(searches, found, strict=True):
        chosen += _chosen(search, group.chosen, makes, effort) if makes else ()
    plans = sheet_plans(job, question.whole, chosen, makes)
    reason = reasons.why_no_more(job, question.whole, makes, bound)
    return CuttingPlan(makes, bound, reason, plans, spares_of(job, plans, makes))


def _together(searches: list[Search]) -> list[Makes]:
    """The makes of each group; richer groups only have to keep up with the poorest."""
    makes = max(search.bound.at_most for search in searches)
    found: dict[int, Makes] = {}
    for at in sorted(range(len(searches)), key=lambda at: searches[at].bound.at_most):
        found[at] = finish(searches[at], makes)
        makes = min(makes, found[at].makes)
    return [found[at] for at in range(len(searches))]


def _chosen(search: Search, known: Chosen, makes: int, effort: Effort) -> Chosen:
    """Few sheets, then few different plans, then few settings; ``known`` gives as many makes."""
    terms = search.terms.times(makes)
    seconds = effort.for_tidying(0).seconds_left
    chosen = known if seconds == 0 else cheapest(search.pool.patterns, terms, seconds=seconds).chosen or known
    within = partial(search.bound.within, makes=makes)
    return tidied(chosen, search.pool, search.bound.tables, within, terms, effort)
