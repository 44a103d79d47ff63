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
class FromSheets:
    """The counts from sheets of one size.

    ``value`` stands in the address, ``name`` in the list to choose from, ``head`` over a column;
    ``plan``: the way to how the makes of the batch are cut from these, ``None`` for sheets as bought.
    """

    value: str
    name: str
    head: str
    counts: tuple[Count, ...]
    plan: Link | None = None


@dataclass(frozen=True, slots=True)
class ForRow:
    """One supply: what one make takes of it, and what each number takes.

    ``amounts``: for each size of sheet, in their order, those of the counts in theirs; one alone where
    they are the same from all.
    """

    supply: str | Link
    note: str
    one: str
    amounts: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class ForMakesView:
    """``sheets``: as bought, and of other sizes. ``chosen``: which of the counts is that of the batch.

    ``in_a_class``: sentences for who teaches it.
    """

    sheets: tuple[FromSheets, ...]
    chosen: int
    rows: tuple[ForRow, ...]
    currency: str
    notes: tuple[str, ...]
    in_a_class: tuple[str, ...]

    @property
    def counts(self) -> tuple[Count, ...]:
        """From the sheets as bought."""
        return self.sheets[0].counts

    def of(self, what: str) -> list[list[str]]:
        """One field of every count: for each size of sheet a list of them."""
        return [[str(getattr(count, what)) for count in sheet.counts] for sheet in self.sheets]

    def of_count(self, what: str, at: int) -> list[str]:
        """One field of one count, for each size of sheet."""
        return [of_sheet[at] for of_sheet in self.of(what)]
