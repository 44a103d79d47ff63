"""A make folded flat, as it goes into an envelope: which rectangles lie over one another.

A card is seen from its front. Each panel of its blank lies once folded on the one that its
score joins it to: leaf by leaf to and fro (a side fold, a top fold and a tent are an
accordion of two), the doors of a gate both onto its back.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from typing import Final

from batchleaf.core.geometry.lying import Lying, MadeUp
from batchleaf.core.geometry.panels import Panel
from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import Face
from batchleaf.measure.lengths import Size
from batchleaf.measure.rects import Rect

MOST_TURNS: Final = 100
"""How often a band is taken to go round at most."""


@dataclass(frozen=True, slots=True)
class Layer:
    """One thickness of a part over a rectangle of the folded make; ``carried``: it lies on another part."""

    part: Part
    rect: Rect
    carried: bool


@dataclass(frozen=True, slots=True)
class Folded:
    """``face``: what the folded base covers. ``layers`` may reach past it, where something sticks out."""

    face: Rect
    layers: tuple[Layer, ...]

    @property
    def size(self) -> Size:
        """The make from edge to edge, with what sticks out."""
        rects = [layer.rect for layer in self.layers]
        return Size(
            max(rect.right for rect in rects) - min(rect.x for rect in rects),
            max(rect.bottom for rect in rects) - min(rect.y for rect in rects),
        )


@dataclass(frozen=True, slots=True)
class _Leaf:
    """A panel of the blank from ``start`` to ``end``, seen from outside; folded, it begins at ``at``.

    ``way``: 1 where it lies as it was, −1 where it is turned over.
    """

    start: Fraction
    end: Fraction
    at: Fraction
    way: int

    def folded(self, place: Fraction) -> Fraction:
        """Where a place along the blank lies once it is folded."""
        return self.at + self.way * (place - self.start)


def fold_up(made: MadeUp, base: Part) -> Folded:
    """The make of a flat or folded base. Raises :class:`ValueError` for a box, which does not lie flat.

    A cover is closed, a sleeve pressed flat: neither has anything in it.
    """
    if base.fold in (Fold.BOX, Fold.SLIPCASE):
        raise ValueError(f"a {base.fold.value} does not lie flat")
    if base.fold is Fold.COVER:
        return _cover(made, base)
    blank = _Blank(base)
    leaves = [blank.folded(leaf, blank.whole_of(leaf)) for leaf in blank.leaves]
    face = _around(leaves)
    layers = [Layer(base, rect, carried=False) for rect in leaves]
    for one in made.lying:
        place = _on_closed(one.rect, face) if one.panel.face is Face.ROUND else blank.place(one)
        layers += [Layer(one.part, rect, carried=True) for rect in wrapped(place, face)]
    return Folded(face, tuple(layers))


def _on_closed(rect: Rect, face: Rect) -> Rect:
    """What goes round the whole is measured on what it covers once it is closed."""
    return rect.moved(face.x, face.y)


def wrapped(rect: Rect, face: Rect) -> Iterator[Rect]:
    """What overhangs two opposite edges of ``face`` is a band: its ends go round, over the other side.

    What overhangs one edge sticks out.
    """
    for one in _across(rect, face):
        yield from (_turned(piece) for piece in _across(_turned(one), _turned(face)))


def _cover(made: MadeUp, base: Part) -> Folded:
    """Front and back, each with what is turned in above, below and at the right of both."""
    size = base.folded_size
    edge = base.scores[0].at
    face = Rect(Fraction(0), Fraction(0), size.width, size.height)
    turned_in = (
        replace(face, height=edge),
        replace(face, y=size.height - edge, height=edge),
        replace(face, x=size.width - edge, width=edge),
    )
    layers = [Layer(base, rect, carried=False) for _ in range(2) for rect in (face, *turned_in)]
    mirrored = (Face.BACK, Face.INSIDE_LEFT)
    for one in made.lying:
        rect = replace(one.rect, x=size.width - one.rect.right) if one.panel.face in mirrored else one.rect
        layers += [Layer(one.part, piece, carried=True) for piece in wrapped(rect, face)]
    return Folded(face, tuple(layers))


class _Blank:
    """The leaves of a blank, along the axis that is folded."""

    def __init__(self, base: Part) -> None:
        self._size = base.size
        self.runs_down = not base.scores or base.scores[0].runs_down
        self._length = base.size.width if self.runs_down else base.size.height
        edges = [Fraction(0), *sorted(score.at for score in base.scores), self._length]
        self.leaves = list(_gate(edges) if base.fold is Fold.GATE else _to_and_fro(edges))
        ends = [leaf.folded(end) for leaf in self.leaves for end in (leaf.start, leaf.end)]
        # Folded from the back on, so that the front of these lies turned over.
        self._from_behind = base.fold in (Fold.SIDE, Fold.TOP, Fold.TENT, Fold.GATE)
        self._both_ends = min(ends) + max(ends)

    def whole_of(self, leaf: _Leaf) -> Rect:
        """The panel on the blank, seen from outside."""
        width, height = self._size.width, self._size.height
        if self.runs_down:
            return Rect(leaf.start, Fraction(0), leaf.end - leaf.start, height)
        return Rect(Fraction(0), leaf.start, width, leaf.end - leaf.start)

    def place(self, one: Lying) -> Rect:
        """Where something lies once the blank is folded."""
        on_panel = self._on_panel(one)
        panel = self._seen_from_outside(one.panel.blank, one.panel)
        rect = self._seen_from_outside(on_panel.moved(one.panel.blank.x, one.panel.blank.y), one.panel)
        start = panel.x if self.runs_down else panel.y
        leaf = next(leaf for leaf in self.leaves if leaf.start == start)
        return self.folded(leaf, rect)

    def _on_panel(self, one: Lying) -> Rect:
        """As the blank lies flat: the back of a top fold, seen with its fold on top, stands on its head."""
        size, rect = one.panel.size, one.rect
        if self.runs_down or one.panel.face is not Face.BACK:
            return rect
        return replace(rect, x=size.width - rect.right, y=size.height - rect.bottom)

    def folded(self, leaf: _Leaf, rect: Rect) -> Rect:
        """A rectangle of a leaf, once the blank is folded, seen from the front."""
        start, end = (rect.x, rect.right) if self.runs_down else (rect.y, rect.bottom)
        ends = leaf.folded(start), leaf.folded(end)
        at = self._both_ends - max(ends) if self._from_behind else min(ends)
        return replace(rect, x=at) if self.runs_down else replace(rect, y=at)

    def _seen_from_outside(self, rect: Rect, panel: Panel) -> Rect:
        """The blank is turned over across its folds."""
        if panel.outer:
            return rect
        if self.runs_down:
            return replace(rect, x=self._length - rect.right)
        return replace(rect, y=self._length - rect.bottom)


def _to_and_fro(edges: list[Fraction]) -> Iterator[_Leaf]:
    at, way = Fraction(0), 1
    for start, end in pairwise(edges):
        yield _Leaf(start, end, at, way)
        at, way = at + way * (end - start), -way


def _gate(edges: list[Fraction]) -> Iterator[_Leaf]:
    """Left door, back, right door, seen from outside and from behind; the back stays."""
    start, left, right, end = edges
    yield _Leaf(start, left, 2 * left - start, -1)
    yield _Leaf(left, right, left, 1)
    yield _Leaf(right, end, right, -1)


def _across(rect: Rect, face: Rect) -> Iterator[Rect]:
    """As :func:`wrapped`, from left to right alone."""
    if rect.x >= face.x or rect.right <= face.right:
        yield rect
        return
    yield replace(rect, x=face.x, width=face.width)
    yield from _round(face.x - rect.x, face, rect, from_left=True)
    yield from _round(rect.right - face.right, face, rect, from_left=False)


def _round(length: Fraction, face: Rect, rect: Rect, *, from_left: bool) -> Iterator[Rect]:
    """So much of a band, round one edge after the other."""
    for _ in range(MOST_TURNS):
        if length <= 0:
            return
        width = min(length, face.width)
        yield replace(rect, x=face.x if from_left else face.right - width, width=width)
        length, from_left = length - width, not from_left


def _turned(rect: Rect) -> Rect:
    """With across and down exchanged."""
    return Rect(rect.y, rect.x, rect.height, rect.width)


def _around(rects: list[Rect]) -> Rect:
    x, y = min(rect.x for rect in rects), min(rect.y for rect in rects)
    right, bottom = max(rect.right for rect in rects), max(rect.bottom for rect in rects)
    return Rect(x, y, right - x, bottom - y)
