"""The choice of the unit in which a page shows its lengths."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class MeasuresView:
    """Two units, each by the word behind a figure and by its name; ``rounded``: what is true of the other."""

    written: tuple[str, str]
    other: tuple[str, str]
    rounded: str
