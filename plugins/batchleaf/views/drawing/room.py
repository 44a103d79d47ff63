"""A place that stays bare: dashed, with what it is for and how large it is where that has room."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.canvas import Canvas
from batchleaf.views.drawing.shapes import Label, Stroke

_INSET: Final = 0.35
"""How far inside its own edge it is drawn, in em, so that it stands apart from edges of paper."""
_NARROWEST: Final = 2.5
"""In em: what is narrower is drawn to its very edge."""
_LINE: Final = 1.25
"""From one line of words to the next, in em."""
_AIR: Final = 0.4
"""Beside the words, in em."""


@dataclass(frozen=True, slots=True)
class Room:
    """Where it lies in an aspect, and what is written in it, line by line."""

    rect: Rect
    words: tuple[str, ...] = ()


def draw_room(canvas: Canvas, room: Room, shade: str) -> None:
    """``shade``: how dark the paper is that it lies on, as the style sheet is told."""
    em, rect = canvas.lettering.em, room.rect
    inset = _INSET * em if float(min(rect.width, rect.height)) > _NARROWEST * em else 0.0
    left, top = float(rect.x) + inset, float(rect.y) + inset
    right, foot = float(rect.right) - inset, float(rect.bottom) - inset
    around = ((left, top), (right, top), (right, foot), (left, foot), (left, top))
    canvas.add(Stroke(f"room{shade}", tuple((*one, *other) for one, other in pairwise(around))))
    _write(canvas, room.words, ((left + right) / 2, (top + foot) / 2), (right - left, foot - top), shade)


def _write(
    canvas: Canvas, words: tuple[str, ...], middle: tuple[float, float], room: tuple[float, float], shade: str
) -> None:
    """Level, or else read from below; nothing where neither has room."""
    em = canvas.lettering.em
    wide = max((canvas.lettering.width(line) for line in words), default=0.0) + 2 * _AIR * em
    high = len(words) * _LINE * em
    for upright in (True, False):
        along, across = room if upright else room[::-1]
        if words and wide <= along and high <= across:
            for number, line in enumerate(words):
                off = (number - (len(words) - 1) / 2) * _LINE * em
                x, y = (middle[0], middle[1] + off) if upright else (middle[0] + off, middle[1])
                canvas.add(Label(f"bare{shade}", x, y, line, upright))
            return
