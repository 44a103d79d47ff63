"""What was bought of a supply: each purchase, and their sum."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from batchleaf.core.figures import Figures
from batchleaf.core.unit_prices import Paid, average, paid_for, paid_together, priced
from batchleaf.facts import Basis, Supply
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import show_aligned
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.pages import BoughtRow, BoughtView
from batchleaf.views.price_of_one import PriceShown, one_of, price_drawing
from batchleaf.views.stock import papers_in
from batchleaf.views.tables.years import bought_table
from batchleaf.views.words import capitalised, counted, money, short_date


def bought_view(supply: Supply, figures: Figures) -> BoughtView | None:
    """Nothing where nothing was bought, and of a numbered paper, whose sheets are priced with the pad."""
    of = {one.slug: one for one in (supply, *papers_in(supply, figures))}
    until = figures.as_of
    paid = paid_for(of, [one for one in figures.archive.purchases if until is None or one.date <= until])
    if not paid or supply.pad:
        return None
    found = priced(paid)
    currency = figures.settings.currency
    shown = PriceShown.of(currency, [one.one for one in found])
    quantities = [one.purchase.quantity for one in paid]
    *several, together = show_aligned([*quantities, sum(quantities, Fraction(0))])
    mean = average(found)
    chart = price_drawing(supply, found, shown)
    return BoughtView(
        unit=supply.units if is_measured(supply.unit) else capitalised(supply.units),
        paid_label=f"Paid, {currency.sign}",
        one_label=f"{capitalised(one_of(supply))}, {currency.sign}",
        rows=tuple(
            BoughtRow(
                date=short_date(one.purchase.date),
                date_iso=one.purchase.date.isoformat(),
                source=_source(one, of[one.purchase.supply]),
                quantity=many,
                bundles=bundles(one.purchase.quantity, supply),
                paid=_paid(one, currency),
                one="" if one.one is None else f"{'about ' if one.guessed else ''}{shown.show(one.one)}",
            )
            for one, many in zip(paid, several, strict=True)
        ),
        total_quantity=together,
        total_bundles=_all_bundles(paid, supply),
        total_paid=money(paid_together(paid), currency),
        average="" if mean is None or len(found) < 2 else shown.show(mean),
        chart=chart,
        chart_caption=_caption(paid, supply, currency) if chart else "",
        notes=tuple(_notes(paid)),
        csv=bought_table(supply, figures).link(site_map.item(supply.slug)),
    )


def bundles(quantity: Fraction, supply: Supply) -> str:
    """``2 packs``, ``1 pad``: where it is so many whole ones; else nothing."""
    held, noun = (supply.pad_sheets, "pad") if supply.pad_sheets else (supply.pack, "pack")
    if not held or (quantity / held).denominator != 1:
        return ""
    return counted(int(quantity / held), noun, f"{noun}s")


def _all_bundles(paid: Sequence[Paid], supply: Supply) -> str:
    quantities = [one.purchase.quantity for one in paid]
    whole = all(bundles(quantity, supply) for quantity in quantities)
    return bundles(sum(quantities, Fraction(0)), supply) if whole else ""


def _source(one: Paid, supply: Supply) -> str:
    """From whom, and, where a paper of a pad came by itself, which."""
    paper = f"paper {supply.number}" if supply.pad else ""
    return ", ".join(filter(None, (one.purchase.supplier, paper)))


def _paid(one: Paid, currency: Currency) -> str:
    value = one.purchase.value
    if one.purchase.basis is Basis.GIFT:
        return f"gift, {currency.show(value)}" if value else "gift"
    if value is None:
        return "not known"
    return f"about {currency.show(value)}" if one.guessed else currency.show(value)


def _caption(paid: Sequence[Paid], supply: Supply, currency: Currency) -> str:
    said = f"{capitalised(one_of(supply))} in {currency.sign}; each tick is a purchase"
    said += ", a small square one whose price is a guess." if any(one.guessed for one in paid) else "."
    if any(one.one is None for one in paid):
        said += " What was a gift, or has no known price, is left out."
    return said


def _notes(paid: Sequence[Paid]) -> Iterator[str]:
    yield "What was paid has its share of the delivery in it."
    gifts = [one for one in paid if one.purchase.basis is Basis.GIFT]
    if gifts:
        delivered = any(one.purchase.value for one in gifts)
        yield "A gift has no price of its own" + ("; beside it stands its delivery." if delivered else ".")
    unknown = sum(one.purchase.value is None for one in paid)
    if unknown:
        several = counted(unknown, "purchase is", "purchases are")
        yield f"The prices of {several} not known." if unknown > 1 else "The price of one is not known."
    if any(one.guessed for one in paid):
        yield "What says about is a guess."
    without = any(one.one is None for one in paid)
    if without and len(priced(paid)) > 1:
        yield "The average is of all that has a price."
