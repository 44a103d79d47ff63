"""The page of what the pieces of the drawer could become."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class BecomeRow:
    """Equal pieces: their size, how many there are of which paper, the best uses, one piece drawn."""

    size: str
    papers: Line
    uses: tuple[Line, ...]
    drawing: Drawing | None


@dataclass(frozen=True, slots=True)
class UntouchedRow:
    """A paper that no batch took for long."""

    supply: str | Link
    there: str
    last: str
    last_iso: str


@dataclass(frozen=True, slots=True)
class BecomePage:
    """``odd`` pieces and ``whole`` sheets."""

    title: str
    sentence: Line
    odd: tuple[BecomeRow, ...]
    whole: tuple[BecomeRow, ...]
    untouched: tuple[UntouchedRow, ...]
    how: Link
