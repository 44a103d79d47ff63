"""What a batch page says of collating: a table of makes by parts, to sort the parts by."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Link


@dataclass(frozen=True, slots=True)
class SortedPart:
    """Parts of one make that are alike: ``count`` where there are several, what paper, which images.

    ``colour`` is that of the paper, or empty. ``boxes``: what marks a paper of a pad, its number there;
    where the column names the pad, once for each of the parts, and ``paper`` is empty.
    """

    count: str
    paper: str
    colour: str
    boxes: tuple[str, ...]
    images: str


@dataclass(frozen=True, slots=True)
class SortedColumn:
    """One part of a make; ``pad``: where all its papers come from, if that is one pad."""

    letter: str
    name: str
    pad: str

    @property
    def head(self) -> str:
        """What each cell says where the head of the table is out of sight."""
        return f"{self.letter} {self.name}{f', {self.pad}' if self.pad else ''}"


@dataclass(frozen=True, slots=True)
class SortedMakes:
    """Makes that get the same, ``1 to 8``; one cell for each column. ``remark``: why they stand apart."""

    makes: str
    cells: tuple[tuple[SortedPart, ...], ...]
    remark: str


@dataclass(frozen=True, slots=True)
class CollatingView:
    """One sentence, the table, and what is said beside it."""

    sentence: str
    things: str
    columns: tuple[SortedColumn, ...]
    rows: tuple[SortedMakes, ...]
    csv: Link | None
    notes: tuple[str, ...]
