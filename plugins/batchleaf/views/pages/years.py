"""The year at the table."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class YearBatchRow:
    """One batch of a year; ``letter`` is that of its pile in the chart, or empty."""

    letter: str
    date: str
    date_iso: str
    batch: Link
    makes: str
    spoiled: str
    time: str


@dataclass(frozen=True, slots=True)
class MadeInYear:
    """What was made: the chart by month, and the batches with their sums."""

    anchor: str
    chart: Drawing
    caption: str
    rows: tuple[YearBatchRow, ...]
    total_label: str
    total_makes: str
    total_spoiled: str
    total_time: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PaperRow:
    """One part of the paper that was cut."""

    label: str
    area: str
    share: str


@dataclass(frozen=True, slots=True)
class PaperOfYear:
    """Where the paper went; the rows sum to the total."""

    anchor: str
    chart: Drawing
    unit: str
    rows: tuple[PaperRow, ...]
    total: PaperRow


@dataclass(frozen=True, slots=True)
class MoneyRow:
    """One line of the account; ``note``: what explains it, or empty."""

    label: str
    note: str
    value: str


@dataclass(frozen=True, slots=True)
class DrawerOfYear:
    """What the drawer was worth, and what came in and went out; ``rows`` sum to ``total``."""

    anchor: str
    worth: Drawing
    worth_caption: str
    spent: Drawing | None
    spent_caption: str
    currency: str
    rows: tuple[MoneyRow, ...]
    total: MoneyRow
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class UsedRow:
    """What batches took of one supply."""

    supply: Line
    quantity: str
    value: str


@dataclass(frozen=True, slots=True)
class UsedInYear:
    """The supplies most used, and all others together; they sum to ``total``."""

    anchor: str
    currency: str
    rows: tuple[UsedRow, ...]
    total: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class YearView:
    """One year. An edition that tells nothing of money has neither ``drawer`` nor ``used``."""

    anchor: str
    heading: str
    sentence: Line
    made: MadeInYear | None
    paper: PaperOfYear | None
    drawer: DrawerOfYear | None
    used: UsedInYear | None


@dataclass(frozen=True, slots=True)
class YearsPage:
    """All years, the newest first."""

    title: str
    sentence: Line
    years: tuple[YearView, ...]
    csv: Link | None = None
