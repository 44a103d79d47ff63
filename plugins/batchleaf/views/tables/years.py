"""The months of all years, and what was bought of a supply, as tables."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.core.drawer_years import DrawerMonth
from batchleaf.core.figures import Figures
from batchleaf.core.unit_prices import Paid, paid_for
from batchleaf.core.years import Made, years_of
from batchleaf.facts import Supply
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.stock import papers_in
from batchleaf.views.tables.table import Column, Money, Table, how_far_known, money_known, tabled


@dataclass(frozen=True, slots=True)
class _Month:
    """One month; ``drawer`` where something is told of it."""

    year: int
    number: int
    made: Made
    drawer: DrawerMonth | None


def months_table(figures: Figures) -> Table:
    """A row for each month of each year, the first one first; areas in mm²."""
    months = list(_months(figures))
    columns: list[Column[_Month]] = [
        ("year", lambda month: month.year),
        ("month", lambda month: month.number),
        ("batches", lambda month: len(month.made.batches)),
        ("finished", lambda month: month.made.finished),
        ("begun", lambda month: month.made.begun),
        ("minutes", lambda month: month.made.minutes),
        ("paper cut in mm2", lambda month: month.made.paper.cut if month.made.paper else None),
        ("paper used in mm2", lambda month: month.made.paper.used if month.made.paper else None),
        ("paper kept in mm2", lambda month: month.made.paper.kept if month.made.paper else None),
        *(_of_drawer(figures.settings.currency) if any(month.drawer for month in months) else ()),
    ]
    return tabled(f"{site_map.YEAR}months.csv", "Months", columns, months)


def _months(figures: Figures) -> Iterator[_Month]:
    for year in years_of(figures):
        for number, made in enumerate(year.months, start=1):
            drawer = year.money.drawer.months[number - 1] if year.money else None
            yield _Month(year.number, number, made, drawer)


def _of_drawer(currency: Currency) -> Iterator[Column[_Month]]:
    yield (
        f"spent in {currency.code}",
        lambda month: money_known(month.drawer.bought, currency) if month.drawer else None,
    )
    yield (
        f"drawer at the end in {currency.code}",
        lambda month: (
            money_known(month.drawer.worth, currency) if month.drawer and month.drawer.worth else None
        ),
    )
    yield (
        "price known",
        lambda month: how_far_known(month.drawer.worth) if month.drawer and month.drawer.worth else "",
    )


def bought_table(supply: Supply, figures: Figures) -> Table:
    """A row for each purchase, with its share of the delivery; none of a numbered paper."""
    until, currency = figures.as_of, figures.settings.currency
    of = {one.slug for one in (supply, *papers_in(supply, figures))}
    done = [one for one in figures.archive.purchases if until is None or one.date <= until]
    columns: list[Column[Paid]] = [
        ("date", lambda paid: paid.purchase.date),
        ("from", lambda paid: paid.purchase.supplier),
        ("supply", lambda paid: paid.purchase.supply),
        ("quantity", lambda paid: paid.purchase.quantity),
        ("unit", lambda _: supply.unit),
        (f"paid in {currency.code}", lambda paid: _paid(paid, currency)),
        ("how known", lambda paid: paid.purchase.basis.value),
    ]
    rows = () if supply.pad else paid_for(of, done)
    return tabled(f"{site_map.item(supply.slug)}bought.csv", "Purchases", columns, rows)


def _paid(paid: Paid, currency: Currency) -> Money | None:
    return None if paid.purchase.value is None else Money(paid.purchase.value, currency)
