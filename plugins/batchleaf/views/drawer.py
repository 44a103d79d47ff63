"""The index of supplies, each on its shelf; of the drawer also what is on hand."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import NOTHING
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Supply
from batchleaf.measure.display import show_size
from batchleaf.views import site_map
from batchleaf.views.buying import buy_next, things_to_buy
from batchleaf.views.colour_words import colours_in_words
from batchleaf.views.colours import has_colours
from batchleaf.views.disclosure import disclosure_for
from batchleaf.views.item_facts import weight_in_words
from batchleaf.views.pages import DrawerPage, DrawerRow, DrawerShelf, Line, Link
from batchleaf.views.stock import (
    Stock,
    batches_using,
    in_the_column,
    last_use,
    on_shelves,
    stock_of,
    worth_in_words,
)
from batchleaf.views.tables.drawer import drawer_table
from batchleaf.views.words import capitalised, counted, in_batches, long_date, money, number_word

Order = Callable[[Supply], tuple[int | Fraction, ...]]
"""What a supply is sorted by."""
BY_SHELF: Final = "by shelf"
MOST_NAMED: Final = 3
"""Batches that a supply is in, by name; glue and tape are in nearly all."""


def supplies_page(figures: Figures) -> DrawerPage:
    """All supplies, by kind; the papers of a pad stand on its own page."""
    supplies, orders = on_shelves(figures), list(_orders(figures, None))
    batches = [batch for batch in figures.batches.values() if batch.used]
    used = f", used {in_batches(len(batches))}" if batches else ""
    return DrawerPage(
        title="Supplies",
        sentence=(f"{_how_many(supplies)}{used}.",),
        currency="",
        shelves=_shelves([(supply, _row(supply, figures)) for supply in supplies], orders),
        orders=(BY_SHELF, *(name for name, _ in orders)),
        csv=drawer_table(figures).link(site_map.DRAWER),
        by_hue=_by_hue(figures),
    )


def drawer_page(figures: Figures, ledger: Ledger) -> DrawerPage:
    """The same, with what is on hand and what it is worth."""
    supplies, orders = on_shelves(figures), list(_orders(figures, ledger))
    return DrawerPage(
        title="Drawer",
        sentence=_sentence(figures, ledger, supplies),
        currency=figures.settings.currency.sign,
        shelves=_shelves([(supply, _with_stock(supply, figures, ledger)) for supply in supplies], orders),
        orders=(BY_SHELF, *(name for name, _ in orders)),
        buy_next=buy_next(figures, ledger),
        disclosure=disclosure_for(things_to_buy(figures, ledger), figures.settings),
        csv=drawer_table(figures).link(site_map.DRAWER),
        by_hue=_by_hue(figures),
    )


def _by_hue(figures: Figures) -> Link | None:
    there = site_map.href(site_map.DRAWER, site_map.COLOURS)
    return Link("All colours, by hue", there) if has_colours(figures) else None


def _shelves(
    rows: Sequence[tuple[Supply, DrawerRow]], orders: Sequence[tuple[str, Order]]
) -> tuple[DrawerShelf, ...]:
    """The rows by kind, each with its place in the other orders."""
    placed: dict[str, list[DrawerRow]] = {}
    ranks = [_ranks([supply for supply, _ in rows], order) for _, order in orders]
    for supply, row in sorted(rows, key=lambda pair: pair[0].kind):
        places = tuple(rank[supply.slug] for rank in ranks)
        placed.setdefault(supply.kind, []).append(replace(row, places=places))
    return tuple(DrawerShelf(capitalised(kind), tuple(mine)) for kind, mine in placed.items())


# --- other orders ----------------------------------------------------------------


def _orders(figures: Figures, ledger: Ledger | None) -> Iterator[tuple[str, Order]]:
    """By what the rows may be put in order: the name of each order, and by what it sorts."""
    yield "by name", lambda supply: ()
    if ledger:
        stocks = {supply.slug: stock_of(supply, figures, ledger) for supply in on_shelves(figures)}
        yield "by worth", lambda supply: (-stocks[supply.slug].worth.known,)
        yield "by what is on hand", lambda supply: _least_last(stocks[supply.slug])
    yield "by last use", lambda supply: (_oldest_last(last_use(supply, figures)),)


def _least_last(stock: Stock) -> tuple[int | Fraction, ...]:
    return -stock.quantity, -stock.kept


def _oldest_last(date: dt.date | None) -> int:
    return -date.toordinal() if date else 0


def _ranks(supplies: Sequence[Supply], order: Order) -> dict[str, int]:
    """The place of each supply; those that are alike stand by name."""
    ordered = sorted(supplies, key=lambda supply: (order(supply), supply.name.casefold(), supply.slug))
    return {supply.slug: place for place, supply in enumerate(ordered)}


# --- rows ------------------------------------------------------------------------


def _how_many(supplies: Sequence[Supply]) -> str:
    noun = "supply" if len(supplies) == 1 else "supplies"
    return f"{capitalised(number_word(len(supplies)))} {noun}"


def _sentence(figures: Figures, ledger: Ledger, supplies: Sequence[Supply]) -> Line:
    here = ledger.balances
    kept = sum((balance.quantity for balance in here if balance.holding.piece), start=0)
    worth = sum((balance.cost for balance in here), NOTHING)
    shown = worth_in_words(worth, figures.settings.currency)
    as_of = f", as of {long_date(figures.as_of)}" if figures.as_of else ""
    end = f", worth {shown} together{as_of}."
    if not kept:
        return (f"{_how_many(supplies)}{end}",)
    there = site_map.href(site_map.DRAWER, site_map.OFFCUTS)
    pieces = Link(counted(int(kept), "kept piece", "kept pieces"), there)
    return (f"{_how_many(supplies)} and ", pieces, end)


def _with_stock(supply: Supply, figures: Figures, ledger: Ledger) -> DrawerRow:
    stock = stock_of(supply, figures, ledger)
    return replace(
        _row(supply, figures),
        on_hand=in_the_column(supply, figures, ledger),
        worth=money(stock.worth, figures.settings.currency) if stock.moved else "",
    )


def _row(supply: Supply, figures: Figures) -> DrawerRow:
    return DrawerRow(
        supply=Link(supply.name, site_map.href(site_map.DRAWER, site_map.item(supply.slug))),
        swatch=supply.colour,
        colours=colours_in_words(supply),
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
