"""The index of supplies, each on its shelf; of the drawer also what is on hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from batchleaf.core.cost import NOTHING
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Supply
from batchleaf.measure.display import show_size
from batchleaf.views import site_map
from batchleaf.views.item_facts import weight_in_words
from batchleaf.views.levels import there_is
from batchleaf.views.pages import DrawerPage, DrawerRow, DrawerShelf, Line, Link
from batchleaf.views.stock import batches_using, stock_of, worth_in_words
from batchleaf.views.words import capitalised, counted, in_batches, long_date, money, number_word

MOST_NAMED: Final = 3
"""Batches that a supply is in, by name; glue and tape are in nearly all."""


def supplies_page(figures: Figures) -> DrawerPage:
    """All supplies, by kind; the papers of a pad stand on its own page."""
    supplies = _on_shelves(figures)
    batches = [batch for batch in figures.batches.values() if batch.used]
    used = f", used {in_batches(len(batches))}" if batches else ""
    return DrawerPage(
        title="Supplies",
        sentence=(f"{_how_many(supplies)}{used}.",),
        currency="",
        shelves=_shelves([(supply, _row(supply, figures)) for supply in supplies]),
    )


def drawer_page(figures: Figures, ledger: Ledger) -> DrawerPage:
    """The same, with what is on hand and what it is worth."""
    supplies = _on_shelves(figures)
    return DrawerPage(
        title="Drawer",
        sentence=_sentence(figures, ledger, supplies),
        currency=figures.settings.currency.sign,
        shelves=_shelves([(supply, _with_stock(supply, figures, ledger)) for supply in supplies]),
    )


def _on_shelves(figures: Figures) -> tuple[Supply, ...]:
    return tuple(supply for supply in figures.archive.supplies if not supply.pad)


def _shelves(rows: Sequence[tuple[Supply, DrawerRow]]) -> tuple[DrawerShelf, ...]:
    kinds = sorted({supply.kind for supply, _ in rows})
    return tuple(
        DrawerShelf(capitalised(kind), tuple(row for supply, row in rows if supply.kind == kind))
        for kind in kinds
    )


def _how_many(supplies: Sequence[Supply]) -> str:
    noun = "supply" if len(supplies) == 1 else "supplies"
    return f"{capitalised(number_word(len(supplies)))} {noun}"


def _sentence(figures: Figures, ledger: Ledger, supplies: Sequence[Supply]) -> Line:
    here = ledger.balances
    kept = sum((balance.quantity for balance in here if balance.holding.piece), start=0)
    worth = sum((balance.cost for balance in here), NOTHING)
    shown = worth_in_words(worth, figures.settings.currency)
    pieces = f" and {counted(int(kept), 'kept piece', 'kept pieces')}" if kept else ""
    as_of = f", as of {long_date(figures.as_of)}" if figures.as_of else ""
    return (f"{_how_many(supplies)}{pieces}, worth {shown} together{as_of}.",)


def _with_stock(supply: Supply, figures: Figures, ledger: Ledger) -> DrawerRow:
    stock = stock_of(supply, figures, ledger)
    there = [there_is(stock.quantity, supply)] if stock.quantity else []
    there += [counted(stock.kept, "piece", "pieces")] if stock.kept else []
    return replace(
        _row(supply, figures),
        on_hand=" and ".join(there) or ("none" if stock.moved else "not counted"),
        worth=money(stock.worth, figures.settings.currency) if stock.moved else "",
    )


def _row(supply: Supply, figures: Figures) -> DrawerRow:
    return DrawerRow(
        supply=Link(supply.name, site_map.href(site_map.DRAWER, site_map.item(supply.slug))),
        swatch=supply.colour,
        about=_about(supply),
        on_hand="",
        worth="",
        used_in=_used_in(supply, figures),
    )


def _used_in(supply: Supply, figures: Figures) -> tuple[Link, ...]:
    """The newest batches with it; of many only two, and how many more its own page shows."""
    here, newest = site_map.DRAWER, batches_using(supply, figures)[::-1]
    shown = newest if len(newest) <= MOST_NAMED else newest[: MOST_NAMED - 1]
    links = tuple(
        Link(batch.project.title, site_map.href(here, site_map.batch(batch.project.slug))) for batch in shown
    )
    if len(shown) == len(newest):
        return links
    there = site_map.href(here, site_map.item(supply.slug), "went")
    return (*links, Link(f"{len(newest) - len(shown)} more", there))


def _about(supply: Supply) -> str:
    papers = counted(supply.designs, "paper", "papers") if supply.designs else ""
    size = f"{show_size(supply.size, supply.length_unit)} {supply.length_unit.value}" if supply.size else ""
    weight = supply.pounds or (weight_in_words(supply) if supply.grammage else "")
    return ", ".join(filter(None, (papers, size, weight)))
