"""Kept pieces and scraps in true proportion beside a whole sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Size, Unit
from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.shapes import Box, Drawing, Label

MOST_IN_A_PILE: Final = 6
"""More pieces of one size are not drawn; the words say how many there are."""
FAN_PX: Final = 5.0
"""How far each piece of a pile looks out below the one on it, on the screen."""
_SHEET_WORDS: Final = "one sheet"
_SHEET_PX: Final = 240.0
"""The longer side of the whole sheet on the screen."""


@dataclass(frozen=True, slots=True)
class _Pile:
    """Pieces of one size, fanned out by ``fan`` mm each so that each edge is seen."""

    size: Size
    count: int
    fan: float

    @property
    def drawn(self) -> int:
        return min(self.count, MOST_IN_A_PILE)

    @property
    def width(self) -> float:
        return float(self.size.width) + (self.drawn - 1) * self.fan

    @property
    def height(self) -> float:
        return float(self.size.height) + (self.drawn - 1) * self.fan

    def boxes(self, role: str, x: float, y: float, fill: str = "") -> Iterator[Box]:
        """Its pieces from the lowest to the topmost, which lies at ``x`` and ``y``."""
        for i in range(self.drawn):
            at = (self.drawn - 1 - i) * self.fan
            yield Box(role, x + at, y + at, float(self.size.width), float(self.size.height), fill)

    def count_words(self) -> str:
        """How many there are; one needs no figure."""
        return f"× {self.count}" if self.count > 1 else ""


def draw_pile(
    size: Size,
    count: int,
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
    fill: str,
    scale: float,
) -> Drawing:
    """``count`` pieces fanned out, in the colour ``fill``, without words in the drawing."""
    pile = _Pile(size, count, FAN_PX / scale)
    air = 1 / scale
    return Drawing(
        id=id,
        title=title,
        description=description,
        x=-air,
        y=-air,
        width=pile.width + 2 * air,
        height=pile.height + 2 * air,
        scale=scale,
        width_class="unlettered",
        shapes=tuple(pile.boxes("laid-piece", 0.0, 0.0, fill)),
    )


def scale_for(sizes: Sequence[tuple[Size, int]], widest: float, highest: float, most: float) -> float:
    """Pixels to the mm, at most ``most``, at which each pile keeps to ``widest`` and ``highest`` px."""
    room = [
        (side - (min(count, MOST_IN_A_PILE) - 1) * FAN_PX) / float(length)
        for size, count in sizes
        for side, length in ((widest, size.width), (highest, size.height))
    ]
    return min([most, *room])


def draw_pieces(
    sheet: Size,
    pieces: Sequence[tuple[Size, int]],
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
    unit: Unit,
) -> Drawing:
    """Each size of ``pieces`` as a pile with its number and size below; one scale for all."""
    longest = float(max(sheet.width, sheet.height))
    canvas = next(canvas for canvas in map(_canvas, _scales(longest)) if _fits(canvas, sheet, pieces, unit))
    return canvas.drawing(id, title, description)


def _scales(longest: float) -> Iterator[float]:
    """Pixels to the mm, smaller and smaller: wide pieces beside a wide sheet need more room."""
    scale = _SHEET_PX / longest
    while True:
        yield scale
        scale *= 0.92


def _canvas(scale: float) -> Canvas:
    return Canvas(Lettering(scale, "large"))


def _fits(canvas: Canvas, sheet: Size, pieces: Sequence[tuple[Size, int]], unit: Unit) -> bool:
    """Draw all of it on ``canvas``; tells whether it is narrow enough."""
    left = _draw_sheet(canvas, sheet, unit)
    fan = 0.2 * canvas.lettering.em
    most = WIDEST_PX["large"] / canvas.lettering.scale
    _draw_rows(canvas, [_Pile(size, count, fan) for size, count in pieces], left, most, unit)
    around = canvas.extent
    return around.right - around.left <= most


def _draw_sheet(canvas: Canvas, sheet: Size, unit: Unit) -> float:
    """The whole sheet with its words; returns where the pieces begin."""
    em = canvas.lettering.em
    whole = _Pile(sheet, 1, 0)
    _draw_pile(canvas, whole, 0.0, 0.0, unit)
    words = max(canvas.lettering.width(text) for text in (_SHEET_WORDS, show_size(sheet, unit)))
    if words <= whole.width - 0.4 * em and whole.height >= 1.2 * em:
        canvas.add(Label("quiet", whole.width / 2, whole.height / 2, _SHEET_WORDS))
    else:
        canvas.add(Label("quiet start", 0.0, whole.height + 1.85 * em, _SHEET_WORDS))
    return max(whole.width, words) + 1.2 * em


def _draw_rows(canvas: Canvas, piles: Sequence[_Pile], left: float, right: float, unit: Unit) -> None:
    """Piles from left to right, a new row where the next would leave the column."""
    em = canvas.lettering.em
    x, y, tallest = left, 0.0, 0.0
    for pile in piles:
        beside = canvas.lettering.width(pile.count_words()) if pile.count > 1 else 0.0
        wide = max(pile.width + beside, canvas.lettering.width(show_size(pile.size, unit)))
        if x > left and x + wide > right:
            x, y, tallest = left, y + tallest + 2.2 * em, 0.0
        _draw_pile(canvas, pile, x, y, unit)
        x, tallest = x + wide + 0.8 * em, max(tallest, pile.height)


def _draw_pile(canvas: Canvas, pile: _Pile, x: float, y: float, unit: Unit) -> None:
    """The pile with its size below, and its number inside where there is room, else beside."""
    em = canvas.lettering.em
    width, height = float(pile.size.width), float(pile.size.height)
    canvas.add(*pile.boxes("piece", x, y))
    canvas.add(Label("quiet start", x, y + pile.height + 0.75 * em, show_size(pile.size, unit)))
    if pile.count > 1:
        words = pile.count_words()
        inside = canvas.lettering.width(words) <= width - 0.2 * em and height >= 1.2 * em
        beside = (x + pile.width + 0.2 * em, y + pile.height - 0.5 * em)
        canvas.add(
            Label("figure on-sheet", x + width / 2, y + height / 2, words)
            if inside
            else Label("start", *beside, words)
        )
