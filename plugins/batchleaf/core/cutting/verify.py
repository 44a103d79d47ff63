"""A second opinion on an answer: it shares types with the search and nothing else.

Whether a bound is right is not seen from an answer; that it lies on its own side of
what was found is.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from batchleaf.core.cutting.plan import BestUse, CostPlan, CuttingPlan, SheetPlan
from batchleaf.core.cutting.verify_sheet import pieces_of
from batchleaf.facts.jobs import Job, Offer, Stock


def faults(job: Job, plan: CuttingPlan) -> tuple[str, ...]:
    """Everything that is wrong with ``plan`` as the most makes of ``job``; empty where it holds."""
    found = list(_plan_faults(job, plan.plans, plan.makes, plan.spares))
    if plan.bound < plan.makes:
        found.append(f"{plan.makes} makes are more than the bound of {plan.bound}")
    return tuple(found)


def cost_faults(job: Job, plan: CostPlan) -> tuple[str, ...]:
    """Everything that is wrong with ``plan`` as the least cost of its makes; empty where it holds."""
    if plan.cost is None:
        found = ["there are plans, and no cost"] if plan.plans else []
        found += ["there are spares of nothing"] if plan.spares else []
    else:
        found = list(_plan_faults(job, plan.plans, plan.makes, plan.spares))
        costs = {stock.id: stock.cost for stock in job.stocks}
        cost = sum((costs.get(sheet.stock, Fraction(0)) * sheet.times for sheet in plan.plans), Fraction(0))
        if cost != plan.cost:
            found.append(f"the sheets cost {cost} and not {plan.cost}")
        if plan.bound is None:
            found.append(f"there is a cost of {plan.cost}, and it is said that there is no way")
        elif plan.bound > plan.cost:
            found.append(f"a cost of {plan.cost} is less than the bound of {plan.bound}")
    if plan.bound is not None and plan.bound < 0:
        found.append(f"a bound of {plan.bound} is less than nothing")
    return tuple(found)


def use_faults(
    stock: Stock, offers: Sequence[Offer], use: BestUse, *, kerf: Fraction = Fraction(0)
) -> tuple[str, ...]:
    """Everything that is wrong with ``use`` as the best use of one sheet; empty where it holds.

    Where parts come from is not asked, as it is not in the question.
    """
    found: list[str] = []
    if (use.plan.stock, use.plan.times) != (stock.id, 1):
        found.append(f"{use.plan.times} sheets of {use.plan.stock} are cut and not one of {stock.id}")
    parts = {offer.part.id: replace(offer.part, sources=()) for offer in offers}
    pieces = pieces_of(use.plan.tree, stock, parts, kerf)
    found.extend(pieces.faults)
    worth = 0
    for offer in offers:
        many = pieces.parts[offer.part.id]
        worth += offer.worth * many
        if offer.most is not None and many > offer.most:
            found.append(f"{many} of part {offer.part.id} are cut, and at most {offer.most} are of use")
    if worth != use.worth:
        found.append(f"the parts are worth {worth} and not {use.worth}")
    if use.bound < use.worth:
        found.append(f"a worth of {use.worth} is more than the bound of {use.bound}")
    return tuple(found)


def _plan_faults(
    job: Job, plans: Sequence[SheetPlan], makes: int, spares: Sequence[tuple[str, int]]
) -> Iterator[str]:
    """Trees first; sheets and parts are counted only where all of them hold."""
    stocks = {stock.id: stock for stock in job.stocks}
    parts = {part.id: part for part in job.parts}
    cut: Counter[str] = Counter()
    told: list[str] = []
    for number, plan in enumerate(plans, 1):
        if plan.times < 1:
            told.append(f"plan {number}: {plan.times} sheets are cut like this")
        if plan.stock not in stocks:
            told.append(f"plan {number}: there is no stock {plan.stock}")
            continue
        pieces = pieces_of(plan.tree, stocks[plan.stock], parts, job.kerf)
        told.extend(f"plan {number}: {fault}" for fault in pieces.faults)
        for part, many in pieces.parts.items():
            cut[part] += many * plan.times
    yield from told
    if not told:
        yield from _stock_faults(job, plans)
        yield from _count_faults(job, cut, makes, spares)


def _stock_faults(job: Job, plans: Sequence[SheetPlan]) -> Iterator[str]:
    used: Counter[str] = Counter()
    for sheet_plan in plans:
        used[sheet_plan.stock] += sheet_plan.times
    for stock in job.stocks:
        if stock.have is not None and used[stock.id] > stock.have:
            yield f"{used[stock.id]} sheets of {stock.id} are cut and {stock.have} are there"


def _count_faults(job: Job, cut: Counter[str], makes: int, told: Sequence[tuple[str, int]]) -> Iterator[str]:
    if makes < 0:
        yield f"{makes} makes are less than none"
    spares = {}
    for part in job.parts:
        over = cut[part.id] - part.each * makes
        if over < 0:
            yield f"{cut[part.id]} of part {part.id} are too few for {makes} makes"
        if over > 0:
            spares[part.id] = over
    if dict(told) != spares or len(told) != len(spares):
        yield f"the spares are {spares} and not {dict(told)}"
