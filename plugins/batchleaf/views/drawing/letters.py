"""The letters of parts: in the parts where they fit, else beside the sheet.

Of small equal parts that lie side by side one says how many they are: C × 12. It never
lies on a cut: it stands in one of them, or outside with a thin line to it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Final

from batchleaf.core.cutting.steps import PlacedPart
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.callouts import Callout, from_side
from batchleaf.views.drawing.canvas import Canvas, Extent
from batchleaf.views.drawing.marks import Area
from batchleaf.views.drawing.scores import Scores, panels_of
from batchleaf.views.drawing.shapes import Label
from batchleaf.views.drawing.sides import Side, Sight
from batchleaf.views.runs import LEAST

_BUSY: Final = 3.0
"""So much further, in em, a letter goes to a side without rings."""
_AIR: Final = 0.35
"""Room around a letter, in em, or the cuts run into it."""


@dataclass(frozen=True, slots=True)
class Lettered:
    """A part where it lies, and its faces, on which its letter may stand: the best first.

    ``part``: its name in the plan, the same for equal parts. ``seen``: as it is seen from each side.
    ``areas``: the ``faces`` again, to be drawn on.
    """

    part: str
    letter: str
    seen: Mapping[Side, Sight]
    faces: tuple[Rect, ...]
    area: Area
    areas: tuple[Area, ...]

    @classmethod
    def of(cls, placed: PlacedPart, letter: str, sheet: Rect, scores: Scores) -> Lettered:
        """A part of a plan with its letter."""
        faces = tuple(panels_of(placed, scores))
        return cls(
            part=placed.part,
            letter=letter,
            seen={side: side.sight(sheet, placed.rect) for side in Side},
            faces=faces,
            area=Area.of(placed.rect),
            areas=tuple(map(Area.of, faces)),
        )


Group = Sequence[Lettered]
"""Equal parts that lie side by side."""


def draw_letters(canvas: Canvas, parts: Sequence[Lettered]) -> list[Group]:
    """A letter in the middle of each part, or of one of its panels; returns those that have no room."""
    air = _AIR * canvas.lettering.em
    small = [part for part in parts if not _draw_letter(canvas, part, air)]
    unsaid = [group for group in _touching(small) if not _draw_shared_letter(canvas, group)]
    few = [part for group in unsaid if len(group) < LEAST for part in group]
    nameless = [part for part in few if not _draw_letter(canvas, part, 0.0)]
    return [*(group for group in unsaid if len(group) >= LEAST), *_touching(nameless)]


def _draw_letter(canvas: Canvas, part: Lettered, air: float) -> bool:
    return any(
        canvas.add_if_free(Label(role, *area.middle, part.letter), within=area.inset(air).extent)
        for role in ("letter", "letter small")
        for area in part.areas
    )


def _touching(parts: Sequence[Lettered]) -> Iterator[Group]:
    rest = list(parts)
    while rest:
        group = [rest.pop(0)]
        for one in group:
            near = [other for other in rest if other.part == one.part and _touch(one, other)]
            group += near
            rest = [other for other in rest if other not in near]
        yield group


def _touch(one: Lettered, other: Lettered) -> bool:
    here, there = one.seen[Side.TOP], other.seen[Side.TOP]
    return (
        here.start <= there.end
        and there.start <= here.end
        and here.near <= there.far
        and there.near <= here.far
    )


def _said(group: Group) -> str:
    letter = group[0].letter
    return letter if len(group) == 1 else f"{letter} × {len(group)}"


def _draw_shared_letter(canvas: Canvas, group: Group) -> bool:
    """One letter with the number of parts, in the one of them that is nearest to their middle."""
    if len(group) == 1:
        return False
    around = _around(group)
    label = Label("letter small", 0, 0, _said(group))
    return any(
        canvas.add_if_free(way, within=area.extent)
        for part in sorted(group, key=lambda part: _distance(part, around))
        for area in part.areas[:1]
        for x, y in (area.middle,)
        for way in (replace(label, x=x, y=y), replace(label, x=x, y=y, upright=False))
    )


def _around(group: Group) -> Extent:
    return Extent.around(part.area.extent for part in group)


def _distance(part: Lettered, around: Extent) -> float:
    """How far the middle of ``part`` is from that of ``around``, in mm along both edges."""
    x, y = part.area.middle
    return abs(x - (around.left + around.right) / 2) + abs(y - (around.top + around.bottom) / 2)


def unwritten(canvas: Canvas, groups: Sequence[Group]) -> list[Group]:
    """The largest of the ``groups`` of each part whose letter stands nowhere yet."""
    written = {
        shape.text.split(" ")[0]
        for shape in canvas.shapes
        if isinstance(shape, Label) and "letter" in shape.role.split()
    }
    largest: dict[str, Group] = {}
    for group in sorted(groups, key=len, reverse=True):
        largest.setdefault(group[0].letter, group)
    return [group for letter, group in largest.items() if letter not in written]


def outside(
    canvas: Canvas,
    sheet: Rect,
    group: Group,
    standing: Mapping[Side, Sequence[Sight]],
    busy: Collection[Side],
) -> Callout:
    """``group`` named from the side that is near and quiet, with no other piece in between."""
    around = _around(group)
    away = _BUSY * canvas.lettering.em

    def hindrance(way: tuple[Side, Lettered]) -> tuple[int, float, float]:
        side, part = way
        own = part.seen[side]
        between = sum(one.far <= own.near and one.crosses(own.middle) for one in standing[side])
        return between, own.near + (away if side in busy else 0.0), _distance(part, around)

    side, part = min(((side, part) for side in Side for part in group), key=hindrance)
    return from_side(side, sheet, part.faces[0], _said(group))
