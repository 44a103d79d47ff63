"""Numbers of parts side by side in the bits of whole words.

Each part has a field that holds twice its limit, so two handfuls add up field by
field in one addition. With 2^b - 1 - limit added to each field, its top bit says
whether the limit is passed.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from batchleaf.core.cutting.grid import Whole

_WORD: Final = 62
"""Bits of a word that are used, so that no sum touches the sign."""
MOST: Final = 1 << 40
"""No sheet holds so many of a part."""


class Packing:
    """How many of each part, none above its limit; parts with limit 0 have no field."""

    def __init__(self, limits: Sequence[int]) -> None:
        self._field: dict[int, tuple[int, int]] = {}
        self._offsets, self._tops = [0], [0]
        shift = 0
        for part, limit in enumerate(limits):
            if limit <= 0:
                continue
            bits = min(limit, MOST).bit_length()
            if shift + bits + 1 > _WORD:
                self._offsets.append(0)
                self._tops.append(0)
                shift = 0
            self._field[part] = (len(self._tops) - 1, 1 << shift)
            self._offsets[-1] |= ((1 << bits) - 1 - min(limit, MOST)) << shift
            self._tops[-1] |= 1 << (shift + bits)
            shift += bits + 1

    @property
    def words(self) -> int:
        """How many words hold a handful."""
        return len(self._tops)

    def one(self, part: int) -> tuple[int, ...]:
        """A single one of ``part``."""
        at, bit = self._field[part]
        return tuple(bit if word == at else 0 for word in range(self.words))

    def over(self, word: int, sums: Whole) -> Whole:
        """Not 0 where one of the sums in this word passes a limit."""
        return (sums + self._offsets[word]) & self._tops[word]
