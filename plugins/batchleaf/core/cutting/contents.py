"""Tables of what the pieces of a sheet can hold.

A row is one combination of parts: how many of each, what they are worth, and
where they come from. All pieces share one growing table; a piece is a run of rows.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import IntEnum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from batchleaf.core.cutting.grid import Whole

BLOCK: Final = 256
"""So many rows are compared with one another at once."""
_MOST_BITS: Final = 62


class Source(IntEnum):
    """Where a row comes from; its two further numbers are named behind it."""

    NOTHING = 0
    SHAPE = 1
    """The number of the shape."""
    CUT_X = 2
    """The rows of both pieces."""
    CUT_Y = 3
    """The rows of both pieces."""


@dataclass(frozen=True, slots=True, eq=False)
class Rows:
    """``counts`` has a column for each part, ``origin`` holds :class:`Source` and two numbers."""

    counts: Whole
    worth: Whole
    origin: Whole

    def only(self, keep: NDArray[np.bool_] | Whole) -> Rows:
        """Some of the rows."""
        return Rows(self.counts[keep], self.worth[keep], self.origin[keep])


def together(rows: list[Rows]) -> Rows:
    """All of them, one after the other."""
    return Rows(
        np.concatenate([part.counts for part in rows]),
        np.concatenate([part.worth for part in rows]),
        np.concatenate([part.origin for part in rows]),
    )


@dataclass(slots=True, eq=False)
class Contents:
    """The table; ``start`` and ``size`` say which rows belong to a piece (-1: none yet)."""

    rows: Rows
    start: Whole
    size: Whole
    used: int = field(default=0)

    @classmethod
    def empty(cls, cells: int, parts: int) -> Contents:
        """No row, for so many pieces."""
        rows = Rows(*(np.zeros(shape, dtype=np.int64) for shape in ((512, parts), (512,), (512, 3))))
        return cls(rows, np.full(cells, -1, dtype=np.int64), np.zeros(cells, dtype=np.int64))

    def put(self, cell: int, rows: Rows) -> None:
        """Add the rows of one piece."""
        many = len(rows.worth)
        while self.used + many > len(self.rows.worth):
            self.rows = together([self.rows, self.rows])
        run = slice(self.used, self.used + many)
        self.rows.counts[run], self.rows.worth[run], self.rows.origin[run] = (
            rows.counts,
            rows.worth,
            rows.origin,
        )
        self.start[cell], self.size[cell] = self.used, many
        self.used += many

    def number_of_pairs(self, near: Whole, far: Whole) -> int:
        """How many :meth:`pairs` there are."""
        return int((self.size[near] * self.size[far]).sum())

    def pairs(self, near: Whole, far: Whole) -> tuple[Whole, Whole]:
        """Row numbers of every pair of a row of ``near[n]`` and a row of ``far[n]``, for all n."""
        many = self.size[near] * self.size[far]
        which = np.repeat(np.arange(len(near)), many)
        inside = np.arange(int(many.sum())) - np.repeat(np.cumsum(many) - many, many)
        width = self.size[far][which]
        return self.start[near][which] + inside // width, self.start[far][which] + inside % width


def undominated(rows: Rows, caps: Whole, beam: int) -> tuple[Rows, bool]:
    """Best rows first, none contained in another, at most ``beam``; whether none was cut off."""
    rows = rows.only(_first_of_each(rows.counts, caps))
    rows = rows.only(np.argsort(-rows.worth, kind="stable"))
    kept = np.zeros((0, rows.counts.shape[1]), dtype=np.int64)
    numbers: list[Whole] = []
    total = 0
    # A row that contains another is worth more, so it stands before it.
    for at in range(0, len(rows.worth), BLOCK):
        block = rows.counts[at : at + BLOCK]
        in_kept = np.all(kept[None, :, :] >= block[:, None, :], axis=2)
        in_block = np.all(block[None, :, :] >= block[:, None, :], axis=2)
        in_earlier = np.logical_and(in_block, np.tri(len(block), k=-1, dtype=np.bool_))
        free = ~(np.any(in_kept, axis=1) | np.any(in_earlier, axis=1))
        kept = np.concatenate([kept, block[free]])
        numbers.append(at + np.flatnonzero(free))
        total += int(free.sum())
        if total > beam:
            return rows.only(np.concatenate(numbers)[:beam]), False
    return rows.only(np.concatenate(numbers)) if numbers else rows, True


def _first_of_each(counts: Whole, caps: Whole) -> Whole:
    """Numbers of the rows that are not equal to an earlier one."""
    bits = [int(cap).bit_length() for cap in caps]
    if sum(bits) <= _MOST_BITS:
        shifts = np.cumsum([0, *bits[:-1]])
        _, first = np.unique((counts << shifts).sum(axis=1), return_index=True)
    else:
        _, first = np.unique(counts, axis=0, return_index=True)
    return np.sort(first)
