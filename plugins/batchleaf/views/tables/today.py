"""The table of what the drawer gives today."""

from __future__ import annotations

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.from_the_drawer import FromTheDrawer
from batchleaf.views import site_map
from batchleaf.views.tables.table import Column, Table, tabled

Told = tuple[BatchFigures, FromTheDrawer]


def told_today(figures: Figures) -> tuple[Told, ...]:
    """Those of which most can be made first, the newest among equals."""
    told = [(batch, batch.from_drawer) for batch in reversed(tuple(figures.batches.values()))]
    known = [(batch, one) for batch, one in told if one is not None]
    return tuple(sorted(known, key=lambda pair: -pair[1].makes))


def today_table(figures: Figures) -> Table:
    """A row for each batch."""
    columns: list[Column[Told]] = [
        ("batch", lambda row: row[0].project.slug),
        ("makes", lambda row: row[1].makes),
        ("proved", lambda row: "yes" if row[1].proved else "no"),
        ("begun before", lambda row: row[0].project.begun),
        ("used up first", lambda row: " ".join(row[1].first_out)),
        ("to get", lambda row: "; ".join(f"{one.supply} {one.quantity}" for one in row[1].again or ())),
        ("kept", lambda row: row[1].ready),
    ]
    return tabled(f"{site_map.TODAY}batches.csv", "From today’s drawer", columns, told_today(figures))
