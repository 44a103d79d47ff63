"""The shape of a part in words: ``a circle of 16 mm``, ``its top corners clipped by 14 mm``."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from batchleaf.facts import Part
from batchleaf.facts.shapes import Corner, CornerCut, Edge, EdgeCut, EdgeKind, Hole, Whole
from batchleaf.facts.spots import Spot
from batchleaf.measure.display import NBSP, show_length, show_size
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.lying_in_words import in_from_edges
from batchleaf.views.words import listed

_AT: Final = {
    Edge.TOP: "on top",
    Edge.RIGHT: "at the right",
    Edge.BOTTOM: "at the foot",
    Edge.LEFT: "at the left",
}
_NAMED: Final = {
    frozenset(Corner): "corners",
    **{frozenset(edge.ends): f"{edge.value} corners" for edge in Edge},
}


def size_and_shape(part: Part, size: Size, unit: Unit) -> str:
    """``60 × 100 mm, its top corners clipped by 14 mm``; of what fills its size ``a circle of 16 mm``.

    ``size``: of what is looked at, an opened card for example.
    """
    whole, *cut = shape_words(part, unit) if part.shape.whole else ["", *shape_words(part, unit)]
    return ", ".join([whole or f"{show_size(size, unit)}{NBSP}{unit.word}", *cut])


def shape_words(part: Part, unit: Unit) -> list[str]:
    """All that is cut and punched, one after the other; nothing of a rectangle."""
    return [
        *_whole(part, unit),
        *(_corners(cut, unit) for cut in part.shape.corners),
        *(words for cut in part.shape.edges for words in _edges(cut, part, unit)),
        *(_hole(hole, part, unit) for hole in part.shape.holes),
    ]


def _whole(part: Part, unit: Unit) -> Iterator[str]:
    match part.shape.whole:
        case Whole.CIRCLE:
            yield f"a circle of {_long(part.folded_size.width, unit)}"
        case Whole.OVAL:
            yield f"an oval of {show_size(part.folded_size, unit)}{NBSP}{unit.word}"


def _corners(cut: CornerCut, unit: Unit) -> str:
    named = _NAMED.get(frozenset(cut.corners)) or f"{listed([one.value for one in cut.corners])} corner"
    return f"its {named} {cut.kind.value} by {_long(cut.by, unit)}"


def _edges(cut: EdgeCut, part: Part, unit: Unit) -> Iterator[str]:
    """How deep a point or a notch is; of scallops how many stand side by side."""
    if cut.kind is not EdgeKind.SCALLOPED:
        yield from (f"{cut.kind.value} {_AT[edge]} by {_long(cut.by, unit)}" for edge in cut.edges)
    elif len(cut.edges) == len(Edge):
        count = sum(part.shape.scallops(edge, part.folded_size) for edge in Edge)
        yield f"scalloped all round, {count} half circles"
    else:
        for edge in cut.edges:
            yield f"scalloped {_AT[edge]}, {part.shape.scallops(edge, part.folded_size)} half circles"


def _hole(hole: Hole, part: Part, unit: Unit) -> str:
    size = part.folded_size
    whole = Rect(Fraction(0), Fraction(0), size.width, size.height)
    where = in_from_edges(hole.on(size), whole, unit, Spot(hole.across, hole.down))
    return f"a hole of {_long(hole.diameter, unit)}, {where.replace(', ', ' and ')}"


def _long(length: Fraction, unit: Unit) -> str:
    return f"{show_length(length, unit)}{NBSP}{unit.word}"
