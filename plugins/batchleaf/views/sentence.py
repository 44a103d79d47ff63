"""A batch in one sentence: made, from what, what it could have been, what one cost, how long."""

from __future__ import annotations

from collections.abc import Iterable

from batchleaf.core.figures import BatchFigures
from batchleaf.core.reserved import needed_sheets
from batchleaf.facts import Cut, Project, Supply
from batchleaf.measure.durations import show_minutes
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.links import supply_named, together
from batchleaf.views.pages import Line, Link, text_of
from batchleaf.views.unpriced import is_whole, missing
from batchleaf.views.words import capitalised, counted, joined, listed

Supplies = dict[str, Supply]


def batch_sentence(batch: BatchFigures, supplies: Supplies, currency: Currency) -> Line:
    """The sentence under the title, with a link at each figure that was worked out."""
    priced = _priced(batch, supplies, currency)
    return (
        *_made(batch, supplies),
        *_could_have(batch),
        *((". ", *priced) if priced else (".",)),
    )


def short_line(batch: BatchFigures, currency: Currency) -> str:
    """The batch in a few words, for galleries."""
    price = cost_of_one(batch, currency)
    made = made_of_begun(batch.project)
    return f"{made}, {price} each." if price else f"{made}."


def needs_line(batch: BatchFigures, supplies: Supplies) -> str:
    """A batch to come in a few words: ``24 bookmarks planned; they need 4 sheets of chalk card.``"""
    return f"{text_of(_made(batch, supplies))}."


def made_or_planned(project: Project) -> str:
    """``22 bookmarks``; ``24 bookmarks planned`` before anything is cut, ``24 bookmarks cut`` after that."""
    if project.status.moves_the_drawer and not project.in_hand:
        return counted(project.finished, project.thing, project.things)
    so_far = "cut" if project.in_hand else "planned"
    return f"{counted(project.begun, project.thing, project.things)} {so_far}"


def made_of_begun(project: Project) -> str:
    """``22 of 24 bookmarks``, or ``22 bookmarks`` where nothing was spoiled."""
    planned = not project.status.moves_the_drawer
    if project.finished == project.begun or planned or project.in_hand:
        return made_or_planned(project)
    return f"{project.finished} of {project.begun} {project.things}"


def cost_of_one(batch: BatchFigures, currency: Currency) -> str:
    """``0.73 €``, ``at least 0.61 €``, or nothing where nothing finished or nothing was counted."""
    if batch.one is None:
        return ""
    shown = currency.show_with_sign(batch.one)
    return shown if is_whole(batch) else f"at least {shown}"


def _made(batch: BatchFigures, supplies: Supplies) -> Line:
    made = made_or_planned(batch.project)
    if batch.project.cut:
        papers = papers_in_words(batch, batch.project.cut, supplies)
        return (f"{made} from ", *papers) if papers else (made,)
    papers = papers_in_words(batch, needed_sheets(batch), supplies)
    return (f"{made}; they need ", *papers) if papers else (made,)


def papers_in_words(batch: BatchFigures, cuts: Iterable[Cut], supplies: Supplies) -> Line:
    """``7 sheets and 1 scrap of oat card, 1 sheet each of ripple green and dusk rose``.

    Papers of which equally much was taken are said together.
    """
    here = site_map.batch(batch.project.slug)
    of_paper: dict[str, list[Cut]] = {}
    for cut in cuts:
        of_paper.setdefault(cut.supply, []).append(cut)
    alike: dict[str, list[str]] = {}
    for slug, taken_of in of_paper.items():
        alike.setdefault(_taken(taken_of, supplies[slug]), []).append(slug)
    pieces: list[Line] = []
    for taken, slugs in alike.items():
        papers = together(supplies[slug] for slug in slugs)
        links: list[Line] = [(supply_named(paper, here),) for paper in papers]
        planned = batch.cutting is not None and batch.cutting.plans
        each = " each" if len(slugs) > 1 else ""
        start = Link(taken, "#plan") if planned else taken
        pieces.append((start, f"{each} of ", *joined(links, ", ", " and ")))
    return joined(pieces, ", ", " and ")


def _taken(cuts: Iterable[Cut], supply: Supply) -> str:
    """``7 sheets and 1 scrap``."""
    whole = scraps = 0
    for cut in cuts:
        whole += 0 if cut.scrap else cut.count
        scraps += cut.count if cut.scrap else 0
    said = [counted(whole, supply.unit, supply.units)] if whole else []
    return listed([*said, *([counted(scraps, "scrap", "scraps")] if scraps else [])])


def _could_have(batch: BatchFigures) -> Line:
    most = batch.cutting.most if batch.cutting else None
    project = batch.project
    if not batch.taken or most is None:
        return ()
    if most.makes <= (project.begun if project.in_hand else project.finished):
        return ()
    least = "" if most.proved else "at least "
    return (f"; these sheets could have given {least}", Link(str(most.makes), "#paper"))


def _priced(batch: BatchFigures, supplies: Supplies, currency: Currency) -> Line:
    minutes = batch.project.minutes
    time = f"{show_minutes(minutes)} at the table" if minutes else ""
    if batch.one is None:
        return (f"{capitalised(time)}.",) if time else ()
    whole = is_whole(batch)
    without = "" if whole else f" (without {missing(batch, supplies)})"
    return (
        *(() if whole else ("At least ",)),
        Link(currency.show_with_sign(batch.one), _how_it_cost(batch)),
        f" each{without}, {time}." if time else f" each{without}.",
    )


def _how_it_cost(batch: BatchFigures) -> str:
    """The list of costs on the page, or, where it has none, how the cost is worked out."""
    if batch.cost:
        return "#cost"
    return site_map.href(site_map.batch(batch.project.slug), site_map.HOW, "cost")
