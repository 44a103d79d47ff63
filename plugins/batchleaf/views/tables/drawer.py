"""The tables of the drawer: its index, and what moved of one supply."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import accumulate
from typing import Final

from batchleaf.core.cost import NOTHING
from batchleaf.core.entries import Kind
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Supply
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.colour_words import colours_in_words
from batchleaf.views.movements import Moved, moves_of
from batchleaf.views.stock import batches_using, last_use, on_shelves, stock_of
from batchleaf.views.tables.table import Column, Table, how_far_known, money_known, tabled


def drawer_table(figures: Figures) -> Table:
    """A row for each supply on a shelf; with what is on hand, where that is told."""
    columns: list[Column[Supply]] = [
        ("supply", lambda supply: supply.slug),
        ("name", lambda supply: supply.name),
        ("shelf", lambda supply: supply.kind),
        ("width in mm", lambda supply: supply.size.width if supply.size else None),
        ("height in mm", lambda supply: supply.size.height if supply.size else None),
        ("weight in g/m2", lambda supply: supply.grammage),
        ("colours", lambda supply: " ".join(supply.colours)),
        ("in words", colours_in_words),
        ("collection", lambda supply: supply.collection),
        ("unit", lambda supply: supply.unit),
        *(_of_stock(figures, figures.ledger) if figures.ledger else ()),
        ("batches", lambda supply: len(batches_using(supply, figures))),
        ("last used", lambda supply: last_use(supply, figures)),
    ]
    return tabled(f"{site_map.DRAWER}drawer.csv", "Supplies", columns, _by_shelf(figures))


def _by_shelf(figures: Figures) -> list[Supply]:
    return sorted(on_shelves(figures), key=lambda supply: supply.kind)


def _of_stock(figures: Figures, ledger: Ledger) -> Iterator[Column[Supply]]:
    """What no record speaks of has no amount and no worth."""
    there = {supply.slug: stock_of(supply, figures, ledger) for supply in on_shelves(figures)}
    moved = {slug: stock for slug, stock in there.items() if stock.moved}
    currency = figures.settings.currency
    yield "on hand", lambda supply: moved[supply.slug].quantity if supply.slug in moved else None
    yield "kept pieces", lambda supply: there[supply.slug].kept
    yield (
        f"worth in {currency.code}",
        lambda supply: money_known(moved[supply.slug].worth, currency) if supply.slug in moved else None,
    )
    yield (
        "price known",
        lambda supply: how_far_known(moved[supply.slug].worth) if supply.slug in moved else "",
    )


# --- movements -------------------------------------------------------------------

_WHAT: Final = {
    Kind.OPENING: "at the start",
    Kind.BOUGHT: "bought",
    Kind.UNEXPLAINED: "missing from the records",
    Kind.TAKEN: "taken",
    Kind.KEPT: "kept",
    Kind.GONE: "gone",
    Kind.COUNTED: "counted",
}
_PRICED_BY_HAND: Final = (Kind.OPENING, Kind.BOUGHT)


def movements_table(supply: Supply, figures: Figures, ledger: Ledger) -> Table:
    """A row for each movement; what a batch took and kept stands in several.

    ``change`` is of whole units, ``pieces`` of odd ones; what went out is below nothing.
    The sheets of a numbered paper are priced with the pad.
    """
    moves = moves_of(supply, figures, ledger)
    on_hand = list(accumulate(one.whole or Fraction(0) for one in moves))
    columns: list[Column[tuple[Moved, Fraction]]] = [
        ("date", lambda row: row[0].moment.date),
        ("what", lambda row: row[0].moment.why or _WHAT[row[0].moment.kind]),
        ("batch", lambda row: row[0].moment.project),
        ("from", lambda row: row[0].moment.supplier),
        ("paper", lambda row: row[0].paper or None),
        ("change", lambda row: row[0].whole),
        ("unit", lambda row: "" if row[0].whole is None else supply.unit),
        ("on hand", lambda row: row[1]),
        ("pieces", lambda row: row[0].pieces[0] if row[0].pieces else None),
        ("piece width in mm", lambda row: row[0].pieces[1].width if row[0].pieces else None),
        ("piece height in mm", lambda row: row[0].pieces[1].height if row[0].pieces else None),
        *(() if supply.pad else _of_value(figures.settings.currency)),
    ]
    address = f"{site_map.item(supply.slug)}movements.csv"
    return tabled(address, "Movements", columns, zip(moves, on_hand, strict=True))


def _of_value(currency: Currency) -> Iterator[Column[tuple[Moved, Fraction]]]:
    yield f"value in {currency.code}", lambda row: money_known(row[0].cost or NOTHING, currency)
    yield "price known", lambda row: how_far_known(row[0].cost or NOTHING)
    yield "how known", lambda row: row[0].basis.value if row[0].moment.kind in _PRICED_BY_HAND else ""
