"""What is marked inside a sheet: kept pieces, waste, grain."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Grain
from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.canvas import Canvas, Extent
from batchleaf.views.drawing.shapes import Box, Label, Stroke

HATCH_EVERY: Final = 9.0
"""Distance of the hatching of kept pieces, mm."""
WASTE_INSET: Final = 3.0
WASTE_SHOWN_FROM: Final = 5.0
"""Narrower waste stays blank, mm."""


@dataclass(frozen=True, slots=True)
class Area:
    """A rectangle on the way to the screen."""

    x: float
    y: float
    width: float
    height: float

    @classmethod
    def of(cls, rect: Rect) -> Area:
        """``rect`` in floats."""
        return cls(float(rect.x), float(rect.y), float(rect.width), float(rect.height))

    @property
    def middle(self) -> tuple[float, float]:
        """Its centre."""
        return self.x + self.width / 2, self.y + self.height / 2

    @property
    def extent(self) -> Extent:
        """What it covers."""
        return Extent(self.x, self.y, self.x + self.width, self.y + self.height)

    def inset(self, by: float) -> Area:
        """What is left of it so far inside its edges."""
        return Area(self.x + by, self.y + by, self.width - 2 * by, self.height - 2 * by)

    def box(self, role: str) -> Box:
        """It as a shape."""
        return Box(role, self.x, self.y, self.width, self.height)


def draw_waste(canvas: Canvas, waste: Iterable[Area]) -> None:
    """A light dotted edge a little inside; nothing where waste is narrow."""
    for area in waste:
        narrow = min(area.width, area.height)
        if narrow >= WASTE_SHOWN_FROM:
            canvas.add(area.inset(min(WASTE_INSET, narrow / 4)).box("waste"))


def draw_kept(canvas: Canvas, rect: Rect, unit: Unit) -> bool:
    """A hatched piece with the word keep and its size; tells whether the words found room."""
    area = Area.of(rect)
    canvas.add(area.box("keep"), Stroke("hatch", tuple(hatching(area, HATCH_EVERY))))
    x, y = area.middle
    size, line = show_size(rect.size, unit), 0.6 * canvas.lettering.em
    two = (Label("kept halo", x, y - line, "keep"), Label("kept halo", x, y + line, size))
    ways: list[tuple[Label, ...]] = [two]
    for text in (f"keep {size}", "keep"):
        ways += [(Label("kept halo", x, y, text),), (Label("kept halo", x, y, text, upright=False),)]
    return any(canvas.add_if_free(*way, within=area.extent) for way in ways)


def hatching(area: Area, every: float) -> Iterable[tuple[float, float, float, float]]:
    """Lines at 45°, each from the upper or right edge to the left or lower one."""
    step = every
    while step < area.width + area.height:
        from_x, from_y = min(step, area.width), max(0.0, step - area.width)
        to_x, to_y = max(0.0, step - area.height), min(step, area.height)
        yield (area.x + from_x, area.y + from_y, area.x + to_x, area.y + to_y)
        step += every


@dataclass(frozen=True, slots=True)
class Fibres:
    """Whether the fibres of a sheet run down, and on which pieces that may be shown: the roomiest first.

    With each piece goes the role of the word on it.
    """

    down: bool
    pieces: tuple[tuple[Area, str], ...]


def fibres_of(sheet: Rect, panels: Sequence[Rect], waste: Sequence[Rect], grain: Grain) -> Fibres | None:
    """``None`` where nobody knows how they run."""
    if grain is Grain.UNKNOWN:
        return None
    down = (grain is Grain.LONG) == (sheet.height >= sheet.width)
    pieces = [(rect, "quiet halo on-sheet") for rect in panels] + [(rect, "quiet halo") for rect in waste]
    pieces.sort(key=lambda piece: -piece[0].area)
    return Fibres(down, tuple((Area.of(rect), role) for rect, role in pieces))


def draw_grain(canvas: Canvas, sheet: Area, fibres: Fibres) -> None:
    """An arrow with open heads along the fibres: on the first piece with room, else beside the sheet."""
    down = fibres.down
    if any(_draw_arrow_on(canvas, area, down=down, role=role) for area, role in fibres.pieces):
        return
    around, em = canvas.extent, canvas.lettering.em
    x, y = sheet.middle
    at = (around.right + 0.8 * em, y) if down else (x, around.bottom + 0.8 * em)
    _draw_arrow(canvas, at, 5 * em, down=down, role="quiet halo")


def _draw_arrow_on(canvas: Canvas, area: Area, *, down: bool, role: str) -> bool:
    em = canvas.lettering.em
    length = min(7 * em, 0.7 * (area.height if down else area.width))
    if length < 4 * em:
        return False
    x, y = area.middle
    for share in (0.5, 0.75, 0.82, 0.18):
        at = (area.x + share * area.width, y) if down else (x, area.y + share * area.height)
        half = (0.8 * em, length / 2) if down else (length / 2, 0.8 * em)
        room = Extent(at[0] - half[0], at[1] - half[1], at[0] + half[0], at[1] + half[1])
        if area.extent.holds(room) and canvas.leaves_free(room):
            _draw_arrow(canvas, at, length, down=down, role=role)
            return True
    return False


def _draw_arrow(canvas: Canvas, at: tuple[float, float], length: float, *, down: bool, role: str) -> None:
    x, y = at
    half, head, wide = length / 2, 0.45 * canvas.lettering.em, 0.17 * canvas.lettering.em
    along = [(-half, 0.0, half, 0.0)]
    along += [
        (end, 0.0, end - sign * head, w) for end, sign in ((-half, -1), (half, 1)) for w in (-wide, wide)
    ]
    lines = [(b, a, d, c) if down else (a, b, c, d) for a, b, c, d in along]
    canvas.add(Stroke("grain", tuple((x + a, y + b, x + c, y + d) for a, b, c, d in lines)))
    canvas.add(Label(role, x, y, "grain", upright=not down))
