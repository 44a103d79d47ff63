"""The letters of parts: in the parts where they fit, else beside the sheet.

Of small equal parts that lie side by side one says how many they are: C × 12. It never
lies on a cut: it stands in one of them, or outside with a thin line to it.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.steps import PlacedPart
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.callouts import Callout, from_side
from batchleaf.views.drawing.canvas import Canvas, Extent
from batchleaf.views.drawing.marks import Area, fits_inside
from batchleaf.views.drawing.scores import Scores, panels_of
from batchleaf.views.drawing.shapes import Label
from batchleaf.views.drawing.sides import Side
from batchleaf.views.runs import LEAST

_BUSY: Final = 3.0
"""So much further, in em, a letter goes to a side without rings."""
_AIR: Final = 0.35
"""Room around a letter, in em, or the cuts run into it."""

Group = Sequence[PlacedPart]
"""Equal parts that lie side by side."""


def draw_letters(
    canvas: Canvas, parts: Sequence[PlacedPart], letters: Mapping[str, str], scores: Scores
) -> list[Group]:
    """A letter in the middle of each part, or of one of its panels; returns those that have no room."""
    small = [part for part in parts if not _draw_letter(canvas, part, letters, scores, _fits_with_air)]
    unsaid = [
        group
        for group in _touching(small)
        if not _draw_shared_letter(canvas, group, letters[group[0].part], scores)
    ]
    few = [part for group in unsaid if len(group) < LEAST for part in group]
    nameless = [part for part in few if not _draw_letter(canvas, part, letters, scores, fits_inside)]
    return [*(group for group in unsaid if len(group) >= LEAST), *_touching(nameless)]


def _draw_letter(
    canvas: Canvas,
    part: PlacedPart,
    letters: Mapping[str, str],
    scores: Scores,
    fits: Callable[[Canvas, Area, Label], bool],
) -> bool:
    return any(
        fits(canvas, area, way) and canvas.add_if_free(way)
        for role in ("letter", "letter small")
        for area in map(Area.of, panels_of(part, scores))
        for way in (Label(role, *area.middle, letters[part.part]),)
    )


def _touching(parts: Sequence[PlacedPart]) -> Iterator[Group]:
    rest = list(parts)
    while rest:
        group = [rest.pop(0)]
        for one in group:
            near = [other for other in rest if other.part == one.part and _touch(one.rect, other.rect)]
            group += near
            rest = [other for other in rest if other not in near]
        yield group


def _touch(one: Rect, other: Rect) -> bool:
    return (
        one.x <= other.x + other.width
        and other.x <= one.x + one.width
        and one.y <= other.y + other.height
        and other.y <= one.y + one.height
    )


def _said(letter: str, group: Group) -> str:
    return letter if len(group) == 1 else f"{letter} × {len(group)}"


def _draw_shared_letter(canvas: Canvas, group: Group, letter: str, scores: Scores) -> bool:
    """One letter with the number of parts, in the one of them that is nearest to their middle."""
    if len(group) == 1:
        return False
    around = _around(group)
    label = Label("letter small", 0, 0, _said(letter, group))
    return any(
        fits_inside(canvas, area, way) and canvas.add_if_free(way)
        for part in sorted(group, key=lambda part: _distance(part, around))
        for area in (Area.of(panels_of(part, scores)[0]),)
        for x, y in (area.middle,)
        for way in (replace(label, x=x, y=y), replace(label, x=x, y=y, upright=False))
    )


def _around(group: Group) -> Extent:
    return Extent.around(Area.of(part.rect).extent for part in group)


def _distance(part: PlacedPart, around: Extent) -> float:
    """How far the middle of ``part`` is from that of ``around``, in mm along both edges."""
    x, y = Area.of(part.rect).middle
    return abs(x - (around.left + around.right) / 2) + abs(y - (around.top + around.bottom) / 2)


def unwritten(canvas: Canvas, groups: Sequence[Group], letters: Mapping[str, str]) -> list[Group]:
    """The largest of the ``groups`` of each part whose letter stands nowhere yet."""
    written = {
        shape.text.split(" ")[0]
        for shape in canvas.shapes
        if isinstance(shape, Label) and "letter" in shape.role.split()
    }
    largest: dict[str, Group] = {}
    for group in sorted(groups, key=len, reverse=True):
        largest.setdefault(letters[group[0].part], group)
    return [group for letter, group in largest.items() if letter not in written]


def outside(
    canvas: Canvas,
    sheet: Rect,
    group: Group,
    letter: str,
    scores: Scores,
    standing: Sequence[Rect],
    busy: Collection[Side],
) -> Callout:
    """``group`` named from the side that is near and quiet, with no other piece in between."""
    around = _around(group)
    away = _BUSY * canvas.lettering.em

    def hindrance(way: tuple[Side, PlacedPart]) -> tuple[int, float, float]:
        side, part = way
        depth = side.depth(sheet, part.rect)[0]
        between = sum(_covers(side, sheet, rect, part.rect, depth) for rect in standing)
        return between, float(depth) + (away if side in busy else 0.0), _distance(part, around)

    side, part = min(((side, part) for side in Side for part in group), key=hindrance)
    return from_side(side, sheet, panels_of(part, scores)[0], _said(letter, group))


def _covers(side: Side, sheet: Rect, rect: Rect, part: Rect, depth: Fraction) -> bool:
    """True where ``rect`` lies between ``side`` and the middle of ``part``."""
    start, end = side.span(rect)
    middle = sum(side.span(part), Fraction(0)) / 2
    return start < middle < end and side.depth(sheet, rect)[1] <= depth


def _fits_with_air(canvas: Canvas, area: Area, label: Label) -> bool:
    air = _AIR * canvas.lettering.em
    tight = Area(area.x + air, area.y + air, area.width - 2 * air, area.height - 2 * air)
    return fits_inside(canvas, tight, label)
