"""How large things are on the printed sheet, in mm of paper.

A side is laid out for the smaller of A4 (210 × 297, ISO 216) and Letter (215.9 × 279.4) both
ways: 210 mm wide and 279.4 mm high. So one file prints on either.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from batchleaf.views.drawing.canvas import FIGURE_PX, GROWTH
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages import Block, PrintedDrawing, Shelf

MARGIN: Final = 9.5
"""Left free at every edge, as the style sheet has it: a printer that wants 8 mm never cuts anything off."""
WIDTH: Final = 190.0
HEIGHT: Final = 259.0
"""What is left of a side, with a little to spare."""
GAP: Final = 6.0
"""Between two things side by side."""
BELOW: Final = 5.0
"""Between two shelves."""
LETTERING: Final = 9 * 25.4 / 72
"""Figures of a drawing: 9 points (1/72 in each), the smallest lettering of the sheet."""
LINE: Final = 4.5
"""From one line of text to the next, as the style sheet has it."""
_CHARACTER: Final = 1.75
"""A character of the small text, for the widest face of the house's list."""


def smallest(drawing: Drawing) -> float:
    """The least scale at which a drawing has room for its figures, in mm of paper to the mm.

    The drawing left room for figures as large as its width class ever lets them grow.
    """
    em = FIGURE_PX * GROWTH[drawing.width_class] / drawing.scale
    return LETTERING / em


def printed(drawing: Drawing, widest: float, highest: float, largest: float) -> PrintedDrawing:
    """As large as the room lets it be, and no larger than ``largest``; its figures need their room."""
    wanted = min(widest / drawing.width, highest / drawing.height, largest)
    return PrintedDrawing(drawing, max(wanted, smallest(drawing)), LETTERING)


def lines_of(text: str, width: float) -> int:
    """About how many lines a text of the sheet takes in a column so wide."""
    return -(-len(text) // max(int(width / _CHARACTER), 1)) if text else 0


def width_of(text: str) -> float:
    """About how wide a text of the sheet is on one line."""
    return len(text) * _CHARACTER


def lines_of_pieces(pieces: Iterable[float], width: float) -> int:
    """About how many lines pieces so wide take, none of which is parted."""
    lines, used = 0, width
    for piece in pieces:
        if used + piece > width:
            lines, used = lines + 1, 0.0
        used += piece
    return lines


def shelved(blocks: Iterable[Block]) -> Iterator[Shelf]:
    """Blocks in their order, as many side by side as the side is wide."""
    shelf: list[Block] = []
    for block in blocks:
        if shelf and used_of(shelf) + block.width > WIDTH:
            yield tuple(shelf)
            shelf = []
        shelf.append(block)
    if shelf:
        yield tuple(shelf)


def used_of(shelf: Iterable[Block]) -> float:
    """How far a shelf is taken, with the gap before the next block."""
    return sum(block.width + GAP for block in shelf)
