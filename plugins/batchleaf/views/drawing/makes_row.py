"""The finished makes of a batch, lying in a row: a mark for each, in groups by where they went."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.marks import Area, hatching
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke
from batchleaf.views.drawing.spread import spread

LENGTH: Final = WIDEST_PX["strip"] - 24.0
"""The longest row, in units of the drawing."""
TALLEST: Final = 84.0
LOWEST: Final = 14.0
"""However flat a make is, its mark can be seen."""
MOST_MARKS: Final = 60
"""Of more makes each group is one long mark: single ones would run together on a phone."""
_STRIP_HEIGHT: Final = 40.0
_HATCH_EVERY: Final = 6.0
_BETWEEN: Final = 16.0
"""Between groups."""


@dataclass(frozen=True, slots=True)
class Group:
    """Makes that went one way, under their ``letter``; ``told`` False: nobody says which way."""

    letter: str
    count: int
    kept: bool = False
    told: bool = True


def draw_makes_row(
    groups: Sequence[Group],
    *,
    aspect: float,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
) -> Drawing:
    """Marks as wide to their height as ``aspect``, with a letter below each group of ``groups``."""
    canvas = Canvas(Lettering(1.0, "strip"))
    areas = list(_areas([group.count for group in groups], aspect))
    for group, marks in zip(groups, areas, strict=True):
        for mark in marks:
            _draw_mark(canvas, group, mark)
    _draw_letters(canvas, [group.letter for group in groups], areas)
    around = canvas.extent
    left = min(0.0, around.left)
    return Drawing(
        id,
        title,
        description,
        left,
        around.top,
        max(LENGTH, around.right) - left,
        around.bottom - around.top,
        1.0,
        "strip",
        tuple(canvas.shapes),
    )


def _areas(counts: Sequence[int], aspect: float) -> Iterator[list[Area]]:
    """The marks of each group, from left to right."""
    all_of_them, room = sum(counts), LENGTH - _BETWEEN * (len(counts) - 1)
    if all_of_them > MOST_MARKS:
        # A single make among hundreds keeps a mark that can be seen.
        least = min(4.0, room / len(counts))
        rest = room - least * len(counts)
        widths = [[least + rest * count / all_of_them] for count in counts]
        height, gap = _STRIP_HEIGHT, 0.0
    else:
        pitch = room / all_of_them
        gap = min(8.0, 0.18 * pitch)
        width = min(pitch - gap, TALLEST * aspect)
        widths = [[width] * count for count in counts]
        height = max(LOWEST, min(TALLEST, width / aspect))
    x = 0.0
    for group in widths:
        marks = []
        for width in group:
            marks.append(Area(x, 0.0, width, height))
            x += width + gap
        x += _BETWEEN - gap
        yield marks


def _draw_mark(canvas: Canvas, group: Group, mark: Area) -> None:
    if not group.told:
        canvas.add(mark.box("waste"))
    elif group.kept:
        canvas.add(mark.box("keep"), Stroke("hatch", tuple(hatching(mark, _HATCH_EVERY))))
    else:
        canvas.add(Box("share", mark.x, mark.y, mark.width, mark.height))


def _draw_letters(canvas: Canvas, letters: Sequence[str], areas: Sequence[Sequence[Area]]) -> None:
    """Below each group a line as long as it, and its letter; letters that would meet give way."""
    em = canvas.lettering.em
    below = areas[0][0].height + 0.3 * em
    middles = [(marks[0].x + marks[-1].x + marks[-1].width) / 2 for marks in areas]
    halves = [canvas.lettering.width(letter, 1.23) / 2 for letter in letters]
    steps = [a + b + 0.3 * em for a, b in pairwise(halves)]
    places = spread(middles, steps, halves[0], LENGTH - halves[-1])
    for letter, marks, middle, place in zip(letters, areas, middles, places, strict=True):
        left, right = marks[0].x, marks[-1].x + marks[-1].width
        canvas.add(Stroke("tick", ((left, below, right, below),)))
        if abs(place - middle) > 0.2 * em:
            canvas.add(Stroke("extension", ((middle, below, place, below + 0.45 * em),)))
        canvas.add(Label("key", place, below + 1.1 * em, letter))
