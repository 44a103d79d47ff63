"""From an arrangement to a tree of cuts: where the paper that is left over lies.

One arrangement can be cut from a sheet in several ways: a strip of waste may run
the whole length of the sheet, end at the first cut, or go to the last piece of a
row. Either the largest sum of squared offcut areas decides, which favours one big
offcut over many narrow ones, or the number of cuts; the other one breaks ties.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from batchleaf.core.cutting.integers import Sheet, WholeJob
from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf, ThroughCut
from batchleaf.core.cutting.strips import Arrangement, Leaf, Strips


class Prefer(Enum):
    """What decides between two ways of cutting the same arrangement."""

    LARGE_OFFCUTS = "large offcuts"
    FEW_CUTS = "few cuts"


@dataclass(frozen=True, slots=True)
class CutOut:
    """A tree of cuts with what it is worth; ``squares`` sums the squared areas of its offcuts."""

    tree: Node
    squares: int
    cuts: int

    def rank(self, prefer: Prefer) -> tuple[int, int]:
        """Larger is better."""
        if prefer is Prefer.LARGE_OFFCUTS:
            return (self.squares, -self.cuts)
        return (-self.cuts, self.squares)


class SheetCutter:
    """Turns arrangements into trees of cuts for one job."""

    def __init__(self, whole: WholeJob, part_ids: tuple[str, ...], prefer: Prefer) -> None:
        self._prefer = prefer
        self._unit: Fraction = whole.unit
        self._kerf = whole.kerf
        self._part_ids = part_ids
        self._known: dict[tuple[Arrangement, int, int], CutOut] = {}

    def cut(self, piece: Arrangement | None, sheet: Sheet) -> CutOut:
        """The best tree that cuts ``piece`` from ``sheet``."""
        if piece is None:
            return self._waste(sheet.width, sheet.height)
        return self._best(piece, sheet.width, sheet.height)

    def _best(self, piece: Arrangement, width: int, height: int) -> CutOut:
        key = (piece, width, height)
        if key not in self._known:
            self._known[key] = max(self._ways(piece, width, height), key=lambda way: way.rank(self._prefer))
        return self._known[key]

    def _ways(self, piece: Arrangement, width: int, height: int) -> Iterator[CutOut]:
        over = {Axis.X: width - piece.width, Axis.Y: height - piece.height}
        if isinstance(piece, Leaf):
            if not any(over.values()):
                yield CutOut(PartLeaf(self._part_ids[piece.shape.part], piece.shape.turned), 0, 0)
                return
            for axis in Axis:
                if over[axis]:
                    yield self._in_turn(axis, (piece,), width, height, over[axis])
            return
        across = Axis.Y if piece.axis is Axis.X else Axis.X
        yield self._in_turn(piece.axis, piece.pieces, width, height, over[piece.axis])
        if over[across]:
            yield self._trimmed_first(piece, across, width, height)
        if over[piece.axis]:
            for order in _each_one_last(piece.pieces):
                yield self._in_turn(piece.axis, order, width, height, 0)

    def _trimmed_first(self, piece: Strips, across: Axis, width: int, height: int) -> CutOut:
        if across is Axis.X:
            kept = self._best(piece, piece.width, height)
            return self._joined(Axis.X, piece.width, kept, self._waste(width - piece.width, height))
        kept = self._best(piece, width, piece.height)
        return self._joined(Axis.Y, piece.height, kept, self._waste(width, height - piece.height))

    def _in_turn(
        self, axis: Axis, pieces: tuple[Arrangement, ...], width: int, height: int, trailing: int
    ) -> CutOut:
        """``pieces`` cut off one after the other; what ``trailing`` does not take goes to the last."""
        lengths = [piece.width if axis is Axis.X else piece.height for piece in pieces]
        full = width if axis is Axis.X else height
        lengths[-1] = full - trailing - sum(lengths[:-1])
        outs = [
            self._best(piece, length, height) if axis is Axis.X else self._best(piece, width, length)
            for piece, length in zip(pieces, lengths, strict=True)
        ]
        if trailing:
            lengths.append(trailing)
            outs.append(self._waste(trailing, height) if axis is Axis.X else self._waste(width, trailing))
        rest = outs[-1]
        for length, out in zip(reversed(lengths[:-1]), reversed(outs[:-1]), strict=True):
            rest = self._joined(axis, length, out, rest)
        return rest

    def _joined(self, axis: Axis, length: int, first: CutOut, second: CutOut) -> CutOut:
        at = (length - self._kerf) * self._unit
        tree = ThroughCut(axis, at, first.tree, second.tree)
        return CutOut(tree, first.squares + second.squares, first.cuts + second.cuts + 1)

    def _waste(self, width: int, height: int) -> CutOut:
        area = max(0, width - self._kerf) * max(0, height - self._kerf)
        return CutOut(Leftover(), area * area, 0)


def _each_one_last(pieces: tuple[Arrangement, ...]) -> Iterator[tuple[Arrangement, ...]]:
    for at, piece in enumerate(pieces):
        if piece not in pieces[at + 1 :]:
            yield (*pieces[:at], *pieces[at + 1 :], piece)
