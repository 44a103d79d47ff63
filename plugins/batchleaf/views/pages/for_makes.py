"""The section of a batch's page that says what another number of makes takes."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Link


@dataclass(frozen=True, slots=True)
class Count:
    """A number of makes that is worked out: as a figure, with its noun, in a sentence, and in two cells.

    ``told``: what is said aloud once it is chosen. ``cost`` is empty where none is told.
    """

    makes: int
    named: str
    told: str
    sheets: str
    cost: str


@dataclass(frozen=True, slots=True)
class ForRow:
    """One supply: what one make takes of it, and, in the order of the counts, what each of them takes."""

    supply: str | Link
    note: str
    one: str
    amounts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ForMakesView:
    """``chosen``: which of the counts is that of the batch. ``in_a_class``: sentences for who teaches it."""

    counts: tuple[Count, ...]
    chosen: int
    rows: tuple[ForRow, ...]
    currency: str
    notes: tuple[str, ...]
    in_a_class: tuple[str, ...]

    @property
    def costs(self) -> tuple[str, ...]:
        """In the order of the counts."""
        return tuple(count.cost for count in self.counts)
