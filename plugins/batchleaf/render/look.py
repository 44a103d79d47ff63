"""The three colours of the look that a maker may choose, and all that follows from them.

Ground, ink and accent are those of the light scheme. The dark scheme keeps its ground and its
ink, and lightens the accent until it can be read there; print is black on white.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from batchleaf.measure.colours import BLACK, READABLE, WHITE, Colour
from batchleaf.render.html import ENVIRONMENT

STYLE_SHEET: Final = "assets/batchleaf-look.css"
"""Where the style sheet of a chosen look lies on the site; it comes after the house's own."""
AT_EASE: Final = 7.0
"""The contrast of text that is read at ease (WCAG 2.2, success criterion 1.4.6, level AAA)."""


@dataclass(frozen=True, slots=True)
class Look:
    """Paper tone, ink, and the pencil for cuts and links."""

    ground: Colour
    ink: Colour
    accent: Colour

    def mistakes(self) -> Iterator[str]:
        """A sentence for each colour that cannot be read on the ground."""
        extreme = max(BLACK, WHITE, key=self.ground.contrast)
        for name, colour in (("ink", self.ink), ("accent", self.accent)):
            contrast = colour.contrast(self.ground)
            if contrast < READABLE:
                better = colour.until(READABLE, self.ground, extreme)
                # Not rounded: 4.49 shall not be said to be 4.5.
                cut_off = math.floor(contrast * 10) / 10
                yield (
                    f"the {name} “{colour}” is hard to read on the ground “{self.ground}”: its contrast is "
                    f"{cut_off} to 1, and text needs {READABLE} (WCAG 2.2); “{better}” would do"
                )


STANDARD: Final = Look(Colour.of("#f2f1ea"), Colour.of("#1d2631"), Colour.of("#982112"))
"""The colours of the house, as its style sheet has them too."""

_BLUE: Final = Colour.of("#234f8d")
_NIGHT: Final = Colour.of("#171a1f")
_NIGHT_INK: Final = Colour.of("#e7e3d9")


def look_style(look: Look, template: str = "look.css") -> str:
    """The style sheet that lays ``look`` over the house's own, or that of a page with a sheet of its own."""
    ground, ink = look.ground, look.ink
    light = ground.luminance > ink.luminance
    sheet = ground.mixed(WHITE, 0.75) if light else ground.mixed(ink, 0.05)
    return ENVIRONMENT.get_template(template).render(
        look=look,
        light=light,
        sheet=sheet if sheet.contrast(ink) >= READABLE else ground,
        quiet=ground.mixed(ink, 0.5).until(AT_EASE, ground, ink),
        blue=_BLUE.until(READABLE, ground, ink),
        rule=ground.mixed(ink, 0.2),
        accent_by_night=look.accent.until(AT_EASE, _NIGHT, _NIGHT_INK),
        accent_in_print=look.accent.until(AT_EASE, WHITE, BLACK),
    )
