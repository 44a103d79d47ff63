"""The tables of finished makes: where they are, what is asked for one, what those sold brought in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.finished import Finished, finished_of
from batchleaf.core.prices import OnePrice, SoldMakes, Stays, one_price, sold_makes
from batchleaf.facts import Project, Went, Whereabouts
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.tables.table import Column, Money, Table, how_far_known, money_known, tabled

NOT_TOLD: Final = "not told"


def finished_table(figures: Figures) -> Table:
    """A row for each batch of which something is finished, newest first as on its page."""
    currency = figures.settings.currency
    made = [batch.project for batch in figures.batches.values() if batch.project.finished][::-1]
    columns: list[Column[tuple[Project, Finished]]] = [
        ("batch", lambda row: row[0].slug),
        ("title", lambda row: row[0].title),
        ("finished", lambda row: row[1].finished),
        *((where.value, lambda row, where=where: row[1].counts[where]) for where in Whereabouts),
        (NOT_TOLD, lambda row: row[1].not_told),
        (
            f"income in {currency.code}",
            lambda row: money_known(row[1].brought, currency) if row[1].sold else None,
        ),
        ("price known", lambda row: how_far_known(row[1].brought) if row[1].sold else ""),
    ]
    rows = ((project, finished_of(project)) for project in made)
    return tabled(f"{site_map.FINISHED}finished.csv", "Finished makes", columns, rows)


def went_table(batch: BatchFigures, currency: Currency) -> Table:
    """A row for each way that finished makes of a batch went, and one for those of which nothing is told."""
    project = batch.project
    untold = finished_of(project).not_told if project.went else 0
    rows: list[Went | int] = [*project.went, *([untold] if untold else [])]
    columns: list[Column[Went | int]] = [
        ("where", lambda row: row.where.value if isinstance(row, Went) else NOT_TOLD),
        ("words", lambda row: row.words if isinstance(row, Went) else ""),
        ("date", lambda row: row.date if isinstance(row, Went) else None),
        ("makes", lambda row: row.count if isinstance(row, Went) else row),
        (f"income in {currency.code}", lambda row: _brought(row, currency)),
    ]
    return tabled(f"{site_map.batch(project.slug)}went.csv", "Whereabouts", columns, rows)


def _brought(row: Went | int, currency: Currency) -> Money | None:
    return Money(row.value, currency) if isinstance(row, Went) and row.value is not None else None


# --- prices ------------------------------------------------------------------------


def prices_table(figures: Figures) -> Table:
    """What one of each batch costs, and what is asked for it; newest first."""
    currency = figures.settings.currency
    code = currency.code
    made = [batch for batch in figures.batches.values() if batch.made][::-1]
    columns: list[Column[tuple[BatchFigures, OnePrice]]] = [
        ("batch", lambda row: row[0].project.slug),
        ("title", lambda row: row[0].project.title),
        (f"cost in {code}", lambda row: money_known(row[1].cost, currency)),
        ("price known", lambda row: how_far_known(row[1].cost)),
        (f"asked in {code}", lambda row: _money(row[1].asked, currency)),
        (f"stays in {code}", lambda row: _stays(row[1].stays, currency)),
        ("minutes for one", lambda row: row[1].minutes),
        (f"stays for an hour in {code}", lambda row: _stays(row[1].per_hour, currency)),
        ("what stays is", lambda row: _how_sure(row[1].stays)),
    ]
    rows = ((batch, one) for batch in made if (one := one_price(batch)))
    return tabled(f"{site_map.PRICES}prices.csv", "Prices", columns, rows)


def sold_table(figures: Figures) -> Table:
    """What was sold of each batch, newest first."""
    currency = figures.settings.currency
    made = [batch for batch in figures.batches.values() if batch.made and batch.project.finished][::-1]
    columns: list[Column[tuple[BatchFigures, SoldMakes]]] = [
        ("batch", lambda row: row[0].project.slug),
        ("title", lambda row: row[0].project.title),
        ("sold", lambda row: row[1].count),
        *_of_sums(currency),
        (f"stayed in {currency.code}", lambda row: _stays(row[1].stayed, currency)),
        ("what stayed is", lambda row: _how_sure(row[1].stayed)),
    ]
    rows = ((batch, makes) for batch in made if (makes := sold_makes(batch)).count)
    return tabled(f"{site_map.PRICES}sold.csv", "What was sold", columns, rows)


def _of_sums(currency: Currency) -> Iterator[Column[tuple[BatchFigures, SoldMakes]]]:
    code = currency.code
    yield f"income in {code}", lambda row: money_known(row[1].brought, currency)
    yield f"cost of those in {code}", lambda row: money_known(row[1].cost, currency)


def _money(minor: int | None, currency: Currency) -> Money | None:
    return None if minor is None else Money(minor, currency)


def _stays(stays: Stays | None, currency: Currency) -> Money | None:
    return Money(stays.amount, currency) if stays and stays.known else None


def _how_sure(stays: Stays | None) -> str:
    """``exact``, or that it is so much at least, or at most."""
    if stays is None:
        return ""
    if not stays.known:
        return "not known"
    return "at least" if stays.at_least else "at most" if stays.at_most else "exact"
