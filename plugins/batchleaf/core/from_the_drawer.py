"""What the drawer gives today: how often each batch could be made again from what is on hand.

    makes = the most full sets of parts that the sheets and odd pieces on hand give, each part from any of
            its papers, but no more than each other supply is enough for

Every sheet and every piece stands in the question once: the sheets of a pad by their numbers, and those
of which no record says the number apart. Spare parts are pieces like others. What is used and
not measured sets no limit.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import floor

from batchleaf.core.batch_cutting import Planner
from batchleaf.core.beyond_a_plan import beyond_a_plan
from batchleaf.core.dealing import Supplies, kind_of, may_come_from
from batchleaf.core.finished import finished_of
from batchleaf.core.movements import Ledger
from batchleaf.facts import Project, Whereabouts
from batchleaf.facts.jobs import Job, Stock
from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class Lying:
    """So many equal sheets (``piece`` None), or odd pieces of one size, of one supply."""

    supply: str
    piece: Size | None
    count: int


@dataclass(frozen=True, slots=True)
class ToGet:
    """So much of a supply more, in its own unit."""

    supply: str
    quantity: Fraction


@dataclass(frozen=True, slots=True)
class FromTheDrawer:
    """What one batch could be made of today.

    ``proved``: no way gives more than ``makes``. ``first_out``: what is used up by these makes; or, where
    no measured supply is, papers of which one more sheet gives another make, and none where
    several would be needed together. ``again``: what is lacking for as many as the batch began; ``None``
    where no way is known. ``ready``: finished ones that were kept.
    """

    project: str
    makes: int
    proved: bool
    first_out: tuple[str, ...]
    again: tuple[ToGet, ...] | None
    ready: int


@dataclass(frozen=True, slots=True)
class OnHand:
    """What lies in the drawer: pieces of paper, and how much there is of everything in its own unit."""

    lying: tuple[Lying, ...]
    amounts: Mapping[str, Fraction]


def on_hand(ledger: Ledger, supplies: Supplies) -> OnHand:
    """As the records leave it; what is less than nothing, or part of a sheet, is not there."""
    amounts = {one.holding.supply: one.quantity for one in ledger.balances if one.holding.piece is None}
    pads = {supplies[slug].pad for slug in ledger.papers}
    lying = [
        Lying(one.holding.supply, one.holding.piece, floor(one.quantity))
        for one in ledger.balances
        if supplies[one.holding.supply].size is not None
        and not (one.holding.piece is None and one.holding.supply in pads)
    ]
    numbered = [Lying(slug, None, floor(sheets)) for slug, sheets in ledger.papers.items()]
    unnamed = [Lying(slug, None, floor(sheets)) for slug, sheets in ledger.unnamed.items()]
    return OnHand(tuple(one for one in (*lying, *numbered, *unnamed) if one.count > 0), amounts)


def from_the_drawer(
    project: Project, there: OnHand, supplies: Supplies, planner: Planner
) -> FromTheDrawer | None:
    """``None`` where nothing is told that one is made of, or no plan could be followed."""
    limits = dict(_limits(project, there))
    if not (project.cut_parts or limits) or any(beyond_a_plan(project, supplies)):
        return None
    enough = min(limits.values(), default=None)
    found, bound = _from_paper(project, there, supplies, planner)
    makes = _least(found, enough) or 0
    out = tuple(slug for slug, limit in limits.items() if limit == makes)
    return FromTheDrawer(
        project=project.slug,
        makes=makes,
        proved=makes in (bound, enough),
        first_out=out or tuple(_short_papers(project, makes, there, supplies, planner)),
        again=_again(project, there, supplies, planner) if makes < project.begun else (),
        ready=finished_of(project).counts[Whereabouts.KEPT],
    )


def _least(one: int | None, other: int | None) -> int | None:
    """``None``: no limit."""
    return min((number for number in (one, other) if number is not None), default=None)


def _limits(project: Project, there: OnHand) -> Iterator[tuple[str, int]]:
    """How many makes each measured supply is enough for."""
    for slug, amount in _for_each(project).items():
        yield slug, max(floor(there.amounts.get(slug, Fraction(0)) / amount), 0)


def _for_each(project: Project) -> Mapping[str, Fraction]:
    """What one make takes of each supply besides paper, where that is told."""
    each: defaultdict[str, Fraction] = defaultdict(Fraction)
    for use in project.uses:
        if use.per_make:
            each[use.supply] += use.per_make
    return each


# --- the paper -------------------------------------------------------------------


def job_of(project: Project, lying: Sequence[Lying], supplies: Supplies) -> Job | None:
    """Every piece that some part may come from, once; ``None`` where some part can come from none."""
    parts = project.cut_parts
    pieces = [one for one in lying if any(may_come_from(part, one.supply, supplies) for part in parts)]
    stocks = {f"d{at}": one for at, one in enumerate(pieces)}
    kinds = []
    for part in parts:
        sources = tuple(id_ for id_, one in stocks.items() if may_come_from(part, one.supply, supplies))
        if not sources:
            return None
        kinds.append(kind_of(part, sources))
    return Job(tuple(_stock(id_, one, supplies) for id_, one in stocks.items()), tuple(kinds), project.kerf)


def _stock(id_: str, one: Lying, supplies: Supplies) -> Stock:
    """What is on hand costs nothing more."""
    supply = supplies[one.supply]
    size = one.piece or supply.usable
    return Stock(id_, size, one.count, Fraction(0), scrap=one.piece is not None, name=supply.name)


def _from_paper(
    project: Project, there: OnHand, supplies: Supplies, planner: Planner
) -> tuple[int | None, int | None]:
    """The most makes, and no way gives more than; ``None`` where nothing is cut."""
    if not project.cut_parts:
        return None, None
    job = job_of(project, there.lying, supplies)
    if job is None:
        return 0, 0
    plan = planner.most(job)
    return plan.makes, plan.bound


def _short_papers(
    project: Project, makes: int, there: OnHand, supplies: Supplies, planner: Planner
) -> Iterator[str]:
    """Papers of which one more sheet gives another make."""
    for slug in dict.fromkeys(slug for part in project.cut_parts for slug in part.papers):
        job = job_of(project, (*there.lying, Lying(slug, None, 1)), supplies)
        if job is not None and planner.most(job).makes > makes:
            yield slug


def _again(project: Project, there: OnHand, supplies: Supplies, planner: Planner) -> tuple[ToGet, ...] | None:
    """What to get so that there is enough for as many as the batch began; of paper the least."""
    sheets = _sheets_to_get(project, there, supplies, planner)
    if sheets is None:
        return None
    lacking = {
        slug: amount * project.begun - max(there.amounts.get(slug, Fraction(0)), Fraction(0))
        for slug, amount in _for_each(project).items()
    }
    return (*sheets, *(ToGet(slug, amount) for slug, amount in lacking.items() if amount > 0))


def _sheets_to_get(
    project: Project, there: OnHand, supplies: Supplies, planner: Planner
) -> tuple[ToGet, ...] | None:
    """Whole sheets beside what is on hand, which costs nothing."""
    papers = tuple(dict.fromkeys(slug for part in project.cut_parts for slug in part.papers))
    if not papers:
        return ()
    job = job_of(project, (*there.lying, *(Lying(slug, None, 1) for slug in papers)), supplies)
    if job is None:
        return None
    bought = {stock.id: slug for stock, slug in zip(job.stocks[-len(papers) :], papers, strict=True)}
    stocks = tuple(
        replace(stock, have=None, cost=supplies[bought[stock.id]].sheet.area) if stock.id in bought else stock
        for stock in job.stocks
    )
    plan = planner.cheapest(replace(job, stocks=stocks), project.begun)
    if plan.cost is None:
        return None
    needed: defaultdict[str, int] = defaultdict(int)
    for sheet in plan.plans:
        if sheet.stock in bought:
            needed[bought[sheet.stock]] += sheet.times
    return tuple(ToGet(slug, Fraction(count)) for slug, count in needed.items())
