"""The ground of a chart: a rule of values at its left, a rule of time below it.

One unit is a pixel at full size. Values grow upwards from 0, so that the base line
lies at y = 0 and all above it is below nothing. Charts of one page have one width and
one left edge, so that their months stand under one another.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import count
from typing import Final

from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.charts.scale import Scale, scale_for
from batchleaf.views.drawing.shapes import Drawing, Label, Stroke

CLASS: Final = "large"
WIDTH: Final = WIDEST_PX[CLASS]
LEFT: Final = 76.0
"""Room for figures of the rule; where they need more, the field gets less."""
RIGHT: Final = 34.0
"""Room for a measure beside the last month."""
HEIGHT: Final = 156.0
_APART: Final = 1.15
"""Distance of two figures on the rule, in em; closer ones would meet on a narrow screen."""
HATCH_EVERY: Final = 9.0
MONTHS: Final = "JFMAMJJASOND"
_CLOSE: Final = 1.3
"""Level figures may be so many months wide."""
_TICK: Final = 0.22
"""Half the height of a tick through the end of a measure, in em."""

Line = tuple[float, float, float, float]


@dataclass(slots=True)
class Field:
    """A chart in the making, ``height`` high, of values up to those of ``scale``."""

    scale: Scale
    height: float = HEIGHT
    canvas: Canvas = field(default_factory=lambda: Canvas(Lettering(1.0, CLASS)))
    left: float = field(init=False)

    def __post_init__(self) -> None:
        widest = max(self.canvas.lettering.width(text) for _, text in self.scale.figures())
        self.left = max(LEFT, widest + 0.4 * self.em)

    @property
    def em(self) -> float:
        """A figure's em at its largest growth."""
        return self.canvas.lettering.em

    @property
    def width(self) -> float:
        """How long the rule of time is."""
        return WIDTH - self.left - RIGHT

    @property
    def month(self) -> float:
        """How wide one of twelve months is."""
        return self.width / len(MONTHS)

    def y(self, value: Fraction) -> float:
        """How high ``value`` stands."""
        return -float(value / self.scale.top) * self.height

    def draw_rule(self) -> None:
        """The rule of values: at each figure a thin line from the left edge across the field."""
        long, short = 0.3 * self.em, 0.15 * self.em
        levels = [(self.y(value), text) for value, text in self.scale.figures()]
        ticks: list[Line] = [(-long, y, 0, y) for y, _ in levels]
        ticks += [(-short, self.y(value), 0, self.y(value)) for value in self.scale.ticks()]
        self.canvas.add(Stroke("level", tuple((-self.left, y, self.width, y) for y, _ in levels)))
        self.canvas.add(Stroke("tick", ((0, 0, 0, -self.height), *ticks)))
        for y, text in levels:
            self.canvas.add(Label("quiet halo start", -self.left, y, text))

    def draw_months(self) -> None:
        """The base line with a tick between months and the first letter of each."""
        em = self.em
        ends = [i * self.month for i in range(len(MONTHS) + 1)]
        self.canvas.add(Stroke("base", ((0, 0, self.width, 0),)))
        self.canvas.add(Stroke("tick", tuple((x, 0, x, 0.3 * em) for x in ends)))
        for i, letter in enumerate(MONTHS):
            self.canvas.add(Label("quiet", (i + 0.5) * self.month, 0.95 * em, letter))

    def drawing(self, id: str, title: str, description: str) -> Drawing:  # noqa: A002  as pages call it
        """The chart in the frame that all charts of a page have, with its words."""
        around = self.canvas.extent
        return Drawing(
            id=id,
            title=title,
            description=description,
            x=-self.left,
            y=around.top,
            width=WIDTH,
            height=around.bottom - around.top,
            scale=1.0,
            width_class=CLASS,
            shapes=tuple(self.canvas.shapes),
        )


def field_for(values: Iterable[Fraction], *, height: float = HEIGHT, whole: bool = False) -> Field:
    """The ground for ``values``, none of which is below nothing."""
    most = int(height / (_APART * Lettering(1.0, CLASS).em))
    return Field(scale_for(max(values, default=Fraction(0)), most, whole=whole), height)


def write_over(field: Field, figures: Sequence[tuple[float, float, str]]) -> None:
    """A figure over each point: level where all have room beside the next, else read from below.

    A level one that meets its neighbour stands a little higher.
    """
    em, canvas = field.em, field.canvas
    level = all(canvas.lettering.width(text) <= _CLOSE * field.month for _, _, text in figures)
    for x, y, text in figures:
        if level or len(text) == 1:
            rows = (Label("halo", x, y - (0.62 + 0.3 * row) * em, text) for row in count())
            next(row for row in rows if canvas.add_if_free(row))
        else:
            canvas.add(Label("halo start", x, y - 0.3 * em, text, upright=False))


def draw_measure(field: Field, x: float, top: float, text: str) -> None:
    """The height of something measured at ``x``: a line with ticks, its figure in a break or past its end."""
    lettering, em = field.canvas.lettering, field.em
    half = _TICK * em
    field.canvas.add(Stroke("extension", ((x - em, top, x + half, top), (x - em, 0, x + half, 0))))
    ticks = tuple((x - half, y + half, x + half, y - half) for y in (top, 0.0))
    field.canvas.add(Stroke("measure", ((x, 0, x, top), *ticks)))
    long = lettering.width(text)
    if -top >= long + 0.5 * em:
        field.canvas.add(Label("figure", x, top / 2, text, upright=False))
    else:
        field.canvas.add(Label("halo start", x, top - 0.4 * em, text, upright=False))


def hatch(left: float, top: float, right: float, bottom: float) -> list[Line]:
    """Lines at 45° that go on from one rectangle into the next."""
    lines: list[Line] = []
    first = int((left + top) // HATCH_EVERY) + 1
    last = int((right + bottom) // HATCH_EVERY)
    for i in range(first, last + 1):
        total = i * HATCH_EVERY  # on each line x + y is the same
        from_x, to_x = min(right, total - top), max(left, total - bottom)
        if from_x > to_x:
            lines.append((from_x, total - from_x, to_x, total - to_x))
    return lines
