"""Words as a pen would write them: small upright letters of single strokes."""

from __future__ import annotations

from typing import Final

import numpy as np
from drawing import Point, Tile

PEN: Final = 0.34
"""The width of a stroke, where a small letter is 2 mm high."""
SMALL: Final = 2.0
SLANT: Final = 0.14
GAP: Final = 0.3

_A: Final = ".62,-.85 .34,-1 .02,-.55 .12,-.06 .4,-.06 .64,-.5"
LETTERS: Final = {
    "a": (0.8, f"{_A}; .66,-1 .63,-.3 .7,0 .84,-.1"),
    "b": (0.66, "0,-1.8 .02,-.08; .02,-.6 .34,-1 .64,-.72 .6,-.2 .32,.02 .02,-.15"),
    "c": (0.62, ".6,-.85 .36,-1 .02,-.58 .12,-.1 .38,.02 .64,-.14"),
    "d": (0.8, f"{_A}; .7,-1.8 .64,-.3 .72,0 .84,-.1"),
    "e": (0.66, ".04,-.48 .4,-.5 .6,-.76 .34,-1 .02,-.56 .12,-.1 .38,.02 .68,-.18"),
    "f": (0.5, ".6,-1.66 .44,-1.8 .26,-1.5 .22,0; 0,-1 .5,-1"),
    "g": (0.74, f"{_A}; .66,-1 .64,.3 .36,.76 .02,.56"),
    "h": (0.66, "0,-1.8 0,0; 0,-.55 .32,-1 .58,-.76 .58,-.15 .68,0"),
    "i": (0.24, "0,-1 0,-.2 .1,.02 .24,-.1; .02,-1.42 .04,-1.38"),
    "j": (0.24, ".16,-1 .14,.4 -.04,.76 -.22,.62; .18,-1.42 .2,-1.38"),
    "k": (0.6, "0,-1.8 0,0; .5,-1 .02,-.45; .1,-.56 .58,0"),
    "l": (0.24, "0,-1.8 0,-.2 .1,.02 .24,-.1"),
    "m": (1.04, "0,-1 0,0; 0,-.6 .26,-1 .46,-.76 .46,0; .46,-.6 .74,-1 .94,-.76 .94,-.15 1.04,0"),
    "n": (0.66, "0,-1 0,0; 0,-.6 .32,-1 .58,-.76 .58,-.15 .68,0"),
    "o": (0.68, ".34,-1 .04,-.62 .12,-.1 .38,.02 .66,-.4 .58,-.86 .34,-1"),
    "p": (0.66, "0,-1 0,.8; .02,-.6 .34,-1 .64,-.72 .6,-.2 .32,.02 .02,-.15"),
    "q": (0.74, f"{_A}; .66,-1 .64,.8"),
    "r": (0.44, "0,-1 0,0; 0,-.55 .22,-.96 .46,-.92"),
    "s": (0.5, ".48,-.86 .26,-1 .06,-.78 .26,-.52 .46,-.24 .24,.02 0,-.12"),
    "t": (0.46, ".2,-1.5 .18,-.2 .3,.02 .48,-.1; 0,-1 .44,-1"),
    "u": (0.68, "0,-1 .02,-.25 .26,.02 .54,-.3 .58,-1; .58,-1 .58,-.15 .7,0"),
    "v": (0.56, "0,-1 .28,0; .28,0 .56,-1"),
    "w": (0.9, "0,-1 .22,0; .22,0 .45,-.9; .45,-.9 .68,0; .68,0 .9,-1"),
    "x": (0.56, "0,-1 .56,0; .54,-1 0,0"),
    "y": (0.58, "0,-1 .3,-.04; .58,-1 .1,.78"),
    "z": (0.54, ".02,-1 .54,-1; .54,-1 0,0; 0,0 .56,0"),
    "’": (0.14, ".08,-1.8 .02,-1.46"),
    "-": (0.4, "0,-.5 .36,-.5"),
    " ": (0.42, ""),
}
"""Letter → its width and its strokes; x and y in heights of a small letter, the line at 0."""


def written(words: str) -> Tile:
    """One line in black on white, somewhere on a tile."""
    strokes = _strokes(words.lower())
    wide = max((x for stroke in strokes for x, _ in stroke), default=1.0) * SMALL
    tile = Tile(wide + 8, "#ffffff")
    for stroke in strokes:
        points = [(4 + SMALL * x, 0.5 * tile.side + SMALL * y) for x, y in stroke]
        tile.line(points, PEN, "#000000")
    return tile


def _strokes(words: str) -> list[list[Point]]:
    strokes: list[list[Point]] = []
    at = 0.0
    for letter in words:
        width, text = LETTERS.get(letter, LETTERS[" "])
        for stroke in filter(None, text.split("; ")):
            knots = [tuple(float(part) for part in knot.split(",")) for knot in stroke.split()]
            strokes.append([(at + x - SLANT * y, y) for x, y in _smooth(knots)])
        at += width + GAP
    return strokes


def _smooth(knots: list[tuple[float, ...]]) -> list[Point]:
    """A Catmull-Rom curve through the knots."""
    ends = np.array(knots)
    if len(ends) < 3:
        return [(float(x), float(y)) for x, y in ends]
    held = np.vstack((2 * ends[0] - ends[1], ends, 2 * ends[-1] - ends[-2]))
    t = np.linspace(0, 1, 8, endpoint=False)[:, None]
    spans = []
    for a, b, c, d in (held[i : i + 4] for i in range(len(ends) - 1)):
        spans.append(
            0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - 3 * c + d - a) * t**3)
        )
    return [(float(x), float(y)) for x, y in np.vstack((*spans, ends[-1:]))]
