"""From today's drawer: how often each batch could be made again, and what it would take besides."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.from_the_drawer import FromTheDrawer
from batchleaf.views import site_map
from batchleaf.views.links import supply_named
from batchleaf.views.pages import Line, Link, TodayPage, TodayRow
from batchleaf.views.sentence import Supplies
from batchleaf.views.tables.today import today_table, told_today
from batchleaf.views.words import (
    amount,
    batches_counted,
    capitalised,
    counted,
    joined,
    long_date,
    number_word,
)

HERE: Final = site_map.TODAY
_ALONE: Final = (
    "Each batch as if it were the only one: two of them may want the same sheet. What is planned has not been"
    " taken off."
)
_COUNTED: Final = (
    "Each part may come from any of its papers. Offcuts, scraps and spare parts count; what is used and not"
    " measured sets no limit."
)


def today_page(figures: Figures) -> TodayPage:
    """Those of which most can be made come first."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    found = told_today(figures)
    return TodayPage(
        title="From today’s drawer",
        sentence=_sentence(found, figures),
        rows=tuple(_row(batch, one, supplies) for batch, one in found),
        notes=(_ALONE, _COUNTED),
        how=Link("How this is worked out", site_map.href(HERE, site_map.HOW, "today")),
        csv=today_table(figures).link(HERE),
    )


def _sentence(found: tuple[tuple[BatchFigures, FromTheDrawer], ...], figures: Figures) -> Line:
    some = sum(one.makes > 0 for _, one in found)
    if not some:
        return ("Of no batch another one can be made from what is on hand.",)
    whole = sum(one.makes >= batch.project.begun for batch, one in found)
    of_all = f"{capitalised(number_word(some))} of {batches_counted(len(found))}"
    day = f", as of {long_date(figures.as_of)}" if figures.as_of else ""
    in_full = f", {number_word(whole)} of them in full" if whole else ""
    return (f"{of_all} can be made again from what is on hand{day}{in_full}.",)


def _row(batch: BatchFigures, one: FromTheDrawer, supplies: Supplies) -> TodayRow:
    project = batch.project
    return TodayRow(
        batch=Link(project.title, site_map.href(HERE, site_map.batch(project.slug))),
        makes=_makes(batch, one),
        first_out=_first_out(one, supplies),
        again_head=f"For {counted(project.begun, project.thing, project.things)}",
        again=_again(one, supplies),
        ready=str(one.ready) if one.ready else "",
    )


def _makes(batch: BatchFigures, one: FromTheDrawer) -> str:
    if not one.makes:
        return "none" if one.proved else "perhaps some"
    least = "" if one.proved else "at least "
    return f"{least}{counted(one.makes, batch.project.thing, batch.project.things)}"


def _first_out(one: FromTheDrawer, supplies: Supplies) -> Line:
    names: list[Line] = [(supply_named(supplies[slug], HERE),) for slug in one.first_out]
    if not names:
        return ("several papers together",)
    return joined(names, ", ", " or ") if one.makes and len(names) > 1 else joined(names, ", ", " and ")


def _again(one: FromTheDrawer, supplies: Supplies) -> Line:
    if one.again is None:
        return ("no way was found",)
    if not one.again:
        return ("enough",)
    return joined(list(_to_get(one, supplies)), ", ", " and ")


def _to_get(one: FromTheDrawer, supplies: Supplies) -> Iterator[Line]:
    for lacking in one.again or ():
        supply = supplies[lacking.supply]
        yield (f"{amount(lacking.quantity, supply)} of ", supply_named(supply, HERE))
