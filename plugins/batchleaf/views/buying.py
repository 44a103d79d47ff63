"""What to buy next, as the page of the drawer says it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from batchleaf.core.buying import ToBuy, cost_of_a_unit, to_buy
from batchleaf.core.figures import Figures
from batchleaf.core.movements import Ledger
from batchleaf.facts import Basis, Purchase, Supply
from batchleaf.measure.display import NBSP, show_number, show_size
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.levels import there_is
from batchleaf.views.links import elsewhere
from batchleaf.views.pages import Aside, BuyNext, BuyRow, Line, Link
from batchleaf.views.tables.table import Column, Money, Table, tabled
from batchleaf.views.words import amount, capitalised, counted, joined, number_of, number_word, short_date


def buy_next(figures: Figures, ledger: Ledger) -> BuyNext | None:
    """Everything to buy, by shelf as in the index; nothing where there is no reason."""
    found = _to_buy(figures, ledger)
    if not found:
        return None
    supplies = _supplies(figures)
    return BuyNext(
        sentence=_sentence(found),
        rows=tuple(_row(one, supplies[one.holding.supply], figures) for one in found),
        csv=buy_table(figures, ledger).link(site_map.DRAWER),
    )


def things_to_buy(figures: Figures, ledger: Ledger) -> list[Supply]:
    """The supplies of :func:`buy_next` that lead somewhere."""
    supplies = _supplies(figures)
    found = (supplies[one.holding.supply] for one in _to_buy(figures, ledger))
    return [supply for supply in found if supply.link]


def buy_table(figures: Figures, ledger: Ledger) -> Table:
    """A row for each thing to buy, with the lot that was bought last. ``needed``: by all batches together."""
    supplies = _supplies(figures)
    currency = figures.settings.currency
    columns: list[Column[ToBuy]] = [
        ("supply", lambda one: one.holding.supply),
        ("name", lambda one: supplies[one.holding.supply].name),
        ("scrap width in mm", lambda one: one.holding.piece.width if one.holding.piece else None),
        ("scrap height in mm", lambda one: one.holding.piece.height if one.holding.piece else None),
        ("unit", lambda one: "scrap" if one.holding.piece else supplies[one.holding.supply].unit),
        ("on hand", lambda one: one.on_hand),
        ("mark", lambda one: one.mark),
        ("needed", lambda one: sum(lack.needed for lack in one.lacks) or None),
        ("batches", lambda one: ", ".join(lack.project for lack in one.lacks)),
        ("last bought", lambda one: one.last.date if one.last else None),
        ("lot", lambda one: one.last.quantity if one.last else None),
        ("from", lambda one: one.last.supplier if one.last else ""),
        (f"lot in {currency.code}", lambda one: _money(one.last.value if one.last else None, currency)),
        (f"each in {currency.code}", lambda one: _money(_each(one), currency)),
    ]
    return tabled(f"{site_map.DRAWER}buy-next.csv", "Buy next", columns, _to_buy(figures, ledger))


def _to_buy(figures: Figures, ledger: Ledger) -> list[ToBuy]:
    supplies = _supplies(figures)
    return sorted(to_buy(figures, ledger), key=lambda one: supplies[one.holding.supply].kind)


def _supplies(figures: Figures) -> dict[str, Supply]:
    return {supply.slug: supply for supply in figures.archive.supplies}


def _sentence(found: Sequence[ToBuy]) -> str:
    """``Two supplies are below their mark, and one planned batch lacks paper.``"""
    low = sum(one.mark is not None for one in found)
    short = len({lack.project for one in found for lack in one.lacks})
    below = "supply is below its mark" if low == 1 else "supplies are below their mark"
    lacking = "planned batch lacks paper" if short == 1 else "planned batches lack paper"
    said = [f"{number_word(count)} {words}" for count, words in ((low, below), (short, lacking)) if count]
    return f"{capitalised(', and '.join(said))}."


def _row(one: ToBuy, supply: Supply, figures: Figures) -> BuyRow:
    piece, unit = one.holding.piece, supply.length_unit
    return BuyRow(
        supply=Link(supply.name, site_map.href(site_map.DRAWER, site_map.item(supply.slug))),
        swatch=supply.colour,
        about=f"a scrap of {show_size(piece, unit)}{NBSP}{unit.value}" if piece else "",
        needed=_needed(one, supply, figures),
        on_hand=_on_hand(one, supply),
        mark="" if one.mark is None else number_of(one.mark, supply),
        last=tuple(_last(one.last, _supplies(figures))) if one.last else (),
        each=_each_in_words(one, figures.settings.currency),
        link=elsewhere(supply),
    )


def _on_hand(one: ToBuy, supply: Supply) -> str:
    if one.holding.piece:
        return show_number(one.on_hand or Fraction(0))
    if one.on_hand is None:
        return "not counted"
    return there_is(one.on_hand, supply) if one.on_hand else "none"


def _needed(one: ToBuy, supply: Supply, figures: Figures) -> Line:
    """``10 sheets for Harbour square cards``, batch after batch."""
    said: list[Line] = []
    for lack in one.lacks:
        project = figures.batches[lack.project].project
        link = Link(project.title, site_map.href(site_map.DRAWER, site_map.batch(project.slug)))
        noun = ("scrap", "scraps") if one.holding.piece else (supply.unit, supply.units)
        said.append((f"{counted(lack.needed, *noun)} for ", link))
    return joined(said, "; ", "; ")


def _last(last: Purchase, supplies: dict[str, Supply]) -> Iterator[str | Aside]:
    """``20 sheets from a market stall, 12 Sep 2025``: how many, from whom, when."""
    yield amount(last.quantity, supplies[last.supply])
    yield " "
    yield Aside(f"from {last.supplier}, {short_date(last.date)}" if last.supplier else short_date(last.date))


def _each(one: ToBuy) -> int | None:
    return cost_of_a_unit(one.last) if one.last else None


def _each_in_words(one: ToBuy, currency: Currency) -> str:
    """What a unit cost last; ``0.27``, ``about 0.27``, ``gift`` or ``not known``."""
    each = _each(one)
    if one.last is None:
        return ""
    if each is None:
        return "not known"
    if one.last.basis is Basis.GIFT and not each:
        return "gift"
    return f"{'about ' if one.last.basis is Basis.GUESSED else ''}{currency.show(each)}"


def _money(minor: int | None, currency: Currency) -> Money | None:
    return None if minor is None else Money(minor, currency)
