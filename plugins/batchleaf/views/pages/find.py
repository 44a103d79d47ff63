"""The page on which batches are found again."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from batchleaf.views.pages.pieces import Line, Link

MANY: Final = 7
"""So many choices of one kind are shown before a reader asks for the others."""


@dataclass(frozen=True, slots=True)
class ChoiceView:
    """One choice: what stands in the address, what is read, of how many batches it is true."""

    value: str
    text: str
    count: int


@dataclass(frozen=True, slots=True)
class FacetView:
    """Choices of one kind; of a ladder a reader takes one, of the others any number."""

    key: str
    name: str
    choices: tuple[ChoiceView, ...]
    is_ladder: bool = False

    @property
    def beyond(self) -> int:
        """How many choices are shown only when they are asked for."""
        return max(len(self.choices) - MANY, 0)


@dataclass(frozen=True, slots=True)
class FoundView:
    """A batch in the list."""

    title: str
    href: str
    line: str
    date: str
    date_iso: str


@dataclass(frozen=True, slots=True)
class FindPage:
    """All batches, those of one ``year`` in a list; ``years``: the lists of the others.

    ``data``: the script that holds what the choices are true of. Where it is empty, there is nothing to
    choose on this page. ``compare``: the way to where batches are laid side by side.
    """

    title: str
    sentence: Line
    year: str
    years: tuple[Link, ...]
    entries: tuple[FoundView, ...]
    columns: tuple[tuple[FacetView, ...], ...] = ()
    sorts: tuple[tuple[str, str], ...] = ()
    data: str = ""
    compare: str = ""
