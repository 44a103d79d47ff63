"""How wide pictures are shown, told to the browser before it knows the style sheet.

A browser chooses a picture's file by the ``sizes`` attribute alone. What stands there
is what ``theme/assets/batchleaf.css`` lays out: whoever changes one changes the other,
and ``tests/look/test_sizes.py`` measures both.

Where a picture is cropped, the width is the one at which the whole picture is drawn,
of which a part is shown: a landscape cropped to a tall leaf needs the wider file.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from batchleaf.views.pages import Picture


@dataclass(frozen=True, slots=True)
class Length:
    """Hundredths of the window's width and rem of the size that the reader's browser sets."""

    vw: float = 0.0
    rem: float = 0.0

    def __add__(self, other: Length) -> Length:
        return Length(self.vw + other.vw, self.rem + other.rem)

    def __mul__(self, times: float) -> Length:
        return Length(self.vw * times, self.rem * times)

    def __sub__(self, other: Length) -> Length:
        return self + other * -1

    def at(self, window: float) -> float:
        """In rem, where the window is so many rem wide."""
        return window * self.vw / 100 + self.rem

    def __str__(self) -> str:
        """As CSS writes it: ``92vw``, ``57rem``, ``calc(92vw - 11rem)``."""
        if not self.rem:
            return f"{self.vw:.4g}vw"
        if not self.vw:
            return f"{self.rem:.4g}rem"
        return f"calc({self.vw:.4g}vw {'-' if self.rem < 0 else '+'} {abs(self.rem):.4g}rem)"


@dataclass(frozen=True, slots=True)
class Band:
    """Windows of one layout, wider than ``start`` and up to ``end`` rem, and what their columns measure.

    ``full`` is all three columns, ``wide`` the text and its notes; ``gap`` parts the pictures
    of a line, ``line`` is the height of those that stand five and seven.
    """

    start: int
    end: int
    full: Length
    text: Length
    wide: Length
    gap: Length
    line: Length = Length()


_ROOT: Final = Length(vw=0.6, rem=0.28)
"""What one rem of the style sheet measures on screens so wide that all of it grows."""
_FRAME: Final = Length(vw=56.667)
_ALL: Final = Length(vw=92)
"""The window without its edges."""
_BESIDE_HEADS: Final = _ALL - Length(rem=11)

PHONE: Final = Band(0, 40, _ALL, _ALL, _ALL, Length(rem=1))
COLUMN: Final = Band(40, 52, _ALL, _ALL, _ALL, Length(rem=1))
TABLET: Final = Band(52, 74, _ALL, _BESIDE_HEADS, _BESIDE_HEADS, Length(rem=1.75), Length(vw=32))
DESK: Final = Band(
    74, 120, Length(rem=68), Length(rem=37.5), Length(rem=55), Length(rem=1.75), Length(rem=28)
)
WALL: Final = Band(120, 240, _FRAME, _ROOT * 37.5, _FRAME - _ROOT * 13, _ROOT * 1.75, _ROOT * 28)
BANDS: Final = (WALL, DESK, TABLET, COLUMN, PHONE)


def cover(picture: Picture) -> str:
    """Above the title: from edge to edge where there is one column."""
    return _spelt(
        lambda band: (
            _cropped(Length(vw=100), picture, 4 / 3)
            if band in (PHONE, COLUMN)
            else _cropped(band.wide, picture, 3 / 2)
        )
    )


def step(_picture: Picture) -> str:
    """Below a step, in the column of the text."""
    return _spelt(lambda band: str(band.text))


def other(_picture: Picture, count: int) -> str:
    """Below the steps: alone as wide as may be, or two in a line."""
    return _spelt(
        lambda band: str(band.wide if count == 1 or band is PHONE else _share(band.wide, 2, band.gap))
    )


def item(picture: Picture) -> str:
    """One of three leaves in a line on the page of a supply, of two on a phone."""

    def width(band: Band) -> str:
        gap = Length(rem=0.75) if band in (PHONE, COLUMN) else band.gap
        return _cropped(_share(band.wide, 2 if band is PHONE else 3, gap), picture, 4 / 5)

    return _spelt(width)


def series(picture: Picture) -> str:
    """Beside the words on a series, or above them."""
    return _spelt(
        lambda band: _cropped(
            band.wide if band in (PHONE, COLUMN) else (band.wide - band.gap) * (5 / 9), picture, 3 / 2
        )
    )


def gallery(picture: Picture, place: int, of: int) -> str:
    """The ``place``-th, from 1, ``of`` so many: leaves of nine, or of three where there is one column."""
    return _spelt(
        lambda band: (
            _in_threes(band, picture, place, of)
            if band in (PHONE, COLUMN)
            else _in_nines(band, picture, place, of)
        )
    )


def _in_threes(band: Band, picture: Picture, place: int, of: int) -> str:
    if place % 3 == 1 or (place % 3 == 2 and place == of):
        return _cropped(band.full, picture, 4 / 3)
    return _cropped(_share(band.full, 2, band.gap), picture, 1)


def _in_nines(band: Band, picture: Picture, place: int, of: int) -> str:
    last, at = place == of, place % 9
    if at in (1, 7) or (last and at in (2, 4, 8)):
        return _cropped((band.full - band.gap) * (2 / 3), picture, 3 / 2)
    if at in (0, 2, 3, 8):
        twelfth = _share(band.full, 12, band.gap)
        columns = 5 if at in (0, 2) else 7
        width = twelfth * columns + band.gap * (columns - 1)
        return _larger(width, band.line * (picture.width / picture.height), band)
    if (at == 4 and place == of - 1) or (at == 5 and last):
        return _cropped(_share(band.full, 2, band.gap), picture, 1)
    return _cropped(_share(band.full, 3, band.gap), picture, 4 / 5)


def _share(width: Length, columns: int, gap: Length) -> Length:
    return (width - gap * (columns - 1)) * (1 / columns)


def _cropped(width: Length, picture: Picture, ratio: float) -> str:
    """The whole picture's width where it fills a box ``width`` wide, of that width to height."""
    return str(width * max(1.0, picture.width / picture.height / ratio))


def _larger(one: Length, other: Length, band: Band) -> str:
    ahead = {one.at(window) >= other.at(window) for window in (band.start, band.end)}
    if len(ahead) == 2:
        return f"max({one}, {other})"
    return str(one if True in ahead else other)


def _spelt(width: Callable[[Band], str]) -> str:
    """The attribute: one condition for each width that differs from that of the next band."""
    said: list[str] = []
    for band, narrower in zip(BANDS, (*BANDS[1:], None), strict=True):
        own = width(band)
        if narrower is None:
            said.append(own)
        elif own != width(narrower):
            said.append(f"(min-width: {band.start}.001rem) {own}")
    return ", ".join(said)
