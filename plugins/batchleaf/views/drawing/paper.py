"""How a paper is drawn: its main colour, with a few quiet marks where it has a pattern.

The records tell a pattern in words only. So its marks say no more than that there is one
and how it lies: small ups where it has an up, stripes where it may stand on its head, dots
where it may be turned as one likes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from typing import Final

from batchleaf.facts import Direction, Part, ShownSide, Supply
from batchleaf.measure.colours import BLACK, WHITE, Colour

_OWN_SHADE: Final = 0.2
"""How far the marks of a paper with one colour are from it."""
_DARK: Final = 0.18
"""Below this luminance a shade is made lighter, not darker."""
_STEP_PX: Final = 13.0
"""Distance of marks on the screen."""
_MOST: Final = 260
"""Marks of one part; on a large one they stand further apart."""

Line = tuple[float, float, float, float]


class Marks(Enum):
    """What a pattern is drawn with."""

    NONE = "none"
    UPS = "ups"
    STRIPES = "stripes"
    DOTS = "dots"


_OF_DIRECTION: Final = {
    Direction.ONE_WAY: Marks.UPS,
    Direction.TWO_WAY: Marks.STRIPES,
    Direction.ANY_WAY: Marks.DOTS,
}


@dataclass(frozen=True, slots=True)
class Fill:
    """What a piece of paper is drawn with; colours are empty where the record tells none."""

    colour: str = ""
    marks: Marks = Marks.NONE
    marks_colour: str = ""
    clear: bool = False

    @property
    def edge(self) -> str:
        """What the style sheet is told: one sees through it; or it is pale, and lines on it stay dark."""
        if self.clear:
            return " clear"
        return " pale" if self.colour and Colour.of(self.colour).luminance >= _DARK else ""

    @property
    def shade(self) -> str:
        """As ``edge``; what has a dark colour is told too, so that words on it are light."""
        return self.edge or (" dark" if self.colour else "")


def fill_of(supply: Supply, side: ShownSide, turn: int = 0) -> Fill:
    """One side of a paper. ``turn`` tells papers of one pad apart that share its colours."""
    colours = [supply.colours[(i + turn) % len(supply.colours)] for i in range(len(supply.colours))]
    main = colours[0] if colours else ""
    if not main or not supply.has_pattern(side):
        return Fill(main, clear=supply.see_through)
    other = colours[1] if len(colours) > 1 else _own_shade(main)
    return Fill(main, _OF_DIRECTION[supply.side(side).direction], other, supply.see_through)


def _own_shade(main: str) -> str:
    colour = Colour.of(main)
    return str(colour.mixed(WHITE if colour.luminance < _DARK else BLACK, _OWN_SHADE))


def fills_of(part: Part, supplies: Mapping[str, Supply], side: ShownSide) -> tuple[Fill, ...]:
    """One for each copy on a make; a paper that comes twice lies on no neighbour of its own."""
    number_of = {slug: number for number, slug in enumerate(dict.fromkeys(part.papers))}
    names = [
        (slug, number_of[slug] + turn if supplies[slug].pad else turn)
        for slug in part.papers
        for turn in range(max(part.any_of, 1))
    ]
    if not names:
        return (Fill(),) * part.each
    dealt = _apart([names[copy % len(names)] for copy in range(part.each)])
    return tuple(fill_of(supplies[slug], side, turn) for slug, turn in dealt)


def _apart(dealt: Sequence[tuple[str, int]]) -> Sequence[tuple[str, int]]:
    """Where a paper comes twice, one copy lies between the two: of four squares they are opposite."""
    if len(set(dealt)) == len(dealt):
        return dealt
    often = sorted(dealt, key=lambda paper: (-dealt.count(paper), dealt.index(paper)))
    apart = list(dealt)
    apart[::2], apart[1::2] = often[: len(apart[::2])], often[len(apart[::2]) :]
    return apart


def marks_on(width: float, height: float, marks: Marks, scale: float) -> Iterator[Line]:
    """Marks on an upright piece of that size in mm, clear of its edges; ``scale`` is in px to the mm."""
    if marks is Marks.NONE:
        return
    step = max(_STEP_PX / scale, (width * height / _MOST) ** 0.5)
    columns, rows = int(width / step), int(height / step)
    left, top = (width - columns * step) / 2, (height - rows * step) / 2
    if marks is Marks.STRIPES:
        yield from ((left + i * step, 0.0, left + i * step, height) for i in range(columns + 1) if left > 0)
        return
    for row in range(rows):
        shift = 0.5 if row % 2 else 0.0
        for column in range(columns - (row % 2)):
            x, y = left + (column + shift + 0.5) * step, top + (row + 0.5) * step
            yield from _up(x, y, step) if marks is Marks.UPS else ((x, y, x, y),)


def _up(x: float, y: float, step: float) -> Iterator[Line]:
    """A small roof."""
    wide, high = 0.17 * step, 0.13 * step
    yield (x - wide, y + high, x, y - high)
    yield (x, y - high, x + wide, y + high)
