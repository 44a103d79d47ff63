"""Small motifs that are stamped on labels: black where there is ink."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from math import pi
from typing import Final

import numpy as np
from camera import Field
from drawing import CELLS_PER_MM, Point, Tile, arc, leaf, step
from lettering import written
from pieces import Stamp

from batchleaf.facts import Part

INK: Final = "#000000"
PAPER: Final = "#ffffff"


def stamped(words: str, ink: str, middle: tuple[float, float], room: tuple[float, float]) -> Stamp:
    """A motif that goes by these words, else the words themselves, as large as ``room`` (mm) allows."""
    cover = _cover(words)
    high, wide = cover.shape
    cells = max(wide / room[0], high / room[1])
    return Stamp(cover, ink, middle[0] - wide / cells / 2, middle[1] - high / cells / 2, cells)


@cache
def _cover(words: str) -> Field:
    """Where ink is, cropped to it."""
    tile = MOTIFS[words]() if words in MOTIFS else written(words)
    cover: Field = 1 - tile.kept().mean(axis=2)
    rows, columns = np.nonzero(cover.max(axis=1) > 0.1)[0], np.nonzero(cover.max(axis=0) > 0.1)[0]
    return np.pad(cover[rows[0] : rows[-1] + 1, columns[0] : columns[-1] + 1], 2)


@cache
def sloe_sprig() -> Tile:
    """A twig with leaves and three sloes, 44 mm from end to end."""
    tile = Tile(48, PAPER)
    twig = arc((4, 26), -10, 40, 16)
    tile.line(twig, 0.42, INK)
    for i, knot in enumerate(twig[1:-1]):
        side = -1 if i % 2 else 1
        if i in (3, 6, 8):
            _sloe(tile, knot, 90 - 14 * (i - 6))
        else:
            tile.area(leaf(knot, -20 + 58 * side, 4.6 - 0.16 * i, 2.1), INK)
    tile.area(leaf(twig[-1], 6, 4.2, 1.9), INK)
    return tile


def _sloe(tile: Tile, at: Point, fall: float) -> None:
    end = step(at, fall, 2.6)
    tile.line([at, end], 0.3, INK)
    centre = step(end, fall, 1.5)
    tile.dot(centre, 1.65, INK)
    tile.dot((centre[0] - 0.55, centre[1] - 0.6), 0.34, PAPER)


@cache
def wren() -> Tile:
    """A wren: a ball, a beak and a tail that stands up; 10 mm high."""
    tile = Tile(16, PAPER)
    tile.area(_egg((7.6, 8.4), 3.5, 2.7, -14), INK)
    tile.area([(9.9, 8.6), (12.2, 3.6), (13.3, 4.3), (11.3, 9.3)], INK)
    tile.dot((5.2, 6.5), 1.75, INK)
    tile.area([(3.9, 6.0), (1.9, 5.9), (3.8, 6.8)], INK)
    tile.dot((4.7, 6.2), 0.26, PAPER)
    tile.line(arc((6.9, 7.9), 18, 3.4, 34), 0.24, PAPER)
    tile.line(arc((7.1, 8.9), 14, 2.8, 30), 0.22, PAPER)
    for x in (7.1, 8.6):
        tile.line([(x, 10.6), (x - 0.2, 12.7)], 0.28, INK)
    tile.line([(3.4, 12.9), (13.0, 12.7)], 0.3, INK)
    return tile


def _egg(at: Point, wide: float, high: float, turn: float) -> list[Point]:
    points = []
    for t in np.linspace(0, 2 * pi, 40, endpoint=False):
        x, y = wide * float(np.cos(t)), high * float(np.sin(t)) * (1 - 0.12 * float(np.cos(t)))
        out = step(at, turn, x)
        points.append(step(out, turn + 90, y))
    return points


@cache
def feather() -> Tile:
    """A small barred feather, 30 mm long."""
    tile = Tile(34, PAPER)
    quill = arc((3, 20), -9, 29, -12, 24)
    tile.line(quill, 0.34, INK)
    for i, knot in enumerate(quill[5:-1]):
        reach = 4.6 * float(np.sin(pi * (0.12 + 0.86 * (i + 1) / 19)) ** 0.7)
        for side in (-1, 1):
            barb = arc(knot, -10 + side * 34, reach, side * -14, 5)
            tile.line(barb, 0.62 if i % 4 else 0.24, INK)
    return tile


def scores(part: Part) -> Stamp:
    """The score lines of a blank."""
    fine = 4
    width, height = float(part.size.width), float(part.size.height)
    cover = np.zeros((round(height * fine), round(width * fine)), dtype=np.float32)
    for score in part.scores:
        at = round(float(score.at) * fine)
        line = (
            (slice(None), slice(at - 1, at + 1)) if score.runs_down else (slice(at - 1, at + 1), slice(None))
        )
        cover[line] = 0.42
    return Stamp(cover, "#6b5a50", 0.0, 0.0, fine)


def slits(part: Part) -> Stamp:
    """The cuts of a box's blank: at each corner along one score as far as the other, on the same side.

    Each gapes a little at the edge, and what lies under it is dark.
    """
    fine = 10
    width, height = float(part.size.width), float(part.size.height)
    left, right = sorted(float(score.at) for score in part.scores if score.runs_down)
    upper, lower = sorted(float(score.at) for score in part.scores if not score.runs_down)
    x = np.arange(round(width * fine), dtype=np.float32)[None, :] / fine
    y = np.arange(round(height * fine), dtype=np.float32)[:, None] / fine
    cover = np.zeros((y.size, x.size), dtype=np.float32)
    for across, along, inner in (
        (x - left, upper - y, upper),
        (y - upper, x - right, width - right),
        (x - right, y - lower, height - lower),
        (y - lower, left - x, left),
    ):
        gape = 0.16 + 0.34 * along / inner
        cover = np.maximum(cover, np.where(along > 0, np.clip((gape - abs(across)) * fine + 0.5, 0, 1), 0))
    return Stamp(cover, "#54483f", 0.0, 0.0, fine)


def edges(length: float, thick: float, count: int) -> Stamp:
    """The edges of so many sheets or letters on each other: the thin shadows between them."""
    fine = 12
    cover = np.zeros((round(thick * fine), round(length * fine)), dtype=np.float32)
    dice = np.random.default_rng(count)
    for i in range(1, count):
        at = round(fine * thick * i / count)
        cover[at - 1 : at + 1] = dice.uniform(0.2, 0.5)
        cover[at + 1 : at + 3] = 0.1
    return Stamp(cover, "#4a4a48", 0.0, 0.0, fine)


@cache
def ticks(length: float) -> Stamp:
    """A rule's marks along the upper edge, one every 5 mm, longer at whole cm."""
    fine = CELLS_PER_MM
    cover = np.zeros((8 * fine, round((length - 2) * fine)), dtype=np.float32)
    for mm in range(5, round(length) - 4, 5):
        deep = 6.0 if mm % 10 == 0 else 3.6
        cover[: round(deep * fine), mm * fine : mm * fine + 2] = 0.8
    return Stamp(cover, "#2a2c2d", 1.0, 0.0, fine)


MOTIFS: Final[dict[str, Callable[[], Tile]]] = {
    "sloe sprig": sloe_sprig,
    "wren": wren,
    "a wren’s feather": feather,
}
"""Images that are drawn; other words are written out."""
