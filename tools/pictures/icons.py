"""Draw the icons of the page for the table again: the house's mark, with room round it for any mask."""

from __future__ import annotations

from typing import Final

from PIL import Image, ImageDraw

from batchleaf.render.at_the_table import ICONS
from batchleaf.render.html import THEME

GROUND, SHEET, INK, RED = "#f2f1ea", "#fcfbf7", "#1d2631", "#982112"
SIDE: Final = 48
"""The mark is 32 wide; a mask leaves at least a circle of four fifths of the whole."""
FINER: Final = 4


def icon(pixels: int) -> Image.Image:
    """The sheet and the cut through it, as ``batchleaf-mark.svg`` has them."""
    scale = pixels * FINER / SIDE
    drawn = Image.new("RGB", (pixels * FINER, pixels * FINER), GROUND)
    pencil = ImageDraw.Draw(drawn)

    def box(left: float, top: float, right: float, bottom: float) -> tuple[float, float, float, float]:
        air = (SIDE - 32) / 2
        return (left + air) * scale, (top + air) * scale, (right + air) * scale, (bottom + air) * scale

    pencil.rectangle(box(5, 2, 27, 30), fill=INK)
    pencil.rectangle(box(7, 4, 25, 28), fill=SHEET)
    pencil.rectangle(box(2, 17.75, 30, 20.25), fill=RED)
    return drawn.resize((pixels, pixels), Image.Resampling.LANCZOS)


if __name__ == "__main__":
    for name, pixels in ICONS.items():
        icon(pixels).quantize(64).save(THEME / "table" / name, optimize=True)
