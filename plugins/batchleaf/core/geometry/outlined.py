"""The outlines of faces and parts where they lie: turned with them, mirrored, joined at folds.

A folded base is cut to its shape once it is folded, all panels at once: each has the outline
of the finished piece, seen from the side that it looks to.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import reduce
from itertools import pairwise
from math import ceil, floor
from typing import Final

from batchleaf.core.geometry.aspects import Aspect, Crease, Leaf
from batchleaf.core.geometry.lying import Lying
from batchleaf.core.geometry.panels import Panel, panels_of
from batchleaf.facts import Part
from batchleaf.facts.spots import Face
from batchleaf.measure.lengths import Size
from batchleaf.measure.outlines import HUNDREDTHS, Outline, Point, Step, around, points_within, starts_of
from batchleaf.measure.rects import Rect

_PIECES: Final = 8
"""Into how many columns what slants is cut."""
_FROM_BEHIND: Final = (Face.BACK, Face.INSIDE_LEFT)
"""Faces that look the other way than the front of the finished piece."""


def of_face(base: Part, panel: Panel) -> Outline | None:
    """A face of a base as it is seen, from its own top left; ``None`` where it is a rectangle."""
    if base.shape.is_rectangle:
        return None
    return _facing(panel, base.shape.outline(base.folded_size), base.folded_size)


def of_lying(one: Lying) -> Outline | None:
    """A part on its face, from the top left of that; ``None`` where it is a rectangle."""
    if one.part.shape.is_rectangle:
        return None
    return _laid(one, one.part.shape.outline(one.part.folded_size))


def cut_off_face(base: Part, panel: Panel) -> list[Rect]:
    """Rectangles that cover all that is cut off a face, its scallops with it."""
    if base.shape.is_rectangle:
        return []
    size = base.folded_size
    inner = _facing(panel, base.shape.without_scallops(size), size)
    return outside(inner, Rect(Fraction(0), Fraction(0), size.width, size.height))


def cut_off_part(one: Lying) -> list[Rect]:
    """Rectangles on its face that cover all that is cut off a part, its scallops with it."""
    if one.part.shape.is_rectangle:
        return []
    return outside(_laid(one, one.part.shape.without_scallops(one.part.folded_size)), one.rect)


def _facing(panel: Panel, outline: Outline, size: Size) -> Outline:
    """The outline of the finished piece on the face that looks this way.

    Every other panel of an accordion looks the other way once it is folded.
    """
    if panel.face is Face.INSIDE_TOP:
        return outline.upside_down(size.height)
    odd = panel.number % 2 == 1
    behind = {Face.PANEL: not odd, Face.BACK_OF_PANEL: odd}
    return outline.flipped(size.width) if behind.get(panel.face, panel.face in _FROM_BEHIND) else outline


def _laid(one: Lying, outline: Outline) -> Outline:
    return outline.turned(one.part.folded_size, one.spot.quarter_turns).moved(one.rect.x, one.rect.y)


def in_aspect(outline: Outline | None, leaf: Leaf) -> Outline | None:
    """What lies on a face where it is seen in an aspect."""
    if outline is None:
        return None
    size = leaf.panel.size
    if leaf.across:
        outline = outline.flipped(size.width)
    if leaf.down:
        outline = outline.upside_down(size.height)
    return outline.moved(leaf.x, leaf.y)


def of_sheet(sheet: Rect, leaves: Iterable[Leaf], base: Part) -> Outline | None:
    """A piece of the base as it is seen in an aspect, its faces in one; ``None`` for a rectangle."""
    mine = sorted((leaf for leaf in leaves if sheet.holds(leaf.rect)), key=lambda leaf: (leaf.x, leaf.y))
    found = [in_aspect(of_face(base, leaf.panel), leaf) for leaf in mine]
    return reduce(Outline.joined, (one for one in found if one is not None)) if None not in found else None


def of_blank(part: Part) -> Outline | None:
    """The flat blank, its outside up, opened again after it was cut to its shape."""
    if part.shape.is_rectangle:
        return None
    faces = sorted(
        (panel for panel in panels_of(part) if panel.outer), key=lambda panel: (panel.blank.x, panel.blank.y)
    )
    found = [
        outline.moved(panel.blank.x, panel.blank.y)
        for panel in faces
        if (outline := _on_blank(part, panel)) is not None
    ]
    return reduce(Outline.joined, found)


def _on_blank(part: Part, panel: Panel) -> Outline | None:
    """The back of a top fold, which is seen with its fold on top, stands on its head there."""
    outline = of_face(part, panel)
    if outline is None or panel.face is not Face.BACK or not part.scores or part.scores[0].runs_down:
        return outline
    return outline.turned(panel.size, 2)


def trimmed(aspect: Aspect, bases: Sequence[Part]) -> Aspect:
    """With its folds as long as the shape of the base leaves them."""
    of_letter = {base.letter: base for base in bases}
    corners = [
        step.to
        for leaf in aspect.nearest.leaves
        if (outline := in_aspect(of_face(of_letter[leaf.panel.base], leaf.panel), leaf)) is not None
        for step in outline.edge
    ]
    if not corners:
        return aspect
    return replace(aspect, creases=tuple(_between(crease, corners) for crease in aspect.creases))


def _between(crease: Crease, corners: Sequence[Point]) -> Crease:
    """From the first to the last corner of an outline that lies on the fold."""
    if crease.x1 == crease.x2:
        ys = [y for x, y in corners if x == crease.x1]
        return replace(crease, y1=min(ys), y2=max(ys))
    xs = [x for x, y in corners if y == crease.y1]
    return replace(crease, x1=min(xs), x2=max(xs))


def outside(outline: Outline, rect: Rect) -> list[Rect]:
    """Rectangles that together cover all of ``rect`` that the outline leaves out, and little more.

    The piece is taken as the polygon that :func:`points_within` finds inside of it, in columns:
    each line of it is taken as wholly outside as far as it goes up and down in a column, to a
    hundredth of a mm where it does not end at a corner of the piece.
    """
    corners = points_within(outline.edge)
    lines = list(pairwise((corners[-1], *corners)))
    ends = frozenset(step.to[1] for step in outline.edge)
    xs = {x for x, _ in corners} | {x for start, step in starts_of(outline.edge) for x in _along(start, step)}
    found = [around(hole) for hole in outline.holes]
    for left, right in pairwise(sorted({rect.x, rect.right, *(x for x in xs if rect.x < x < rect.right)})):
        found += [
            Rect(left, top, right - left, foot - top)
            for top, foot in _left_out(left, right, lines, ends, rect)
            if foot > top
        ]
    return found


def _along(start: Point, step: Step) -> Iterator[Fraction]:
    """Where columns end along a straight line that slants."""
    across = step.to[0] - start[0]
    if across and step.to[1] != start[1] and step.corner is None:
        for number in range(1, _PIECES):
            yield _hundredths(start[0] + across * number / _PIECES, floor)


def _left_out(
    left: Fraction,
    right: Fraction,
    lines: Sequence[tuple[Point, Point]],
    ends: Collection[Fraction],
    rect: Rect,
) -> list[tuple[Fraction, Fraction]]:
    """From top to foot of a column in which no line begins or ends: in by one line, out by the next."""
    crossing = sorted(
        (
            sorted((_at(left, one, other), _at(right, one, other)))
            for one, other in lines
            if _spans(left, right, one, other)
        ),
        key=sum,
    )
    passed = (
        near if near in ends else _hundredths(near, rounded)
        for number, (first, last) in enumerate(crossing)
        # A line into the piece is passed where it ends, one out of it met where it begins.
        for near, rounded in (((last, ceil),) if number % 2 == 0 else ((first, floor),))
    )
    edges = [rect.y, *passed, rect.bottom]
    return list(zip(edges[::2], edges[1::2], strict=True))


def _spans(left: Fraction, right: Fraction, one: Point, other: Point) -> bool:
    return min(one[0], other[0]) <= left and right <= max(one[0], other[0])


def _hundredths(length: Fraction, rounded: Callable[[Fraction], int]) -> Fraction:
    return Fraction(rounded(length * HUNDREDTHS), HUNDREDTHS)


def _at(x: Fraction, one: Point, other: Point) -> Fraction:
    return one[1] + (other[1] - one[1]) * (x - one[0]) / (other[0] - one[0])
