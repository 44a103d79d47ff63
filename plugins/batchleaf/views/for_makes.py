"""What other numbers of makes take, in words: for a reader who makes more of them, or fewer."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.figures import BatchFigures
from batchleaf.core.for_makes import ForMakes, ForMakesOn, Needed
from batchleaf.facts import Origin, Part, Project, Settings, Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import NBSP, show_number
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.links import supply_named, together
from batchleaf.views.pages import Link
from batchleaf.views.pages.for_makes import Count, ForMakesView, ForRow, FromSheets
from batchleaf.views.sentence import Supplies
from batchleaf.views.words import amount, counted, listed, money, money_said

AS_BOUGHT: Final = "as-bought"


def for_makes_view(batch: BatchFigures, supplies: Supplies, settings: Settings) -> ForMakesView | None:
    """``None`` where nothing is known to follow the number of makes."""
    found, project = batch.for_makes, batch.project
    if not found:
        return None
    every = (found, *(one.counts for one in batch.for_makes_on))
    return ForMakesView(
        sheets=tuple(_from_sheets(batch, supplies, settings.currency)),
        chosen=next(i for i, one in enumerate(found) if one.makes == project.begun),
        rows=tuple(_rows(every, supplies, site_map.batch(project.slug))),
        currency=settings.currency.sign if found[0].cost else "",
        notes=tuple(_notes(found, project, supplies)) + _notes_on_others(batch),
        in_a_class=tuple(_in_a_class(found[0], project, supplies)),
    )


def _from_sheets(batch: BatchFigures, supplies: Supplies, currency: Currency) -> Iterator[FromSheets]:
    project = batch.project
    made = counted(project.begun, project.thing, project.things)
    own = tuple(_count(one, project, supplies, currency) for one in batch.for_makes)
    yield FromSheets(AS_BOUGHT, "sheets as bought", "Sheets as bought", own)
    for other in batch.for_makes_on:
        name = other.sheet.name
        counts = tuple(_count(one, project, supplies, currency, f" from {name}") for one in other.counts)
        plan = Link(f"How {made} are cut from {name}", _plan_on(other, batch))
        yield FromSheets(name, name, f"Sheets of {name}", counts, plan)


def _plan_on(other: ForMakesOn, batch: BatchFigures) -> str:
    slug = batch.project.slug
    number = next(i for i, one in enumerate(batch.on_other, 1) if one.sheet == other.sheet)
    there = site_map.href(site_map.batch(slug), site_map.other_sheets(slug))
    return f"{there}#{site_map.other_sheet(number)}"


def _count(
    one: ForMakes, project: Project, supplies: Supplies, currency: Currency, origin: str = ""
) -> Count:
    named = f"{counted(one.makes, project.thing, project.things)}{origin}"
    sheets = sheets_in_words(one.sheets, supplies)
    needs = f"{named}: {sheets}" if sheets else named
    return Count(
        makes=one.makes,
        named=named,
        told=f"{needs}; {money_said(one.cost, currency)}." if one.cost else f"{needs}.",
        sheets=sheets,
        cost=money(one.cost, currency) if one.cost else "",
    )


def sheets_in_words(sheets: Sequence[Needed], supplies: Supplies) -> str:
    """``4 sheets of chalk card, 1 sheet each of ripple green and dusk rose``."""
    alike: dict[str, list[Supply]] = {}
    for one in sheets:
        alike.setdefault(amount(one.quantity or Fraction(0), supplies[one.supply]), []).append(
            supplies[one.supply]
        )
    return listed(
        [
            f"{much} each of {_named(papers)}" if len(papers) > 1 else f"{much} of {_named(papers)}"
            for much, papers in alike.items()
        ]
    )


def _named(papers: Sequence[Supply]) -> str:
    return listed([paper.name for paper in together(papers)])


def _rows(every: Sequence[Sequence[ForMakes]], supplies: Supplies, here: str) -> Iterator[ForRow]:
    """Sheets in the order in which more makes come to need them, then what each make takes."""
    papers = dict.fromkeys(one.supply for found in every for makes in reversed(found) for one in makes.sheets)
    for slug in papers:
        needed = tuple(
            tuple(amount(_of(makes.sheets, slug), supplies[slug]) for makes in found) for found in every
        )
        yield ForRow(supply_named(supplies[slug], here), "", "", needed)
    for row, use in enumerate(every[0][0].uses):
        supply = supplies[use.supply]
        yield ForRow(
            supply_named(supply, here),
            "" if use.scales or use.quantity is None else "for the batch",
            _amount(use, supply) if use.scales and every[0][0].makes == 1 else "",
            (tuple(_amount(makes.uses[row], supply) for makes in every[0]),),
        )


def _of(sheets: Sequence[Needed], slug: str) -> Fraction:
    return sum((one.quantity or Fraction(0) for one in sheets if one.supply == slug), Fraction(0))


def _amount(use: Needed, supply: Supply) -> str:
    return "not measured" if use.quantity is None else amount(use.quantity, supply)


def _notes(found: Sequence[ForMakes], project: Project, supplies: Supplies) -> Iterator[str]:
    if project.cut_parts:
        extras = any(part.extra for part in project.cut_parts)
        yield (
            "Sheets are whole ones, as bought, and as few as give the parts"
            f"{', with the extras' if extras else ''}; scraps would save some."
        )
    if unproved := [str(one.makes) for one in found if not one.proved]:
        yield f"Fewer may do for {listed(unproved)}: that none does was not proved."
    fixed = dict.fromkeys(one.supply for one in found[0].uses if not one.scales and one.quantity is not None)
    if fixed:
        names = listed([supplies[slug].name for slug in fixed])
        yield f"Of {names} the record says how much the whole batch takes; that stays as it is."
    if found[0].cost:
        without = dict.fromkeys(slug for one in found for slug in one.without)
        names = listed([supplies[slug].name for slug in without])
        yield f"At what the batch paid for one on average{f', without {names}' if names else ''}."


def _notes_on_others(batch: BatchFigures) -> tuple[str, ...]:
    """What is otherwise from sheets of another size."""
    if not batch.for_makes_on:
        return ()
    sizes = "Sheets of another size are taken whole, all papers in that size"
    told = any(one.cost for one in batch.for_makes)
    return (f"{sizes}; what they cost is not known, so the cost is without them." if told else f"{sizes}.",)


# --- for a class -----------------------------------------------------------------


def _in_a_class(one: ForMakes, project: Project, supplies: Supplies) -> Iterator[str]:
    """What goes into the bag of each, what is cut beforehand, what all share."""
    parts = [_part(part) for part in project.parts]
    alone = [
        _in_a_bag(use, supplies[use.supply])
        for use in one.uses
        if use.scales and one.makes == 1 and not _is_ready(use.supply, project)
    ]
    if parts:
        yield "Choose as many as there are students, and the spares."
        bag = f"In each bag: {listed(parts)}"
        yield f"{bag}; {listed(alone)}." if alone else f"{bag}."
    yield from _made_before(project)
    shared = [supplies[use.supply].name for use in one.uses if use.quantity is None]
    if shared:
        yield f"For all at the table: {listed(shared)}."


def _in_a_bag(use: Needed, supply: Supply) -> str:
    """``0.14 m of jute cord``, ``4 × foam square``; what there is one of goes by its name."""
    if is_measured(supply.unit):
        return f"{_amount(use, supply)} of {supply.name}"
    count = show_number(use.quantity or Fraction(0), 2)
    return supply.name if use.quantity == 1 else f"{count}{NBSP}×{NBSP}{supply.name}"


def _is_ready(supply: str, project: Project) -> bool:
    """A ready-made part is in the bag as a part."""
    return any(part.origin is Origin.READY and supply in part.papers for part in project.parts)


def _part(part: Part) -> str:
    times = f"{part.each}{NBSP}×{NBSP}" if part.each > 1 else ""
    return f"{times}{part.letter}{NBSP}{part.name}".rstrip()


def _made_before(project: Project) -> Iterator[str]:
    """``Cut beforehand: A and B by the plan, C by hand from scraps.``"""
    ways = ((Origin.CUT, "from the sheets"), (Origin.BY_HAND, "by hand from scraps"))
    cut = [
        f"{listed(letters)} {how}"
        for origin, how in ways
        if (letters := [part.letter for part in project.parts if part.origin is origin])
    ]
    scored = [part.letter for part in project.parts if part.scores]
    if cut:
        then = f"; {listed(scored)} scored" if scored else ""
        yield f"Cut beforehand: {listed(cut)}{then}."
