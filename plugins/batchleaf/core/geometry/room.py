"""Room to write and room to stamp: the largest rectangles that nothing covers, exactly."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.lying import Lying, MadeUp
from batchleaf.core.geometry.outlined import cut_off_face, cut_off_part
from batchleaf.core.geometry.panels import Panel
from batchleaf.facts import Origin, Part, ShownSide, Supply
from batchleaf.facts.spots import Face
from batchleaf.measure.lengths import Size
from batchleaf.measure.rects import Rect

WRITTEN_ON: Final = (Face.INSIDE_LEFT, Face.INSIDE_RIGHT, Face.INSIDE_TOP, Face.INSIDE_BOTTOM, Face.INSIDE)
"""Where a message goes; what has no inside is written on the back."""


@dataclass(frozen=True, slots=True)
class RoomToWrite:
    """The largest rectangle to write on: of a face that no part covers, or of a part ``on`` it."""

    panel: Panel
    rect: Rect
    on: Lying | None = None


@dataclass(frozen=True, slots=True)
class RoomToStamp:
    """The largest rectangle of one copy of a part that nothing placed later covers, on its face."""

    lying: Lying
    rect: Rect

    @property
    def margins(self) -> tuple[Fraction, Fraction, Fraction, Fraction]:
        """How far it is from the part's own left, top, right and bottom edge."""
        part, rect = self.lying.rect, self.rect
        return rect.x - part.x, rect.y - part.y, part.right - rect.right, part.bottom - rect.bottom


def largest_empty(area: Rect, covered: Iterable[Rect]) -> Rect | None:
    """The largest rectangle of ``area`` that overlaps none of ``covered``; ``None`` where nothing is free.

    Of equals the widest, then the one nearest to the top, then to the left. Exact: the sides
    of a largest one lie on sides of what is covered, or of the area; every strip between two
    upright sides is tried with all its gaps.
    """
    there = [common for one in covered if (common := area.common(one)) is not None]
    sides = sorted({area.x, area.right, *(x for one in there for x in (one.x, one.right))})
    best: Rect | None = None
    for i, left in enumerate(sides):
        for right in sides[i + 1 :]:
            if best is not None and (right - left) * area.height < best.area:
                continue
            for top, bottom in _gaps(area, [one for one in there if one.x < right and left < one.right]):
                found = Rect(left, top, right - left, bottom - top)
                if best is None or _rank(found) < _rank(best):
                    best = found
    return best


def _holds_empty(area: Rect, covered: Iterable[Rect], size: Size) -> bool:
    """Whether a rectangle of that size lies somewhere in ``area`` over none of ``covered``.

    Moved to the left until it meets something, it begins at a side: all of these are tried.
    """
    there = [common for one in covered if (common := area.common(one)) is not None]
    for left in {area.x, *(one.right for one in there)}:
        right = left + size.width
        blocks = [one for one in there if one.x < right and left < one.right]
        if right <= area.right and any(foot - top >= size.height for top, foot in _gaps(area, blocks)):
            return True
    return False


def _rank(rect: Rect) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    return -rect.area, -rect.width, rect.y, rect.x


def _gaps(area: Rect, blocks: Sequence[Rect]) -> Iterator[tuple[Fraction, Fraction]]:
    """From top to bottom, where no block of a strip lies."""
    free_from = area.y
    for block in sorted(blocks, key=lambda block: block.y):
        if block.y > free_from:
            yield free_from, block.y
        free_from = max(free_from, block.bottom)
    if free_from < area.bottom:
        yield free_from, area.bottom


def room_to_write(made: MadeUp, plain: Collection[str]) -> RoomToWrite | None:
    """The largest empty rectangle inside; of what has no inside, on its back.

    ``plain``: the letters of what can be written on. ``None`` where nothing is free, and for
    a box, in which nobody writes.
    """
    first = made.panels[0]
    own = [panel for panel in made.panels if panel.base == first.base]
    if any(panel.face is Face.FRONT_WALL for panel in own):
        return None
    inside = [panel for panel in own if panel.face in WRITTEN_ON]
    found = [
        room
        for panel in inside or [one for one in own if one.face in (Face.BACK, Face.BACK_OF_PANEL)]
        for room in _to_write(made, panel, plain)
    ]
    # Of equals the right-hand, or the lower, page: there a message stands.
    return max(reversed(found), key=lambda room: room.rect.area, default=None)


def _to_write(made: MadeUp, panel: Panel, plain: Collection[str]) -> Iterator[RoomToWrite]:
    there = made.on(panel)
    base = next(part for part in made.bases if part.letter == panel.base)
    taken = [*(one.rect for one in there), *cut_off_face(base, panel)]
    if panel.base in plain and (bare := largest_empty(_whole(panel), taken)):
        yield RoomToWrite(panel, bare)
    for one in there:
        if one.part.letter in plain and (bare := largest_empty(one.rect, _not_in_sight(made, one))):
            yield RoomToWrite(panel, bare, one)


def plain_parts(made: MadeUp, supplies: Mapping[str, Supply]) -> frozenset[str]:
    """The letters of bases and parts that can be written on: unprinted there, and not see-through.

    Of a base it is its inside that counts.
    """
    turned = {ShownSide.FRONT: ShownSide.BACK, ShownSide.BACK: ShownSide.FRONT}
    sides = {base.letter: (base, turned[base.side]) for base in made.bases}
    sides |= {one.part.letter: (one.part, one.part.side) for one in made.lying}
    return frozenset(letter for letter, (part, side) in sides.items() if _is_plain(part, side, supplies))


def _is_plain(part: Part, side: ShownSide, supplies: Mapping[str, Supply]) -> bool:
    papers = [supplies[slug] for slug in part.papers]
    written = part.origin is not Origin.READY or not part.below
    return written and not any(paper.see_through or paper.has_pattern(side) for paper in papers)


def room_to_stamp(made: MadeUp, lying: Lying) -> RoomToStamp | None:
    """The largest part of a part that stays in sight; ``None`` where nothing does.

    Of a part that is cut to a shape it lies inside that, and beside its holes: surely, though
    perhaps not the very largest, since along curves and slants only some points are tried, and
    those on curves a hundredth of a mm inwards at most.
    """
    rect = largest_empty(lying.rect, _not_in_sight(made, lying))
    return None if rect is None else RoomToStamp(lying, rect)


def _not_in_sight(made: MadeUp, lying: Lying) -> list[Rect]:
    """What is placed on a part later, and what is cut off it."""
    order = made.on(lying.panel)
    return [*(one.rect for one in order[order.index(lying) + 1 :]), *cut_off_part(lying)]


def has_room_for(image: Size, made: MadeUp, lying: Lying) -> bool:
    """Whether an image, which may be turned, fits where nothing placed later covers the part."""
    covered = _not_in_sight(made, lying)
    return any(_holds_empty(lying.rect, covered, size) for size in (image, image.turned))


def _whole(panel: Panel) -> Rect:
    return Rect(Fraction(0), Fraction(0), panel.size.width, panel.size.height)
