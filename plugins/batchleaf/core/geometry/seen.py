"""What is seen in an aspect of a make, one thing over another."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from batchleaf.core.geometry.aspects import Aspect, Leaf, Level
from batchleaf.core.geometry.lying import MadeUp
from batchleaf.core.geometry.outlined import in_aspect, of_face, of_lying, of_sheet
from batchleaf.facts import Part
from batchleaf.measure.outlines import Outline, around
from batchleaf.measure.rects import Rect


@dataclass(frozen=True, slots=True)
class Seen:
    """The base, or one copy of a part, where it is seen, in mm from the top left of the aspect.

    ``index``: the copy among all that lies there; ``None``: the base itself. ``reverse``: it
    shows its other side. ``quarter_turns``: how often it is turned clockwise. ``goes_round``:
    the whole, as a band does.
    """

    rect: Rect
    part: Part
    index: int | None
    copy: int = 0
    reverse: bool = False
    quarter_turns: int = 0
    goes_round: bool = False
    outline: Outline | None = None
    """Its true outline; ``None``: it is the rectangle."""


def seen_in(aspect: Aspect, made: MadeUp, clear: Collection[str] = ()) -> tuple[Seen, ...]:
    """Everything that is seen, the farthest first; ``clear``: the letters of bases one sees through."""
    bases = {part.letter: part for part in made.bases}
    found: list[Seen] = []
    for level in reversed(list(_levels_seen(aspect, clear))):
        base = bases[level.leaves[0].panel.base]
        inner = not level.leaves[0].panel.outer
        found += (
            Seen(sheet, base, None, reverse=inner, outline=of_sheet(sheet, level.leaves, base))
            for sheet in level.sheets
        )
        for leaf in level.leaves:
            on_it = list(_on(leaf, made, reverse=not level.is_near_side))
            found += on_it if level.is_near_side else reversed(on_it)
    for leaf in aspect.round:
        found += _round(leaf, made)
    return tuple(found)


def seen_through_holes(aspect: Aspect, made: MadeUp) -> tuple[Seen, ...]:
    """What of the parts behind is seen through the holes of a base, the farthest first.

    The holes of a folded base lie over one another, so one sees as far as something covers them.
    """
    bases = {part.letter: part for part in made.bases}
    near = aspect.nearest.leaves
    outlines = (in_aspect(of_face(bases[leaf.panel.base], leaf.panel), leaf) for leaf in near)
    holes = [around(hole) for outline in outlines if outline is not None for hole in outline.holes]
    found: list[Seen] = []
    for level in reversed(aspect.levels[1:]) if holes else ():
        behind = [one for leaf in level.leaves for one in _on(leaf, made, reverse=not level.is_near_side)]
        for one in behind if level.is_near_side else reversed(behind):
            found += _in_holes(one, holes)
    return tuple(found)


def _in_holes(one: Seen, holes: Sequence[Rect]) -> Iterator[Seen]:
    """So much of it as lies behind each hole; the whole of what has another outline, and lies behind one."""
    for hole in holes:
        there = one.rect.common(hole)
        if there is not None:
            yield one if one.outline else replace(one, rect=there)


def _levels_seen(aspect: Aspect, clear: Collection[str]) -> Iterator[Level]:
    """The nearest, and as many more as one sees through what is before them."""
    before: Level | None = None
    for level in aspect.levels:
        if before is not None and before.leaves[0].panel.base not in clear:
            return
        yield level
        before = level if level.is_near_side else before


def _on(leaf: Leaf, made: MadeUp, *, reverse: bool) -> Iterator[Seen]:
    for index in made.order_on(leaf.panel):
        one = made.lying[index]
        turns = (one.spot.quarter_turns + 2 * leaf.is_upside_down) % 4
        outline = in_aspect(of_lying(one), leaf)
        yield Seen(leaf.placed(one.rect), one.part, index, one.copy, reverse, turns, outline=outline)


def _round(leaf: Leaf, made: MadeUp) -> Iterator[Seen]:
    """What goes round the whole is seen as far as the face reaches."""
    for one in _on(leaf, made, reverse=False):
        here = one.rect.common(leaf.rect)
        if here is not None:
            outline = one.outline if here == one.rect else None
            yield replace(one, rect=here, goes_round=True, outline=outline)
