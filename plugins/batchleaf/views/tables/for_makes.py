"""The table of what other numbers of makes take."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.for_makes import Needed
from batchleaf.facts import Supply
from batchleaf.views import site_map
from batchleaf.views.sentence import Supplies
from batchleaf.views.tables.table import Column, Money, Table, tabled


@dataclass(frozen=True, slots=True)
class _Taken:
    """What so many makes take of one supply."""

    makes: int
    supply: Supply
    needed: Needed


def for_makes_table(batch: BatchFigures, figures: Figures) -> Table:
    """A row for each supply of each number that is worked out, with its cost where that is told."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    currency = figures.settings.currency
    columns: list[Column[_Taken]] = [
        ("makes", lambda row: row.makes),
        ("supply", lambda row: row.supply.slug),
        ("name", lambda row: row.supply.name),
        ("needed", lambda row: row.needed.quantity),
        ("unit", lambda row: row.supply.unit),
        ("follows the number", lambda row: "yes" if row.needed.scales else "no"),
    ]
    if any(one.cost for one in batch.for_makes):
        columns.append(
            (
                f"cost in {currency.code}",
                lambda row: None if row.needed.cost is None else Money(row.needed.cost, currency),
            )
        )
    address = f"{site_map.batch(batch.project.slug)}how-many.csv"
    return tabled(address, "All numbers", columns, _taken(batch, supplies))


def _taken(batch: BatchFigures, supplies: Supplies) -> Iterator[_Taken]:
    for one in batch.for_makes:
        for needed in (*one.sheets, *one.uses):
            yield _Taken(one.makes, supplies[needed.supply], needed)
