"""The same parts on the same sheet, lying so that fewer settings free them.

A search for value stops at the first arrangement that is worth enough, and that
can be a scattered one. For a handful of parts all arrangements of blocks are
built up from small to large; of each handful only those are kept than which none
is both narrower and lower. Blocks of one kind of part are added one at a time.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import product
from math import prod
from typing import Final

from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.strips import Arrangement, Leaf, in_a_row, parts_of

MOST_HANDFULS: Final = 100
"""Above this many sub-collections of the parts the arrangement is left as it is."""
MOST_KEPT: Final = 8

Handful = tuple[int, ...]


def arrangements(piece: Arrangement, sheet: Sheet) -> tuple[Arrangement, ...]:
    """Compact arrangements of the parts of ``piece``; none where there are too many parts."""
    counts = sorted(parts_of(piece).items())
    if prod(many + 1 for _, many in counts) > MOST_HANDFULS:
        return ()
    handfuls = list(product(*(range(many + 1) for _, many in counts)))
    blocks = {part: _blocks(part, many, sheet) for part, many in counts}
    known: dict[Handful, list[Arrangement]] = {handfuls[0]: []}
    for handful in handfuls[1:]:
        known[handful] = _smallest(_built(handful, [part for part, _ in counts], blocks, known, sheet))
    return tuple(known[handfuls[-1]])


def _built(
    handful: Handful,
    parts: list[int],
    blocks: dict[int, list[list[Arrangement]]],
    known: dict[Handful, list[Arrangement]],
    sheet: Sheet,
) -> Iterator[tuple[int, int, Axis, tuple[Arrangement, ...]]]:
    """Every block of one kind beside or below what is known of the rest: width, height, how."""
    for at, part in enumerate(parts):
        for many in range(1, handful[at] + 1):
            rest = (*handful[:at], handful[at] - many, *handful[at + 1 :])
            for block in blocks[part][many]:
                if not any(rest):
                    yield block.width, block.height, Axis.X, (block,)
                for other in known[rest]:
                    width, height = block.width + other.width, max(block.height, other.height)
                    if width <= sheet.width and height <= sheet.height:
                        yield width, height, Axis.X, (block, other)
                    width, height = max(block.width, other.width), block.height + other.height
                    if width <= sheet.width and height <= sheet.height:
                        yield width, height, Axis.Y, (block, other)


def _smallest(
    built: Iterable[tuple[int, int, Axis, tuple[Arrangement, ...]]],
) -> list[Arrangement]:
    """Those than which none is both narrower and lower, the flattest few and the most compact."""
    ways = sorted(built, key=lambda way: (way[0], way[1], len(way[3])))
    kept: list[tuple[int, int, Axis, tuple[Arrangement, ...]]] = []
    for way in ways:
        if not kept or way[1] < kept[-1][1]:
            kept.append(way)
    kept.sort(key=lambda way: way[0] * way[1])
    rows = (in_a_row(axis, pieces) for _, _, axis, pieces in kept[:MOST_KEPT])
    return [row for row in rows if row is not None]


def _blocks(part: int, most: int, sheet: Sheet) -> list[list[Arrangement]]:
    """By number: rows and columns of one part lying one way, each of them full."""
    blocks: list[list[Arrangement]] = [[] for _ in range(most + 1)]
    for shape in sheet.shapes:
        if shape.part != part:
            continue
        for across in range(1, most + 1):
            for down in range(1, most // across + 1):
                if across * shape.width > sheet.width or down * shape.height > sheet.height:
                    break
                row = in_a_row(Axis.X, [Leaf(shape)] * across)
                block = in_a_row(Axis.Y, [row] * down) if row else None
                if block:
                    blocks[across * down].append(block)
    return blocks
