"""The fewest sheets for about ten parts of any size, by what each handful of them needs.

Of every subset of the parts the smallest boxes are known that through cuts can free it
from: a subset is one part, or two smaller ones side by side or one below the other.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

Box = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Piece:
    """One part, which may be turned by a quarter or not."""

    width: int
    height: int
    turns: bool

    @property
    def boxes(self) -> list[Box]:
        """How it may lie."""
        lying = {(self.width, self.height)}
        if self.turns:
            lying.add((self.height, self.width))
        return sorted(lying)


def fewest_by_subsets(pieces: Sequence[Piece], width: int, height: int) -> int:
    """The fewest sheets of ``width`` by ``height`` that give all ``pieces``; each fits on one."""
    everything = (1 << len(pieces)) - 1
    boxes: list[list[Box]] = [[]]
    for subset in range(1, everything + 1):
        alone = pieces[subset.bit_length() - 1].boxes if subset & (subset - 1) == 0 else []
        found = {box for box in (*alone, *_joined(subset, boxes)) if box[0] <= width and box[1] <= height}
        boxes.append(_smallest(found))
    fewest = [0] * (everything + 1)
    for subset in range(1, everything + 1):
        first = subset & -subset
        fewest[subset] = 1 + min(
            fewest[subset ^ one] for one in _within(subset) if one & first and boxes[one]
        )
    return fewest[everything]


def _within(subset: int) -> Iterator[int]:
    """Every subset but the empty one."""
    one = subset
    while one:
        yield one
        one = (one - 1) & subset


def _joined(subset: int, boxes: Sequence[Sequence[Box]]) -> Iterator[Box]:
    for one in _within(subset):
        other = subset ^ one
        if one > other:
            for a in boxes[one] if other else ():
                for b in boxes[other]:
                    yield a[0] + b[0], max(a[1], b[1])
                    yield max(a[0], b[0]), a[1] + b[1]


def _smallest(found: set[Box]) -> list[Box]:
    """Those of which none is both wider and higher than another, or as wide and higher."""
    kept: list[Box] = []
    for box in sorted(found):
        if not kept or box[1] < kept[-1][1]:
            kept.append(box)
    return kept
