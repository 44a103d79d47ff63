"""Shapes on pieces of all sizes, made by chance, and their areas by hand."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from random import Random

from hypothesis import strategies as st

from batchleaf.facts import Fold
from batchleaf.facts.shapes import Edge, EdgeKind, Shape, Whole
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.outlines import PI
from batchleaf.records.cut_to_shape import fitted, read_features

CORNERS = ("top left", "top right", "bottom right", "bottom left")
EDGES = ("top", "right", "bottom", "left")


@dataclass(frozen=True)
class Cut:
    """A shape that was read, on the piece that it fits on."""

    words: str
    size: Size
    shape: Shape


def shape_of(words: str, size: Size, fold: Fold = Fold.NONE) -> Shape:
    """A shape in the words of a record, in mm."""
    return fitted(read_features(words, Unit.MM), size, fold, Unit.MM)


def by_chance(seed: int) -> Cut:
    """Some corners, some edges, some holes, with all that does not fit left out again."""
    draw = Random(seed)
    width = draw.randint(20, 240)
    size = Size(Fraction(width, 2), Fraction(draw.choice([width, draw.randint(20, 240)]), 2))
    said: list[str] = []
    for _ in range(draw.randint(1, 7)):
        piece = _piece(draw, size)
        try:
            shape_of(", ".join([*said, piece]), size)
        except MeasureError:
            continue
        said.append(piece)
    words = ", ".join(said)
    return Cut(words, size, shape_of(words, size) if words else Shape())


def _piece(draw: Random, size: Size) -> str:
    by = Fraction(draw.randint(4, int(2 * max(size.width, size.height))), draw.choice([2, 4, 4, 8]))
    measure = f"{float(by):.2f}"
    return draw.choice(
        [
            draw.choice(["circle", "oval"]),
            f"rounded {measure} {draw.choice(['', *EDGES, *CORNERS])}".strip(),
            f"clipped {measure} {draw.choice(['', *EDGES, *CORNERS])}".strip(),
            f"pointed {measure} {draw.choice(EDGES)}",
            f"notched {measure} {draw.choice(EDGES)}",
            f"scalloped {measure} {draw.choice(['', *EDGES])}".strip(),
            f"hole {draw.randint(2, 9)} top left, right {draw.randint(1, 99)}, down {draw.randint(1, 99)}",
        ]
    )


CUTS = st.integers(0, 10**6).map(by_chance)
"""For hypothesis."""


def cut_off_by_hand(one: Cut) -> Fraction:
    """What is cut off and out of the rectangle, summed from the formulas of each cut.

    A square outside of its quarter circle is r² − πr²/4, a clipped corner c²/2; beside a point, and
    in a notch, lies half of its rectangle. Outside of scallops is what they leave of their strip,
    w/2 deep, without the half ellipses; where two strips cross at a corner they leave it all.
    """
    shape, size = one.shape, one.size
    if shape.whole in (Whole.CIRCLE, Whole.OVAL):
        off = size.area * (1 - PI / 4)
    else:
        off = sum(
            (
                cut.by**2 * (1 - PI / 4 if cut.kind.value == "rounded" else Fraction(1, 2)) * len(cut.corners)
                for cut in shape.corners
            ),
            Fraction(0),
        )
        strips = {
            edge: cut.by / 2 for cut in shape.edges if cut.kind is EdgeKind.SCALLOPED for edge in cut.edges
        }
        inner = Size(
            size.width - strips.get(Edge.LEFT, Fraction(0)) - strips.get(Edge.RIGHT, Fraction(0)),
            size.height - strips.get(Edge.TOP, Fraction(0)) - strips.get(Edge.BOTTOM, Fraction(0)),
        )
        off += size.area - inner.area
        for cut in shape.edges:
            for edge in cut.edges:
                length = inner.width if edge.is_level else inner.height
                if cut.kind is EdgeKind.SCALLOPED:
                    # Half an ellipse: π/2 times its depth times half its width, for each of them.
                    off -= PI / 2 * strips[edge] * length / 2
                else:
                    off += length * cut.by / 2
    return off + sum((PI * hole.diameter**2 / 4 for hole in shape.holes), Fraction(0))
