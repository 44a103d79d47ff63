"""What is asked for one of each batch, and what was sold."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class PriceRow:
    """One make of a batch: cost, time, price, what stays, and what stays for an hour."""

    batch: Link
    cost: str
    time: str
    asked: str
    stays: str
    per_hour: str


@dataclass(frozen=True, slots=True)
class SoldRow:
    """Makes of a batch that were sold, or all that were."""

    batch: Link
    sold: str
    brought: str
    cost: str
    stayed: str


@dataclass(frozen=True, slots=True)
class PricesPage:
    """Prices that are asked, and what was sold so far. ``total`` is ``None`` where nothing was.

    ``terms``: what is noted about selling what the makes are made with.
    """

    title: str
    sentence: Line
    currency: str
    rows: tuple[PriceRow, ...]
    sold: tuple[SoldRow, ...]
    total: SoldRow | None
    terms_note: str
    terms: tuple[Line, ...]
    note: Line
    csv: Link | None = None
    sold_csv: Link | None = None
