"""A batch planned on the sheets that readers elsewhere have."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.batch import PlanView
from batchleaf.views.pages.measures import MeasuresView
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class OtherSheetView:
    """One size of sheet: what the makes take of it, and how it is cut.

    ``anchor``: its place on the page; ``total``: all sheets in one, or none; ``numbers``: makes, and the
    sheets they take.
    """

    anchor: str
    name: str
    size: str
    total: str
    sentence: str
    plans: tuple[PlanView, ...]
    numbers: tuple[tuple[int, str], ...] = ()


@dataclass(frozen=True, slots=True)
class OtherSheetsPage:
    """The makes of a batch from each of these sizes."""

    title: str
    batch: Link
    sentence: Line
    sheets: tuple[OtherSheetView, ...]
    measures: MeasuresView | None = None
