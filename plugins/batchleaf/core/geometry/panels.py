"""The faces of a base: which panel of its flat blank each of them is, and how large."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import Face
from batchleaf.measure.lengths import Size
from batchleaf.measure.rects import Rect


@dataclass(frozen=True, slots=True)
class Panel:
    """One face of a base, as it is seen when one looks at it.

    ``blank``: where it lies on the flat blank, seen from the side that it is on; the two
    sides are seen with the blank turned over across its folds, so that both are upright.
    ``outer``: the side that is outside once folded. ``number``: of an accordion, from the
    left; else 0. ``base``: the letter of the part it belongs to.
    """

    base: str
    face: Face
    number: int
    blank: Rect
    outer: bool

    @property
    def size(self) -> Size:
        """Its size as it is seen."""
        return self.blank.size

    @property
    def key(self) -> tuple[str, Face, int]:
        """What tells it from all others of the make."""
        return self.base, self.face, self.number

    @property
    def name(self) -> str:
        """``inside left``, ``panel 3``."""
        return f"{self.face.value} {self.number}" if self.number else self.face.value


def panels_of(base: Part) -> tuple[Panel, ...]:
    """All faces of a base; the one that is seen first comes first.

    A folded card is seen with its fold at the left (side fold) or on top (top fold,
    tent). Outside, its back lies left of, or above, its front; inside, the panel behind
    the front lies at the left, or on top.
    """
    width, height = base.size.width, base.size.height
    down = [score.at for score in base.scores if score.runs_down]
    across = [score.at for score in base.scores if not score.runs_down]
    found: Iterator[Panel]
    match base.fold:
        case Fold.SIDE:
            left, right = _columns(down, width, height)
            found = _faces(base, [(Face.FRONT, right), (Face.BACK, left)],
                           [(Face.INSIDE_LEFT, left), (Face.INSIDE_RIGHT, right)])  # fmt: skip
        case Fold.TOP | Fold.TENT:
            top, bottom = _rows(across, width, height)
            found = _faces(base, [(Face.FRONT, bottom), (Face.BACK, top)],
                           [(Face.INSIDE_TOP, top), (Face.INSIDE_BOTTOM, bottom)])  # fmt: skip
        case Fold.GATE:
            left, middle, right = _columns(down, width, height)
            # Seen from outside, the door that closes from the left lies at the right of the blank.
            found = _faces(base, [(Face.LEFT_DOOR, right), (Face.RIGHT_DOOR, left), (Face.BACK, middle)],
                           [(Face.INSIDE, middle), (Face.INSIDE_LEFT_DOOR, left),
                            (Face.INSIDE_RIGHT_DOOR, right)])  # fmt: skip
        case Fold.ACCORDION:
            columns = _columns(down, width, height)
            found = _accordion(base, columns)
        case Fold.BOX:
            found = _box(base, down, across)
        case Fold.SLEEVE:
            found = _sleeve(base, _columns(down, width, height))
        case Fold.SLIPCASE | Fold.COVER:
            found = _with_a_spine(base, _columns(down, width, height), across)
        case _:
            whole = Rect(Fraction(0), Fraction(0), width, height)
            found = _faces(base, [(Face.FRONT, whole)], [(Face.BACK, whole)])
    return tuple(found)


def round_of(base: Part) -> Panel:
    """No face of the blank: what goes round the closed piece, as large as that is seen from the front."""
    closed = Rect(Fraction(0), Fraction(0), base.folded_size.width, base.folded_size.height)
    return Panel(base.letter, Face.ROUND, 0, closed, outer=True)


DEFAULT: Final = {Fold.GATE: Face.INSIDE, Fold.ACCORDION: Face.PANEL, Fold.BOX: Face.INSIDE}
"""Where a part lies that names no face; on everything else it is the front."""


def default_face(base: Part, *, is_lid: bool) -> Face:
    """The face of a part that names none: the one others are measured by."""
    return Face.FRONT if is_lid else DEFAULT.get(base.fold, Face.FRONT)


def _faces(
    base: Part, outer: Sequence[tuple[Face, Rect]], inner: Sequence[tuple[Face, Rect]]
) -> Iterator[Panel]:
    yield from (Panel(base.letter, face, 0, blank, outer=True) for face, blank in outer)
    yield from (Panel(base.letter, face, 0, blank, outer=False) for face, blank in inner)


def _columns(scores: Sequence[Fraction], width: Fraction, height: Fraction) -> list[Rect]:
    edges = [Fraction(0), *sorted(scores), width]
    return [Rect(a, Fraction(0), b - a, height) for a, b in pairwise(edges)]


def _rows(scores: Sequence[Fraction], width: Fraction, height: Fraction) -> list[Rect]:
    edges = [Fraction(0), *sorted(scores), height]
    return [Rect(Fraction(0), a, width, b - a) for a, b in pairwise(edges)]


def _sleeve(base: Part, columns: Sequence[Rect]) -> Iterator[Panel]:
    """Its last column is the flap, which is no face."""
    front, *sides, _ = columns
    names = [Face.RIGHT_WALL, Face.BACK, Face.LEFT_WALL] if len(sides) > 1 else [Face.BACK]
    return _faces(base, [(Face.FRONT, front), *zip(names, sides, strict=True)], [])


def _with_a_spine(base: Part, columns: Sequence[Rect], across: Sequence[Fraction]) -> Iterator[Panel]:
    """Of a cover the first and the last column are turned in, and its inside is seen once it is open."""
    top, bottom = sorted(across)
    is_cover = base.fold is Fold.COVER
    back, *spine, front = (
        Rect(one.x, top, one.width, bottom - top) for one in (columns[1:-1] if is_cover else columns)
    )
    outer = [(Face.FRONT, front), (Face.BACK, back), *((Face.SPINE, one) for one in spine)]
    inner = [(Face.INSIDE_LEFT, front), (Face.INSIDE_RIGHT, back)] if is_cover else []
    turned_over = [(face, replace(one, x=base.size.width - one.right)) for face, one in inner]
    return _faces(base, outer, turned_over)


def _accordion(base: Part, columns: Sequence[Rect]) -> Iterator[Panel]:
    for number, blank in enumerate(columns, start=1):
        yield Panel(base.letter, Face.PANEL, number, blank, outer=True)
    for number, blank in enumerate(columns, start=1):
        turned_over = Rect(base.size.width - blank.right, blank.y, blank.width, blank.height)
        yield Panel(base.letter, Face.BACK_OF_PANEL, number, turned_over, outer=False)


def _box(base: Part, down: Sequence[Fraction], across: Sequence[Fraction]) -> Iterator[Panel]:
    """Bottom and walls; of a lid the outside of its top is the front."""
    left, right = sorted(down)
    top, bottom = sorted(across)
    floor = Rect(left, top, right - left, bottom - top)
    width, height = base.size.width, base.size.height
    yield Panel(base.letter, Face.INSIDE, 0, floor, outer=False)
    yield Panel(base.letter, Face.FRONT, 0, floor, outer=True)
    walls = {
        Face.FRONT_WALL: Rect(left, bottom, floor.width, height - bottom),
        Face.BACK_WALL: Rect(left, Fraction(0), floor.width, top),
        Face.LEFT_WALL: Rect(Fraction(0), top, left, floor.height),
        Face.RIGHT_WALL: Rect(right, top, width - right, floor.height),
    }
    yield from (Panel(base.letter, face, 0, blank, outer=True) for face, blank in walls.items())
