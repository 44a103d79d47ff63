"""The drawer's index: every supply on its shelf, with what is on hand."""

from __future__ import annotations

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Balance
from batchleaf.facts import Supply
from batchleaf.measure.display import show_number, show_size
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.pages import DrawerPage, DrawerRow, DrawerShelf, Line, Link
from batchleaf.views.words import capitalised, counted, money, number_of, number_word


def drawer_page(figures: Figures) -> DrawerPage:
    """All supplies, by kind."""
    supplies = figures.archive.supplies
    kinds = sorted({supply.kind for supply in supplies})
    return DrawerPage(
        title="Drawer",
        sentence=_sentence(figures),
        currency=figures.settings.currency.sign,
        shelves=tuple(
            DrawerShelf(
                capitalised(kind),
                tuple(_row(supply, figures) for supply in supplies if supply.kind == kind),
            )
            for kind in kinds
        ),
    )


def _sentence(figures: Figures) -> Line:
    here = figures.ledger.balances
    kept = sum((balance.quantity for balance in here if balance.holding.piece), start=0)
    worth = sum((balance.cost for balance in here), NOTHING)
    shown = worth_in_words(worth, figures.settings.currency)
    count = capitalised(number_word(len(figures.archive.supplies)))
    pieces = f" and {counted(int(kept), 'kept piece', 'kept pieces')}" if kept else ""
    noun = "supply" if len(figures.archive.supplies) == 1 else "supplies"
    return (f"{count} {noun}{pieces}, worth {shown} together.",)


def worth_in_words(worth: Cost, currency: Currency) -> str:
    """``5.98 €``; ``at least 5.98 €`` where the price of something is not known."""
    shown = currency.show_with_sign(worth.known)
    return shown if worth.complete else f"at least {shown}"


def balances_of(figures: Figures, supply: Supply) -> tuple[Balance | None, tuple[Balance, ...]]:
    """The pile of whole units, and the piles of odd pieces that are not empty, largest first."""
    mine = [balance for balance in figures.ledger.balances if balance.holding.supply == supply.slug]
    whole = next((balance for balance in mine if balance.holding.piece is None), None)
    pieces = [
        (balance.holding.piece.area, balance)
        for balance in mine
        if balance.holding.piece and balance.quantity
    ]
    return whole, tuple(balance for _, balance in sorted(pieces, key=lambda pair: -pair[0]))


def _row(supply: Supply, figures: Figures) -> DrawerRow:
    whole, pieces = balances_of(figures, supply)
    kept = sum(int(balance.quantity) for balance in pieces)
    there = [number_of(whole.quantity, supply)] if whole and whole.quantity else []
    there += [counted(kept, "piece", "pieces")] if kept else []
    worth = sum((balance.cost for balance in pieces), whole.cost if whole else NOTHING)
    return DrawerRow(
        supply=Link(supply.name, site_map.href(site_map.DRAWER, site_map.item(supply.slug))),
        swatch=supply.colour,
        about=_about(supply),
        on_hand=" and ".join(there) or ("none" if whole else "not counted"),
        worth=money(worth, figures.settings.currency) if whole or pieces else "",
        used_in=tuple(
            Link(batch.project.title, site_map.href(site_map.DRAWER, site_map.batch(batch.project.slug)))
            for batch in figures.batches_using(supply.slug)
        ),
    )


def _about(supply: Supply) -> str:
    size = f"{show_size(supply.size, supply.length_unit)} {supply.length_unit.value}" if supply.size else ""
    weight = f"{show_number(supply.grammage)} g/m²" if supply.grammage else ""
    return ", ".join(filter(None, (size, weight)))
