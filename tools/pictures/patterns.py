"""The printed papers: each a tile that repeats."""

from __future__ import annotations

from functools import cache

import numpy as np
from camera import Field
from colour import rgb
from drawing import CELLS_PER_MM, Point, Tile, arc, leaf, scattered, step


@cache
def bramble() -> Field:
    """Leaves in threes, berries ripe and unripe, a few flowers, on unbleached ground."""
    tile = Tile(72, "#e7dcc6")
    dice = np.random.default_rng(11)
    places = scattered(tile.side, 8.3, 5)
    for number, at in enumerate(places):
        turn = float(dice.uniform(0, 360))
        if number % 7 == 3:
            _flower(tile, at, turn)
        elif number % 5 in (0, 3):
            _berries(tile, at, turn, dice)
        else:
            _three_leaves(tile, at, turn, "#5c6647" if number % 2 else "#8d9068")
    return tile.kept()


def _three_leaves(tile: Tile, at: Point, turn: float, colour: str) -> None:
    tile.line(arc(at, turn + 180, 4.6, 50), 0.36, "#7a5a48")
    for side, size in ((-62, 4.6), (62, 4.6), (0, 6.2)):
        tile.area(leaf(at, turn + side, size, size * 0.58, teeth=6), colour)
        tile.line([at, step(at, turn + side, size * 0.8)], 0.22, "#d9d3b2")


def _berries(tile: Tile, at: Point, turn: float, dice: np.random.Generator) -> None:
    for side, colour, light in ((-40, "#4a2a42", "#8c6a83"), (28, "#93453f", "#cf8a78")):
        stalk = arc(at, turn + side, 4.0, -35)
        tile.line(stalk, 0.34, "#7a5a48")
        end = stalk[-1]
        for i in range(7):
            bead = end if i == 6 else step(end, 60 * i + turn, 1.05)
            tile.dot(bead, 0.78, colour)
            tile.dot((bead[0] - 0.2, bead[1] - 0.22), float(dice.uniform(0.16, 0.26)), light)
    tile.area(leaf(at, turn + 180, 4.2, 2.2, teeth=5), "#5c6647")


def _flower(tile: Tile, at: Point, turn: float) -> None:
    for i in range(5):
        centre = step(at, turn + 72 * i, 1.35)
        tile.dot(centre, 1.2, "#fbf5ea")
    for i in range(8):
        tile.dot(step(at, 45 * i, 0.75), 0.18, "#b98a3c")
    tile.dot(at, 0.42, "#d9b25e")


@cache
def ripple_green() -> Field:
    """Rings on a pond where it has begun to rain."""
    side = 66.0
    cells = round(side * CELLS_PER_MM)
    line = (np.arange(cells, dtype=np.float32) + 0.5) / CELLS_PER_MM
    x, y = np.meshgrid(line, line)
    nearest = np.full((cells, cells), 1e9, dtype=np.float32)
    for cx, cy in scattered(side, 15.0, 3):
        dx, dy = np.abs(x - cx), np.abs(y - cy)
        # Water is seen from the bank: the rings lie flat.
        flat = np.float32(1.75) * np.minimum(dy, side - dy)
        nearest = np.minimum(nearest, np.hypot(np.minimum(dx, side - dx), flat))
    to_line = np.abs((nearest / 2.5 + 0.5) % 1 - 0.5) * 2.5
    half = 0.66 - 0.03 * nearest
    ink = np.clip((half - to_line) * CELLS_PER_MM + 0.5, 0, 1)[..., None]
    ground, green = rgb("#d4dcc3"), rgb("#6b8469")
    mixed: Field = (ground * (1 - ink) + green * ink).astype(np.float32)
    return mixed


@cache
def dusk_rose() -> Field:
    """Heads of cow parsley against an evening sky."""
    tile = Tile(60, "#d3a89c")
    dice = np.random.default_rng(21)
    for at in scattered(tile.side, 4.6, 9):
        tile.dot(at, 0.24, "#c78f86")
    for number, at in enumerate(scattered(tile.side, 10.6, 4)):
        lean = float(dice.uniform(-118, -62))
        pale = number % 3 == 0
        _umbel(tile, at, lean, "#f6e4d2" if pale else "#8d4a52", 5.2 + number % 3)
    return tile.kept()


def _umbel(tile: Tile, at: Point, lean: float, colour: str, size: float) -> None:
    tile.line(arc(at, lean + 180, size * 1.35, 16), 0.38, colour)
    for i in range(-4, 5):
        ray = arc(at, lean + 17 * i, size * (1 - 0.012 * i * i), 6 * i)
        tile.line(ray, 0.22, colour)
        for j in (-1, 0, 1):
            tile.dot(step(ray[-1], lean + 70 * j, 0.62), 0.5 if j else 0.58, colour)


@cache
def night_blue() -> Field:
    """A clear night: stars of three sizes, and now and then a thin moon."""
    tile = Tile(60, "#2c3e57")
    dice = np.random.default_rng(31)
    for at in scattered(tile.side, 3.6, 14):
        tile.dot(at, 0.17, "#6d83a0")
    for number, at in enumerate(scattered(tile.side, 7.4, 6)):
        if number % 9 == 4:
            tile.dot(at, 2.1, "#e9ddbd")
            tile.dot((at[0] + 0.95, at[1] - 0.5), 1.85, "#2c3e57")
        elif number % 3 == 0:
            _star(tile, at, float(dice.uniform(1.5, 2.3)), float(dice.uniform(-12, 12)))
        else:
            tile.dot(at, float(dice.uniform(0.38, 0.6)), "#d8cfb4")
    return tile.kept()


def _star(tile: Tile, at: Point, size: float, turn: float) -> None:
    points = [step(at, turn + 45 * i, size if i % 2 == 0 else size * 0.26) for i in range(8)]
    tile.area(points, "#f0e5c6")


@cache
def frost() -> Field:
    """Hoar: needles that grow from their seeds at sixty degrees, as ice does."""
    tile = Tile(64, "#b9cad4")
    dice = np.random.default_rng(41)
    for at in scattered(tile.side, 3.4, 17):
        tile.dot(at, float(dice.uniform(0.1, 0.26)), "#dbe6ea")
    for colour, apart, seed, longest in (("#8fa7b6", 14.0, 12, 9.0), ("#f8fbfb", 11.5, 19, 11.0)):
        for at in scattered(tile.side, apart, seed):
            turn = float(dice.uniform(0, 60))
            for arm in range(6):
                _needle(tile, at, turn + 60 * arm, longest * float(dice.uniform(0.3, 1)), colour)
    return tile.kept()


def _needle(tile: Tile, at: Point, turn: float, length: float, colour: str) -> None:
    tile.line([at, step(at, turn, length)], 0.28, colour)
    for i in range(1, round(length / 1.15)):
        knot = step(at, turn, 1.15 * i)
        reach = 0.34 * (length - 1.15 * i) * (1 if i % 2 else 0.6)
        for side in (-60, 60):
            tip = step(knot, turn + side, reach)
            tile.line([knot, tip], 0.2, colour)
            if reach > 1.6:
                bud = step(knot, turn + side, reach * 0.55)
                tile.line([bud, step(bud, turn, reach * 0.3)], 0.18, colour)


@cache
def catkin() -> Field:
    """Hazel catkins hanging in a February hedge."""
    tile = Tile(66, "#ebe2cc")
    dice = np.random.default_rng(51)
    for number, at in enumerate(scattered(tile.side, 11.4, 22)):
        tile.line(arc((at[0] - 4.6, at[1] - 2.2), 14, 9.4, -22), 0.5, "#6f5a48")
        for side, length in ((-2.1, 8.6), (0.4, 11.0), (2.7, 7.4))[: 2 + number % 2]:
            fall = 90 - 3.5 * side + float(dice.uniform(-5, 5))
            _tassel(tile, (at[0] + side, at[1] - 1.1), fall, length)
        bud = step(at, -8, 4.9)
        tile.area(leaf((bud[0], bud[1] - 1.6), -50, 2.4, 1.3), "#94603f")
    return tile.kept()


def _tassel(tile: Tile, at: Point, fall: float, length: float) -> None:
    path = arc(at, fall, length, 8, count=round(length / 0.62))
    tile.line(path[:2], 0.3, "#6f5a48")
    for i, knot in enumerate(path[1:]):
        wide = 0.5 + 0.42 * float(np.sin(np.pi * (i + 1) / len(path)))
        for side, colour in ((-1, "#a8812f"), (1, "#b98f3a"), (0, "#d2b057")):
            grain = step(knot, fall + 90 * side, wide * 0.72 * abs(side))
            tile.area(leaf(grain, fall + 30 * side, 1.25, 0.95), colour)


@cache
def nutshell() -> Field:
    """Hazel leaves drawn in line on a nut brown."""
    tile = Tile(64, "#80573f")
    dice = np.random.default_rng(61)
    for number, at in enumerate(scattered(tile.side, 8.3, 16)):
        turn = float(dice.uniform(0, 360))
        if number % 4 == 1:
            _nut(tile, at, turn)
        else:
            _veined(tile, step(at, turn, -4.2), turn, 8.4)
    return tile.kept()


def _veined(tile: Tile, at: Point, turn: float, size: float) -> None:
    outline = leaf(at, turn, size, size * 0.72)
    tile.line([*outline, outline[0]], 0.34, "#e6d4b8")
    tile.line([step(at, turn, -1.6), step(at, turn, size * 0.92)], 0.32, "#e6d4b8")
    for i in (1, 2, 3, 4):
        vein = step(at, turn, size * 0.17 * i)
        for side in (-48, 48):
            tile.line([vein, step(vein, turn + side, size * (0.31 - 0.045 * abs(i - 2)))], 0.2, "#e6d4b8")


def _nut(tile: Tile, at: Point, turn: float) -> None:
    tile.area(leaf(step(at, turn, -2.4), turn, 4.8, 4.4), "#d9a865")
    for i in (-1, 0, 1):
        tile.line(arc(step(at, turn + 180, 1.9), turn + 16 * i, 3.4, -12 * i), 0.2, "#a5703f")
    tile.area(leaf(step(at, turn, -2.9), turn + 60, 2.6, 1.6), "#e6d4b8")
    tile.area(leaf(step(at, turn, -2.9), turn - 60, 2.6, 1.6), "#e6d4b8")


@cache
def mat() -> Field:
    """A cutting mat's grid, a line every 25 mm."""
    tile = Tile(50, "#3f4648")
    for at in (0.0, 25.0):
        tile.line([(0, at), (50, at)], 0.3, "#5d6567")
        tile.line([(at, 0), (at, 50)], 0.3, "#5d6567")
    return tile.kept()


@cache
def ledger() -> Field:
    """Faint lines for figures, and every 36 mm a red one down."""
    tile = Tile(72, "#e8dfc8")
    for i in range(9):
        tile.line([(0, 8.0 * i + 4), (72, 8.0 * i + 4)], 0.22, "#c9cbbf")
    for x in (20.0, 56.0):
        tile.line([(x, 0), (x, 72)], 0.18, "#d9b3a0")
    return tile.kept()
