"""Arrangements of parts: strips within strips, without sizes and without waste.

An arrangement says only how parts lie beside and below one another. Its size is
that of the smallest piece that holds it; whatever a larger piece has besides is
left over. Each arrangement has one spelling: strips along one axis never nest
directly, larger ones come first, equal ones follow one another.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

from batchleaf.core.cutting.integers import Shape
from batchleaf.core.cutting.plan import Axis


@dataclass(frozen=True, slots=True)
class Leaf:
    """One part."""

    shape: Shape

    @property
    def width(self) -> int:
        """With the kerf."""
        return self.shape.width

    @property
    def height(self) -> int:
        """With the kerf."""
        return self.shape.height


@dataclass(frozen=True, slots=True)
class Strips:
    """Two or more pieces in a row: side by side along X, or one below the other along Y."""

    axis: Axis
    pieces: tuple[Arrangement, ...]
    width: int = field(compare=False)
    height: int = field(compare=False)
    spelt: str = field(compare=False)
    """The :func:`spelling`, kept: it is asked for whenever a row is sorted."""


Arrangement = Leaf | Strips


def in_a_row(axis: Axis, pieces: Iterable[Arrangement]) -> Arrangement | None:
    """``pieces`` along ``axis`` in the one spelling; None where there is none."""
    flat: list[Arrangement] = []
    for piece in pieces:
        if isinstance(piece, Strips) and piece.axis is axis:
            flat.extend(piece.pieces)
        else:
            flat.append(piece)
    if len(flat) < 2:
        return flat[0] if flat else None
    flat.sort(key=_largest_first, reverse=True)
    widths = [piece.width for piece in flat]
    heights = [piece.height for piece in flat]
    spelt = f"{axis}({' '.join(map(spelling, flat))})"
    if axis is Axis.X:
        return Strips(axis, tuple(flat), sum(widths), max(heights), spelt)
    return Strips(axis, tuple(flat), max(widths), sum(heights), spelt)


def _largest_first(piece: Arrangement) -> tuple[int, int, int, str]:
    return (piece.width * piece.height, piece.width, piece.height, spelling(piece))


def spelling(piece: Arrangement) -> str:
    """A short text that differs where arrangements differ."""
    if isinstance(piece, Leaf):
        return f"{piece.shape.part}{'t' if piece.shape.turned else ''}"
    return piece.spelt


def parts_of(piece: Arrangement | None) -> Counter[int]:
    """How often each part lies in ``piece``."""
    found: Counter[int] = Counter()
    waiting = [piece] if piece else []
    while waiting:
        here = waiting.pop()
        if isinstance(here, Leaf):
            found[here.shape.part] += 1
        else:
            waiting.extend(here.pieces)
    return found


def without(piece: Arrangement, part: int, many: int = 1) -> Arrangement | None:
    """``piece`` with ``many`` of ``part`` fewer, or all that it has, taken from its last strips."""
    return _fewer(piece, part, many)[0]


def _fewer(piece: Arrangement, part: int, many: int) -> tuple[Arrangement | None, int]:
    """What is left, and how many are gone."""
    if isinstance(piece, Leaf):
        return (None, 1) if many and piece.shape.part == part else (piece, 0)
    gone = 0
    left: list[Arrangement] = []
    for strip in reversed(piece.pieces):
        rest, taken = _fewer(strip, part, many - gone) if gone < many else (strip, 0)
        gone += taken
        if rest:
            left.append(rest)
    return (in_a_row(piece.axis, reversed(left)), gone) if gone else (piece, 0)


def stops_of(piece: Arrangement) -> int:
    """About how many times the trimmer is set for ``piece``: once for each different strip of a row."""
    if isinstance(piece, Leaf):
        return 0
    different = dict.fromkeys(piece.pieces)
    lengths = {part.width if piece.axis is Axis.X else part.height for part in different}
    return len(lengths) + sum(map(stops_of, different))
