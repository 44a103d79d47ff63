"""What is on hand, for a terminal and for programs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Supply
from batchleaf.measure.display import show_size
from batchleaf.views.columns import in_columns
from batchleaf.views.stock import Stock, stock_of, worth_in_words
from batchleaf.views.words import amount

Json = dict[str, Any]


def drawer_lines(supplies: Sequence[Supply], figures: Figures, ledger: Ledger) -> Iterator[str]:
    """``oat-card  3 sheets  and 2 kept pieces  1.20 €``."""
    if not supplies:
        yield "No supply is called so."
    rows = [(supply, stock_of(supply, figures, ledger)) for supply in supplies]
    yield from in_columns([_row(supply, stock, figures) for supply, stock in rows], right=(2, 4))


def _row(supply: Supply, stock: Stock, figures: Figures) -> tuple[str, ...]:
    kept = f"and {stock.kept} kept" if stock.kept else ""
    texts = (amount(stock.quantity, supply), kept, worth_in_words(stock.worth, figures.settings.currency))
    there, kept, worth = (text.replace("\u00a0", " ") for text in texts)
    return (supply.slug, supply.name, there if stock.moved else "", kept, worth if stock.moved else "")


def drawer_json(supplies: Sequence[Supply], figures: Figures, ledger: Ledger) -> list[Json]:
    """What the lines tell, by name, with the size of each kept piece; ``None``: no record speaks of any."""
    return [_one(supply, stock_of(supply, figures, ledger), figures) for supply in supplies]


def _one(supply: Supply, stock: Stock, figures: Figures) -> Json:
    currency = figures.settings.currency
    pieces = [
        {"size": show_size(one.holding.piece, supply.length_unit), "pieces": int(one.quantity)}
        for one in stock.pieces
        if one.holding.piece
    ]
    return {
        "slug": supply.slug,
        "name": supply.name,
        "kind": supply.kind,
        "on_hand": str(stock.quantity) if stock.moved else None,
        "unit": supply.unit,
        "kept": pieces,
        "worth": {"amount": currency.plain(stock.worth.known), "complete": stock.worth.complete},
    }
