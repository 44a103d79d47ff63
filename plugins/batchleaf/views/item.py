"""The page of one supply: what is on hand, what moved, where it went."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import groupby
from urllib.parse import urlsplit

from batchleaf.core.cost import NOTHING
from batchleaf.core.entries import Kind
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Balance, Movement
from batchleaf.facts import Grain, Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import show_number, show_other_size, show_size
from batchleaf.measure.lengths import Size
from batchleaf.views import site_map
from batchleaf.views.drawer import balances_of, worth_in_words
from batchleaf.views.drawing.pieces import draw_pieces
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.home import gallery_entry
from batchleaf.views.pages import Aside, ItemPage, Line, Link, MovementRow
from batchleaf.views.pictures import Prepared
from batchleaf.views.words import (
    capitalised,
    counted,
    listed,
    money,
    money_moved,
    number_of,
    short_date,
    signed,
)


def item_page(supply: Supply, figures: Figures, prepared: Prepared) -> ItemPage:
    """One supply."""
    here = site_map.item(supply.slug)
    whole, pieces = balances_of(figures, supply)
    rows = tuple(_movement_rows(supply, figures, here))
    worth = sum((balance.cost for balance in pieces), whole.cost if whole else NOTHING)
    return ItemPage(
        title=capitalised(supply.name),
        drawer=Link("Drawer", site_map.href(here, site_map.DRAWER)),
        kind=supply.kind,
        sentence=_sentence(supply, figures, whole, pieces),
        swatch=supply.colour,
        facts=tuple(_facts(supply)),
        link=Link(urlsplit(supply.link).netloc or supply.link, supply.link) if supply.link else None,
        pieces=_drawing(supply, pieces),
        pieces_caption="Drawn to one scale beside a whole sheet." if supply.size else "",
        movements=rows,
        movements_unit=supply.units if is_measured(supply.unit) else capitalised(supply.units),
        currency=figures.settings.currency.sign,
        total_on_hand=show_number(whole.quantity if whole else Fraction(0), 2),
        total_value=money(worth, figures.settings.currency),
        notes=_notes(pieces),
        used_in=tuple(
            gallery_entry(batch, figures, prepared, here)
            for batch in reversed(figures.batches_using(supply.slug))
        ),
    )


def _sentence(supply: Supply, figures: Figures, whole: Balance | None, pieces: tuple[Balance, ...]) -> Line:
    kept = sum(int(balance.quantity) for balance in pieces)
    there: list[str | Link | Aside] = []
    if whole and whole.quantity:
        there.append(f"{number_of(whole.quantity, supply)} on hand")
    if kept:
        there += [" and " if there else "", Link(counted(kept, "kept piece", "kept pieces"), "#kept")]
    if not there:
        moved = any(m.holding.supply == supply.slug for m in figures.ledger.movements)
        return ("None on hand.",) if moved else ("Nothing is counted of it.",)
    worth = sum((balance.cost for balance in pieces), whole.cost if whole else NOTHING)
    together = " together" if kept and whole and whole.quantity else ""
    if not worth.known and not worth.complete:
        return (*there, "; what it cost is not known.")
    return (*there, f", worth {worth_in_words(worth, figures.settings.currency)}{together}.")


def _facts(supply: Supply) -> Iterator[tuple[str, str]]:
    if supply.size:
        unit = supply.length_unit
        other = show_other_size(supply.size, unit)
        yield "As bought", f"{show_size(supply.size, unit)} {unit.value}, about {other}"
        if supply.grain is not Grain.UNKNOWN:
            yield "Grain", supply.grain.value
        if not supply.turns:
            yield "Pattern", "has an up; parts are not turned on it"
    if supply.grammage:
        yield "Weight", f"{show_number(supply.grammage)} g/m²"
    if supply.about:
        yield "About", supply.about


def _drawing(supply: Supply, pieces: tuple[Balance, ...]) -> Drawing | None:
    found = tuple(
        (balance.holding.piece, int(balance.quantity))
        for balance in pieces
        if balance.holding.piece is not None
    )
    if not found or supply.size is None:
        return None
    said = [f"{count} of {show_size(size, supply.length_unit)}" for size, count in found]
    return draw_pieces(
        supply.size,
        found,
        id="kept-drawing",
        title=f"Kept pieces of {supply.name} beside a whole sheet",
        description=f"{capitalised(listed(said))} {supply.length_unit.value}.",
        unit=supply.length_unit,
    )


def _movement_rows(supply: Supply, figures: Figures, here: str) -> Iterator[MovementRow]:
    """A batch takes one row, whatever it took and kept; everything else has its own."""
    mine = [movement for movement in figures.ledger.movements if movement.holding.supply == supply.slug]
    on_hand = Fraction(0)
    for _, group in groupby(mine, key=_one_row):
        moved = list(group)
        on_hand += sum((m.quantity for m in moved if m.holding.piece is None), Fraction(0))
        yield MovementRow(
            date=short_date(moved[0].date),
            date_iso=moved[0].date.isoformat(),
            what=_what(moved, supply, figures, here),
            quantity=_quantity(moved),
            on_hand=show_number(on_hand, 2),
            value=money_moved(sum((m.cost for m in moved), NOTHING), figures.settings.currency),
        )


def _one_row(movement: Movement) -> tuple[object, ...]:
    if movement.kind in (Kind.TAKEN, Kind.KEPT):
        return (movement.date, movement.moment.project)
    return (movement.date, movement.kind, movement.holding, movement.moment.place)


def _quantity(moved: list[Movement]) -> str:
    whole = [m.quantity for m in moved if m.holding.piece is None]
    return signed(sum(whole, Fraction(0))) if whole else ""


def _what(moved: list[Movement], supply: Supply, figures: Figures, here: str) -> Line:
    first = moved[0]
    match first.kind:
        case Kind.OPENING if first.holding.piece:
            size = show_size(first.holding.piece, supply.length_unit)
            return ("there before ", Aside(f"{counted(int(first.quantity), 'scrap', 'scraps')} {size}"))
        case Kind.OPENING:
            return ("there before",)
        case Kind.BOUGHT:
            return ("bought ", Aside(first.moment.supplier)) if first.moment.supplier else ("bought",)
        case Kind.COUNTED:
            return ("counted ", Aside(_count_found(first, supply)))
        case Kind.UNEXPLAINED:
            return ("missing from the records ", Aside("it was used, so it must have come in"))
    project = figures.batches[first.moment.project].project
    link = Link(project.title, site_map.href(here, site_map.batch(project.slug)))
    asides = [_piece_words(m, m.holding.piece, supply) for m in moved if m.holding.piece]
    return (link, " ", Aside(", ".join(asides))) if asides else (link,)


def _piece_words(movement: Movement, piece: Size, supply: Supply) -> str:
    size = show_size(piece, supply.length_unit)
    count = int(abs(movement.quantity))
    if movement.kind is Kind.KEPT:
        return f"{counted(count, 'piece', 'pieces')} of {size} kept"
    return f"{counted(count, 'scrap', 'scraps')} of {size}"


def _count_found(movement: Movement, supply: Supply) -> str:
    if not movement.quantity:
        return "as expected"
    missing = number_of(abs(movement.quantity), supply)
    return f"{missing} missing" if movement.quantity < 0 else f"{missing} more than expected"


def _notes(pieces: tuple[Balance, ...]) -> tuple[str, ...]:
    if not pieces:
        return ()
    return ("A kept piece stays in the drawer with its share of the sheet’s cost, by area.",)
