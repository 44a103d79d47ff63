"""A batch in one sentence: made, from what, what it could have been, what one cost, how long."""

from __future__ import annotations

from collections.abc import Mapping

from batchleaf.core.costing import BatchCost
from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Cut, Project, Supply
from batchleaf.measure.durations import show_minutes
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.pages import Line, Link
from batchleaf.views.words import capitalised, counted, joined, listed

Supplies = Mapping[str, Supply]


def batch_sentence(batch: BatchFigures, supplies: Supplies, currency: Currency) -> Line:
    """The sentence under the title, with a link at each figure that was worked out."""
    here = site_map.batch(batch.project.slug)
    return (
        *_made(batch.project, supplies, here),
        *_could_have(batch, here),
        *((". ", *priced) if (priced := _priced(batch, supplies, currency)) else (".",)),
    )


def short_line(batch: BatchFigures, currency: Currency) -> str:
    """The batch in a few words, for galleries."""
    price = cost_of_one(batch.cost, currency)
    made = made_of_begun(batch.project)
    return f"{made}, {price} each." if price else f"{made}."


def made_or_planned(project: Project) -> str:
    """``22 bookmarks``; ``24 bookmarks planned`` before anything is cut."""
    if project.status.moves_the_drawer:
        return counted(project.finished, project.thing, project.things)
    return f"{counted(project.begun, project.thing, project.things)} planned"


def made_of_begun(project: Project) -> str:
    """``22 of 24 bookmarks``, or ``22 bookmarks`` where nothing was spoiled."""
    if project.finished == project.begun or not project.status.moves_the_drawer:
        return made_or_planned(project)
    return f"{project.finished} of {project.begun} {project.things}"


def cost_of_one(cost: BatchCost, currency: Currency) -> str:
    """``0.73 €``, ``at least 0.61 €``, or nothing where nothing finished or nothing was counted."""
    if cost.one is None or not is_counted(cost):
        return ""
    shown = currency.show_with_sign(cost.one)
    return f"at least {shown}" if cost.without else shown


def is_counted(cost: BatchCost) -> bool:
    """True where at least one supply was measured, so that a cost means something."""
    return any(line.measured for line in cost.lines)


def without(cost: BatchCost, supplies: Supplies) -> str:
    """`` (without the ember card)`` where a price is not known."""
    names = [f"the {supplies[slug].name}" for slug in cost.without]
    return f" (without {listed(names)})" if names else ""


def _made(project: Project, supplies: Supplies, here: str) -> Line:
    papers = taken_papers(project, supplies, here)
    made = made_or_planned(project)
    return (f"{made} from ", *papers) if papers else (made,)


def taken_papers(project: Project, supplies: Supplies, here: str) -> Line:
    """``5 sheets of chalk card, 1 sheet each of ripple green and dusk rose and 2 scraps of ember``.

    Papers of which equally much was taken are said together.
    """
    alike: dict[str, list[str]] = {}
    for cut in project.cut:
        slugs = alike.setdefault(_taken(cut, supplies[cut.supply]), [])
        slugs += [] if cut.supply in slugs else [cut.supply]
    pieces: list[Line] = []
    for taken, slugs in alike.items():
        links: list[Line] = [
            (Link(supplies[slug].name, site_map.href(here, site_map.item(slug))),) for slug in slugs
        ]
        each = " each" if len(slugs) > 1 else ""
        pieces.append((Link(taken, "#plan"), f"{each} of ", *joined(links, ", ", " and ")))
    return joined(pieces, ", ", " and ")


def _taken(cut: Cut, supply: Supply) -> str:
    if cut.scrap is not None:
        return counted(cut.count, "scrap", "scraps")
    return counted(cut.count, supply.unit, supply.units)


def _could_have(batch: BatchFigures, here: str) -> Line:
    cutting = batch.cutting
    if cutting is None or cutting.most.makes <= batch.project.finished:
        return ()
    least = "" if cutting.most.proved else "at least "
    return (f"; these sheets could have given {least}", Link(str(cutting.most.makes), "#paper"))


def _priced(batch: BatchFigures, supplies: Supplies, currency: Currency) -> Line:
    time = f"{show_minutes(batch.project.minutes)} at the table" if batch.project.minutes else ""
    cost = batch.cost
    if cost.one is None or not is_counted(cost):
        return (f"{capitalised(time)}.",) if time else ()
    price = Link(currency.show_with_sign(cost.one), "#cost")
    return (
        *(("At least ",) if cost.without else ()),
        price,
        f" each{without(cost, supplies)}, {time}." if time else f" each{without(cost, supplies)}.",
    )
