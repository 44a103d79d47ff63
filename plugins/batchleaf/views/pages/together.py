"""How one make is put together: as it is seen, layer by layer, and where each part lies."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.drawing.shapes import Drawing


@dataclass(frozen=True, slots=True)
class FigureView:
    """A drawing with what it shows."""

    drawing: Drawing
    caption: str


@dataclass(frozen=True, slots=True)
class LyingRow:
    """One part: on what it lies and how far from its edges."""

    letter: str
    name: str
    where: str


@dataclass(frozen=True, slots=True)
class TogetherView:
    """One make from its sides, its layers apart, and its parts from the lowest up.

    ``rooms``: what each place that stays bare is for, and where and how large it is.
    """

    figures: tuple[FigureView, ...]
    layers: tuple[FigureView, ...]
    rows: tuple[LyingRow, ...]
    rooms: tuple[tuple[str, str], ...] = ()
    note: str = ""
