"""One sheet filled row by row, or column by column.

First fit by falling height (Coffman, Garey, Johnson and Tarjan, "Performance bounds
for level-oriented two-dimensional packing algorithms", SIAM J. Comput. 9 (1980)
808-826). Where parts are stacked, a row takes lower ones several deep:

    +------+------+---+---+
    |  A   |  A   | B | B |
    |      |      +---+---+
    |      |      | B | B |
    +------+------+---+---+

Such rows need through cuts only.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import Enum
from itertools import product

from batchleaf.core.cutting.integers import Shape, Sheet
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row


class Lying(Enum):
    """Which of a part's two ways of lying the rows may use."""

    AS_GIVEN = "as given"
    FLAT = "flat"
    TALL = "tall"
    ANY = "any"


@dataclass(frozen=True, slots=True)
class Manner:
    """``along`` X makes rows, Y makes columns."""

    lying: Lying
    along: Axis
    stacked: bool


MANNERS = tuple(
    Manner(lying, along, stacked) for stacked, lying, along in product((False, True), Lying, (Axis.X, Axis.Y))
)


@dataclass(frozen=True, slots=True)
class Block:
    """``across`` equal parts beside one another, each ``deep`` times."""

    shape: Shape
    across: int
    deep: int

    @property
    def many(self) -> int:
        """All its parts."""
        return self.across * self.deep


@dataclass(frozen=True, slots=True)
class Row:
    """``times`` equal rows of blocks."""

    blocks: tuple[Block, ...]
    times: int


def rows_on(sheet: Sheet, wanted: Mapping[int, int], manner: Manner) -> tuple[Row, ...]:
    """Rows for what is ``wanted`` by part, so far as ``sheet`` holds them; the last may have spares."""
    room = _depth(sheet, manner.along)
    shapes = _in_order(sheet, manner)
    rest = dict(wanted)
    rows: list[Row] = []
    while opener := _opener(shapes, rest, manner, room):
        depth = _depth(opener, manner.along)
        blocks = _filled(shapes, rest, manner, depth, _length(sheet, manner.along))
        counts = count_of(blocks)
        times = max(1, min(room // depth, *(rest[part] // many for part, many in counts.items())))
        for part, many in counts.items():
            rest[part] -= times * many
        room -= times * depth
        rows.append(Row(blocks, times))
    return tuple(rows)


def count_of(blocks: Iterable[Block]) -> dict[int, int]:
    """How many of each part."""
    counts: dict[int, int] = {}
    for block in blocks:
        counts[block.shape.part] = counts.get(block.shape.part, 0) + block.many
    return counts


def as_arrangement(rows: Iterable[Row], along: Axis) -> Arrangement | None:
    """The rows below one another, or the columns side by side."""
    across = Axis.Y if along is Axis.X else Axis.X
    lines: list[Arrangement] = []
    for row in rows:
        blocks: list[Arrangement] = []
        for block in row.blocks:
            column = in_a_row(across, [Leaf(block.shape)] * block.deep)
            blocks.extend([column] * block.across if column else [])
        line = in_a_row(along, blocks)
        lines.extend([line] * row.times if line else [])
    return in_a_row(across, lines)


def _length(piece: Sheet | Shape, along: Axis) -> int:
    return piece.width if along is Axis.X else piece.height


def _depth(piece: Sheet | Shape, along: Axis) -> int:
    return piece.height if along is Axis.X else piece.width


def _in_order(sheet: Sheet, manner: Manner) -> tuple[Shape, ...]:
    """The shapes that ``manner`` may use, the deepest first."""
    along = manner.along
    ordered = sorted(sheet.shapes, key=lambda s: (-_depth(s, along), -_length(s, along), s.part))
    match manner.lying:
        case Lying.ANY:
            return tuple(ordered)
        case Lying.TALL:
            kept = {shape.part: shape for shape in reversed(ordered)}
        case Lying.FLAT:
            kept = {shape.part: shape for shape in ordered}
        case Lying.AS_GIVEN:
            kept = {shape.part: shape for shape in sorted(ordered, key=lambda s: not s.turned)}
    chosen = set(kept.values())
    return tuple(shape for shape in ordered if shape in chosen)


def _opener(shapes: Iterable[Shape], rest: Mapping[int, int], manner: Manner, room: int) -> Shape | None:
    """The deepest part that is wanted and for which there is still room."""
    return next(
        (s for s in shapes if rest.get(s.part, 0) > 0 and _depth(s, manner.along) <= room),
        None,
    )


def _filled(
    shapes: Iterable[Shape], wanted: Mapping[int, int], manner: Manner, depth: int, length: int
) -> tuple[Block, ...]:
    """One row, as deep as ``depth``, on a sheet as long as ``length``."""
    rest = dict(wanted)
    blocks: list[Block] = []
    for shape in shapes:
        own_depth, own_length = _depth(shape, manner.along), _length(shape, manner.along)
        need = rest.get(shape.part, 0)
        if need <= 0 or own_depth > depth or own_length > length:
            continue
        deep = min(depth // own_depth, need) if manner.stacked else 1
        block = Block(shape, min(length // own_length, -(-need // deep)), deep)
        rest[shape.part] = need - block.many
        length -= block.across * own_length
        blocks.append(block)
    return tuple(blocks)
