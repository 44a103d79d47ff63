"""The drawer's index: every supply on its shelf, with what is on hand."""

from __future__ import annotations

from batchleaf.core.cost import NOTHING
from batchleaf.core.figures import Figures
from batchleaf.facts import Supply
from batchleaf.measure.display import show_size
from batchleaf.views import site_map
from batchleaf.views.item_facts import weight_in_words
from batchleaf.views.pages import DrawerPage, DrawerRow, DrawerShelf, Line, Link
from batchleaf.views.stock import batches_using, stock_of, worth_in_words
from batchleaf.views.words import capitalised, counted, money, number_of, number_word


def drawer_page(figures: Figures) -> DrawerPage:
    """All supplies, by kind; the papers of a pad stand on its own page."""
    supplies = [supply for supply in figures.archive.supplies if not supply.pad]
    kinds = sorted({supply.kind for supply in supplies})
    return DrawerPage(
        title="Drawer",
        sentence=_sentence(figures, len(supplies)),
        currency=figures.settings.currency.sign,
        shelves=tuple(
            DrawerShelf(
                capitalised(kind),
                tuple(_row(supply, figures) for supply in supplies if supply.kind == kind),
            )
            for kind in kinds
        ),
    )


def _sentence(figures: Figures, supplies: int) -> Line:
    here = figures.ledger.balances
    kept = sum((balance.quantity for balance in here if balance.holding.piece), start=0)
    worth = sum((balance.cost for balance in here), NOTHING)
    shown = worth_in_words(worth, figures.settings.currency)
    count = capitalised(number_word(supplies))
    pieces = f" and {counted(int(kept), 'kept piece', 'kept pieces')}" if kept else ""
    noun = "supply" if supplies == 1 else "supplies"
    return (f"{count} {noun}{pieces}, worth {shown} together.",)


def _row(supply: Supply, figures: Figures) -> DrawerRow:
    stock = stock_of(supply, figures)
    there = [number_of(stock.quantity, supply)] if stock.quantity else []
    there += [counted(stock.kept, "piece", "pieces")] if stock.kept else []
    return DrawerRow(
        supply=Link(supply.name, site_map.href(site_map.DRAWER, site_map.item(supply.slug))),
        swatch=supply.colour,
        about=_about(supply),
        on_hand=" and ".join(there) or ("none" if stock.moved else "not counted"),
        worth=money(stock.worth, figures.settings.currency) if stock.moved else "",
        used_in=tuple(
            Link(batch.project.title, site_map.href(site_map.DRAWER, site_map.batch(batch.project.slug)))
            for batch in batches_using(supply, figures)
        ),
    )


def _about(supply: Supply) -> str:
    papers = counted(supply.designs, "paper", "papers") if supply.designs else ""
    size = f"{show_size(supply.size, supply.length_unit)} {supply.length_unit.value}" if supply.size else ""
    weight = supply.pounds or (weight_in_words(supply) if supply.grammage else "")
    return ", ".join(filter(None, (papers, size, weight)))
