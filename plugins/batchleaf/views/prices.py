"""Prices: what one costs and what is asked for it, and what those sold brought in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.prices import OnePrice, SoldMakes, Stays, one_price, sold_makes, sold_together
from batchleaf.core.terms_of_sale import NotedTerms, noted_terms
from batchleaf.measure.display import NBSP, show_number
from batchleaf.measure.durations import show_minutes
from batchleaf.measure.money import Currency, rounded
from batchleaf.views import site_map
from batchleaf.views.pages import Line, Link, PriceRow, PricesPage, SoldRow
from batchleaf.views.tables.finished import prices_table, sold_table
from batchleaf.views.terms import terms_in_words
from batchleaf.views.words import batches_counted, capitalised, counted, joined, money, money_said

HERE: Final = site_map.PRICES
_TIME: Final = "Time has no price and is in no sum; the last column only says how much stays for an hour. "
_TERMS_NOTE: Final = "Noted about selling what is made with these. The owner’s own licence text decides."
_FEW_MINUTES: Final = 10
"""Below so many a tenth of a minute is told as well."""


def prices_page(figures: Figures) -> PricesPage:
    """Every batch that is made, newest first; those sold in a table of their own."""
    currency = figures.settings.currency
    made = [batch for batch in figures.batches.values() if batch.made and batch.project.finished][::-1]
    sold = [(batch, sold_makes(batch)) for batch in made]
    sold = [(batch, makes) for batch, makes in sold if makes.count]
    total = sold_together(makes for _, makes in sold)
    asked = sum(batch.project.asks is not None for batch in made)
    return PricesPage(
        title="Prices",
        sentence=_sentence(asked, total, currency),
        currency=currency.sign,
        rows=tuple(_price_row(batch, one, currency) for batch in made if (one := one_price(batch))),
        sold=tuple(_sold_row(_link(batch), makes, currency) for batch, makes in sold),
        total=_sold_row(Link(capitalised(batches_counted(len(sold))), ""), total, currency) if sold else None,
        terms=tuple(_terms(made, figures)),
        terms_note=_TERMS_NOTE,
        note=(_TIME, Link("How this is worked out", site_map.href(HERE, site_map.HOW, "prices")), "."),
        csv=prices_table(figures).link(HERE),
        sold_csv=sold_table(figures).link(HERE),
    )


def asked_note(batch: BatchFigures, currency: Currency) -> str:
    """For the account of a batch: ``One is asked 3.50 €; 2.77 € of it stays.``."""
    one = one_price(batch)
    if one is None or one.asked is None or one.stays is None:
        return ""
    asked = f"Asked for one: {currency.show_with_sign(one.asked)}"
    if one.stays.amount < 0 and not one.stays.at_least:
        return f"{asked}, which is {currency.show_with_sign(-one.stays.amount)} less than it cost."
    return f"{asked}, of which {_bound(one.stays)}{currency.show_with_sign(one.stays.amount)} stays."


def stays_in_words(stays: Stays, currency: Currency) -> str:
    """For columns: ``2.77``, ``at most 2.89``, ``not known``."""
    return f"{_bound(stays)}{currency.show(stays.amount)}" if stays.known else "not known"


def time_in_words(minutes: Fraction) -> str:
    """``3.1 min``, ``14 min``, ``1 h 05``: halves are rounded up."""
    if minutes < _FEW_MINUTES:
        return f"{show_number(Fraction(rounded(minutes * 10), 10), 1)}{NBSP}min"
    return show_minutes(rounded(minutes))


def _bound(stays: Stays) -> str:
    return "at least " if stays.at_least else "at most " if stays.at_most else ""


def _sentence(asked: int, total: SoldMakes, currency: Currency) -> Line:
    """``A price is asked for three batches. 14 pieces were sold and brought in 46.00 €; …``."""
    start = f"A price is asked for {batches_counted(asked)}."
    if not total.count:
        return (f"{start} Nothing was sold yet.",)
    be = "was" if total.count == 1 else "were"
    pieces = counted(total.count, "piece", "pieces")
    income = f"{pieces} {be} sold and brought in {money_said(total.brought, currency)}"
    return (f"{start} {income}{_what_stayed(total, currency)}.",)


def _what_stayed(total: SoldMakes, currency: Currency) -> str:
    stayed = total.stayed
    if not stayed.known:
        return ""
    left = currency.show_with_sign(abs(stayed.amount))
    if stayed.amount < 0:
        return "" if stayed.at_least else f", {left} less than they cost"
    return f"; {_bound(stayed)}{left} of it stayed"


def _link(batch: BatchFigures) -> Link:
    return Link(batch.project.title, site_map.href(HERE, site_map.batch(batch.project.slug)))


def _price_row(batch: BatchFigures, one: OnePrice, currency: Currency) -> PriceRow:
    return PriceRow(
        batch=_link(batch),
        cost=money(one.cost, currency),
        time=time_in_words(one.minutes) if one.minutes else "",
        asked="" if one.asked is None else currency.show(one.asked),
        stays=stays_in_words(one.stays, currency) if one.stays else "",
        per_hour=stays_in_words(one.per_hour, currency) if one.per_hour else "",
    )


def _sold_row(batch: Link, makes: SoldMakes, currency: Currency) -> SoldRow:
    return SoldRow(
        batch=batch,
        sold=f"{makes.count:,}",
        brought=money(makes.brought, currency),
        cost=money(makes.cost, currency),
        stayed=stays_in_words(makes.stayed, currency),
    )


def _terms(made: Sequence[BatchFigures], figures: Figures) -> Iterator[Line]:
    """What is noted about selling, once for each thing that is in what is for sale."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    tools = {tool.slug: tool for tool in figures.archive.tools}
    designs = {design.slug: design for design in figures.archive.designs}
    of_things: dict[NotedTerms, list[BatchFigures]] = {}
    for batch in made:
        if batch.project.asks or sold_makes(batch).count:
            for noted in noted_terms(batch.project, supplies, tools, designs):
                of_things.setdefault(noted, []).append(batch)
    for noted, batches in of_things.items():
        said = terms_in_words(noted.terms) or noted.terms.sale.value
        yield (f"{capitalised(noted.name)}: {said}; in ", *_named(batches), ".")


def _named(batches: Sequence[BatchFigures]) -> Line:
    links: list[Line] = [(_link(batch),) for batch in batches]
    return joined(links, ", ", " and ")
