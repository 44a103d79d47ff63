"""The page of one supply: what it is, what is on hand, what was bought and moved, where it went."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import groupby

from batchleaf.core.cost import Cost
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Balance, Ledger
from batchleaf.core.reserved import Reservation, reservations
from batchleaf.facts import Basis, Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import show_number, show_size
from batchleaf.measure.lengths import Size
from batchleaf.views import site_map
from batchleaf.views.bought import bought_view
from batchleaf.views.colour_words import colours_in_words
from batchleaf.views.disclosure import disclosure_for
from batchleaf.views.drawing.pieces import draw_pieces
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.goes_with import goes_with_view
from batchleaf.views.home import gallery_entry
from batchleaf.views.item_facts import facts_of
from batchleaf.views.levels import there_is
from batchleaf.views.links import elsewhere
from batchleaf.views.movements import movement_rows
from batchleaf.views.pages import Aside, ItemPage, Line, Link, PadPaperRow
from batchleaf.views.pictures import Prepared
from batchleaf.views.stock import Stock, batches_using, papers_in, stock_of, worth_in_words
from batchleaf.views.tables.drawer import movements_table
from batchleaf.views.words import amount, capitalised, counted, in_batches, listed, long_date, money


def item_page(supply: Supply, figures: Figures, prepared: Prepared) -> ItemPage:
    """One supply; also what is on hand and what moved, where that is told."""
    page = _described(supply, figures, prepared)
    return _with_stock(page, supply, figures, figures.ledger) if figures.ledger else page


def _described(supply: Supply, figures: Figures, prepared: Prepared) -> ItemPage:
    """What it is, and which batches used it."""
    here = site_map.item(supply.slug)
    used_in = batches_using(supply, figures)
    return ItemPage(
        title=capitalised(supply.name),
        drawer=Link("Supplies", site_map.href(here, site_map.DRAWER)),
        pad=_pad_link(supply, figures, here),
        kind=supply.kind,
        sentence=(f"Used {in_batches(len(used_in))}.",) if used_in else (),
        swatches=supply.colours,
        colours=colours_in_words(supply),
        goes_with=goes_with_view(supply, figures),
        facts=tuple(facts_of(supply)),
        link=elsewhere(supply),
        disclosure=disclosure_for((supply,), figures.settings),
        papers=tuple(_paper_row(paper, figures, here) for paper in papers_in(supply, figures)),
        papers_note="",
        pieces=None,
        pieces_caption="",
        bought=None,
        movements=(),
        movements_unit="",
        currency="",
        total_on_hand="",
        total_value="",
        notes=(),
        used_in=tuple(gallery_entry(batch, figures, prepared, here) for batch in reversed(used_in)),
    )


def _with_stock(page: ItemPage, supply: Supply, figures: Figures, ledger: Ledger) -> ItemPage:
    here = site_map.item(supply.slug)
    stock = stock_of(supply, figures, ledger)
    papers = zip(page.papers, papers_in(supply, figures), strict=True)
    rows = tuple(movement_rows(supply, figures, ledger, here))
    return replace(
        page,
        drawer=replace(page.drawer, text="Drawer"),
        sentence=_sentence(supply, figures, stock, here),
        papers=tuple(
            replace(row, on_hand=_there(paper, stock_of(paper, figures, ledger))) for row, paper in papers
        ),
        papers_note=_unnamed(supply, ledger) if page.papers else "",
        pieces=_drawing(supply, stock.pieces),
        pieces_caption="Drawn to one scale beside a whole sheet." if supply.size else "",
        bought=bought_view(supply, figures),
        movements=rows,
        movements_unit=supply.units if is_measured(supply.unit) else capitalised(supply.units),
        currency="" if supply.pad else figures.settings.currency.sign,
        total_on_hand=rows[-1].on_hand if rows else "",
        total_value="" if supply.pad else money(stock.worth, figures.settings.currency),
        notes=(*_notes(stock), *_spoken_for(supply, figures)),
        movements_csv=movements_table(supply, figures, ledger).link(here),
    )


def _pad_link(supply: Supply, figures: Figures, here: str) -> Link | None:
    pads = (one for one in figures.archive.supplies if one.slug == supply.pad)
    return next((Link(pad.name, site_map.href(here, site_map.item(pad.slug))) for pad in pads), None)


def _sentence(supply: Supply, figures: Figures, stock: Stock, here: str) -> Line:
    there: list[str | Link | Aside] = []
    pad = _pad_link(supply, figures, here)
    where = (" in the ", pad) if pad else ()
    if stock.quantity:
        there += [_on_hand(stock.quantity, supply), *where]
    if stock.kept:
        there += [" and " if there else "", Link(counted(stock.kept, "kept piece", "kept pieces"), "#kept")]
    if not there and pad:
        return ("None on hand", *where, ".")
    if not there:
        return ("None on hand.",) if stock.moved else ("Nothing is counted of it.",)
    return (*there, _worth(stock, figures, of_pieces=bool(pad)))


def _on_hand(quantity: Fraction, supply: Supply) -> str:
    there = there_is(quantity, supply)
    return capitalised(there) if supply.by_level else f"{there} on hand"


def _worth(stock: Stock, figures: Figures, *, of_pieces: bool) -> str:
    """What is on hand is worth, to end a sentence; sheets of a numbered paper are priced with the pad."""
    if of_pieces and not stock.kept:
        return "."
    if not stock.worth.known and not stock.worth.complete:
        return "; what it cost is not known."
    worth = worth_in_words(stock.worth, figures.settings.currency)
    if of_pieces and stock.quantity:
        return f", which {'is' if stock.kept == 1 else 'are'} worth {worth}."
    return f", worth {worth}{' together' if stock.kept and stock.quantity else ''}."


def _paper_row(paper: Supply, figures: Figures, here: str) -> PadPaperRow:
    return PadPaperRow(
        paper=Link(paper.name, site_map.href(here, site_map.item(paper.slug))),
        on_hand="",
        used_in=tuple(
            Link(batch.project.title, site_map.href(here, site_map.batch(batch.project.slug)))
            for batch in batches_using(paper, figures)
        ),
    )


def _there(paper: Supply, stock: Stock) -> str:
    there = [there_is(stock.quantity, paper)] if stock.quantity else []
    there += [counted(stock.kept, "piece", "pieces")] if stock.kept else []
    return " and ".join(there) or "none"


def _unnamed(pad: Supply, ledger: Ledger) -> str:
    """What the numbers do not account for."""
    sheets = ledger.unnamed.get(pad.slug, Fraction(0))
    if not sheets:
        return ""
    many = f"{show_number(abs(sheets), 2)} {pad.name_of_unit(abs(sheets))}"
    if sheets > 0:
        return f"Besides, the pad has {many} of which no record says the number."
    return f"{many} left the pad, and no record says which: so much less there is of these papers together."


def _drawing(supply: Supply, pieces: tuple[Balance, ...]) -> Drawing | None:
    sizes = Counter[Size]()
    for balance in pieces:
        if balance.holding.piece is not None:
            sizes[balance.holding.piece] += int(balance.quantity)
    if not sizes or supply.size is None:
        return None
    found = tuple(sizes.items())
    said = [f"{count} of {show_size(size, supply.length_unit)}" for size, count in found]
    return draw_pieces(
        supply.size,
        found,
        id="kept-drawing",
        title=f"Kept pieces of {supply.name} beside a whole sheet",
        description=f"{capitalised(listed(said))} {supply.length_unit.value}.",
        unit=supply.length_unit,
    )


def _spoken_for(supply: Supply, figures: Figures) -> Iterator[str]:
    """``Of the 18 sheets, 3 are for Harbour square cards, planned for 5 December 2026.``"""
    slugs = {supply.slug, *(paper.slug for paper in papers_in(supply, figures))}
    for project, claims in groupby(reservations(figures.batches.values()), key=lambda one: one.project):
        mine = [one for one in claims if one.holding.supply in slugs]
        said = [_claimed(one, supply) for one in mine]
        if said:
            day = long_date(project.date)
            yield f"{capitalised(listed(said))} will go into {project.title}, planned for {day}."


def _claimed(one: Reservation, supply: Supply) -> str:
    if one.holding.piece is None:
        return amount(one.quantity, supply)
    size = show_size(one.holding.piece, supply.length_unit)
    return f"{counted(int(one.quantity), 'piece', 'pieces')} of {size}"


def _notes(stock: Stock) -> Iterator[str]:
    if stock.kept:
        yield "A kept piece stays in the drawer with its share of the sheet’s cost, by area."
    yield from _rests_on(stock.worth)


def _rests_on(worth: Cost) -> Iterator[str]:
    if Basis.GUESSED in worth.rests_on:
        yield "What some of it cost is a guess, and so is what it is worth."
    if Basis.GIFT in worth.rests_on:
        yield "Some of it was a gift and cost nothing; a batch that uses it costs so much less."
