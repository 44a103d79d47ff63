"""The odd pieces of the drawer, laid out."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class LaidPile:
    """Pieces of one size: drawn, and told of."""

    drawing: Drawing
    size: str
    sources: Line
    worth: str


@dataclass(frozen=True, slots=True)
class LaidPaper:
    """The pieces of one paper, largest first."""

    paper: Link
    piles: tuple[LaidPile, ...]


@dataclass(frozen=True, slots=True)
class OffcutsPage:
    """All odd pieces on hand, drawn to one scale; ``rule`` shows which."""

    title: str
    drawer: Link
    sentence: Line
    rule: Drawing
    rule_caption: str
    papers: tuple[LaidPaper, ...]
    csv: Link | None
