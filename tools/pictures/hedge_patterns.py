"""Printed papers with things from a hedge and the air over it, in the colours of their records."""

from __future__ import annotations

import numpy as np
from camera import Field
from colour import between
from drawing import Point, Tile, arc, leaf, scattered, step

Colours = tuple[str, ...]


def ivy(colours: Colours, _number: int) -> Field:
    """Trails of ivy that climb slantwise, pale on green."""
    ground, trail = colours[0], colours[-1]
    tile = Tile(72, ground)
    dice = np.random.default_rng(71)
    for at in scattered(tile.side, 5.2, 72):
        tile.dot(at, 0.2, between(ground, trail, 0.3))
    for start in ((2.0, 70.0), (26.0, 70.0), (50.0, 70.0)):
        at, turn = start, -78.0
        for i in range(13):
            path = arc(at, turn, 5.9, 22 if i % 2 else -22, 6)
            tile.line(path, 0.34, between(ground, trail, 0.72))
            at = path[-1]
            side = 62 if i % 2 else -62
            stalk = arc(at, turn + side, 2.6, side * 0.4, 5)
            tile.line(stalk, 0.24, between(ground, trail, 0.72))
            tone = trail if i % 3 else between(ground, trail, 0.55)
            _ivy_leaf(tile, stalk[-1], turn + side * 0.9, 3.5 + float(dice.uniform(-0.5, 0.7)), tone, ground)
    return tile.kept()


def _ivy_leaf(tile: Tile, at: Point, turn: float, size: float, colour: str, vein: str) -> None:
    """Five lobes from one point."""
    for side, reach in ((-104, 0.66), (104, 0.66), (-52, 0.95), (52, 0.95), (0, 1.5)):
        tile.area(leaf(at, turn + side, size * reach, size * 0.68), colour)
    for side, reach in ((-52, 0.6), (52, 0.6), (0, 1.15)):
        tile.line([at, step(at, turn + side, size * reach)], 0.15, vein)


def may_blossom(colours: Colours, _number: int) -> Field:
    """May blossom in tufts between small cut leaves."""
    ground, green = colours[0], colours[-1]
    tile = Tile(64, ground)
    dice = np.random.default_rng(81)
    for at in scattered(tile.side, 3.6, 82):
        tile.dot(at, 0.16, between(ground, green, 0.35))
    for number, at in enumerate(scattered(tile.side, 9.6, 83)):
        turn = float(dice.uniform(0, 360))
        for i in range(3):
            _lobed(tile, step(at, turn + 120 * i + 40, 2.6), turn + 120 * i + 40, 3.6, green, ground)
        for i in range(3 + number % 2):
            _blossom(tile, step(at, turn + 97 * i, 1.9 if i else 0.2), turn + 31 * i, ground)
    return tile.kept()


def _lobed(tile: Tile, at: Point, turn: float, size: float, colour: str, vein: str) -> None:
    for side, reach in ((-38, 0.75), (38, 0.75), (0, 1.0)):
        tile.area(leaf(at, turn + side, size * reach, size * 0.5), colour)
    tile.line([at, step(at, turn, size * 0.8)], 0.16, between(colour, vein, 0.6))


def _blossom(tile: Tile, at: Point, turn: float, ground: str) -> None:
    for i in range(5):
        tile.dot(step(at, turn + 72 * i, 1.0), 0.94, between(ground, "#b98d8f", 0.35))
    for i in range(5):
        tile.dot(step(at, turn + 72 * i, 1.0), 0.82, "#fbf6f2")
    for i in range(6):
        tile.dot(step(at, turn + 60 * i, 0.7), 0.13, "#b5566a")
    tile.dot(at, 0.34, "#d8c987")


def swifts(colours: Colours, _number: int) -> Field:
    """Swifts high up, each like a bent bow."""
    ground, ink = colours[0], colours[-1]
    tile = Tile(72, ground)
    dice = np.random.default_rng(91)
    for at in scattered(tile.side, 13.0, 94):
        drift = arc((at[0] - 5, at[1]), float(dice.uniform(-6, 6)), 10, 8)
        tile.line(drift, 0.5, between(ground, "#ffffff", 0.4))
    for at in scattered(tile.side, 11.4, 92):
        _swift(tile, at, float(dice.uniform(-60, 20)), float(dice.uniform(3.6, 5.6)), ink)
    return tile.kept()


def _swift(tile: Tile, at: Point, turn: float, size: float, ink: str) -> None:
    tile.area(leaf(step(at, turn + 180, size * 0.7), turn, size * 1.25, size * 0.3), ink)
    for side in (-1, 1):
        front = arc(step(at, turn, size * 0.3), turn + side * 66, size * 1.45, side * 72, 10)
        back = [step(p, turn + 180, size * 0.036 * (10 - i)) for i, p in enumerate(front)]
        tile.area([*front, *reversed(back)], ink)
        tail = step(at, turn + 180, size * 0.5)
        tile.area([tail, step(tail, turn + 180 + side * 24, size * 0.52), step(tail, turn, 0.3)], ink)


def hedgebank(colours: Colours, number: int) -> Field:
    """Leaves and seed heads; every number of the pad has another motif on another ground."""
    pale, deep, straw = (*colours, *colours, *colours)[:3]
    grounds = (pale, between(straw, "#ffffff", 0.4), deep, between(pale, "#ffffff", 0.3), straw)
    ground = grounds[number % len(grounds)]
    inks = (between(deep, "#1f2a1a", 0.4), deep) if ground != deep else (straw, pale)
    tile = Tile(60, ground)
    motif = (_ferns, _seed_heads, _grass_leaves, _clocks)[number // 2 % 4]
    motif(tile, inks, 100 + number)
    return tile.kept()


def _ferns(tile: Tile, inks: Colours, seed: int) -> None:
    dice = np.random.default_rng(seed)
    for at in scattered(tile.side, 9.4, seed):
        turn = float(dice.uniform(-120, -60))
        stalk = arc(step(at, turn + 180, 6), turn, 12, float(dice.uniform(-40, 40)))
        tile.line(stalk, 0.3, inks[0])
        for i, knot in enumerate(stalk[2::2]):
            for side in (-56, 56):
                tile.area(
                    leaf(knot, turn + side, 3.9 - 0.5 * i, 0.85), inks[i % 2 if inks[1] != inks[0] else 0]
                )


def _seed_heads(tile: Tile, inks: Colours, seed: int) -> None:
    dice = np.random.default_rng(seed)
    for at in scattered(tile.side, 8.6, seed):
        turn = float(dice.uniform(-115, -65))
        stalk = arc(step(at, turn + 180, 6), turn, 8, 20)
        tile.line(stalk, 0.28, inks[0])
        for i in range(-3, 4):
            ray = arc(stalk[-1], turn + 22 * i, 3.4, 5 * i, 5)
            tile.line(ray, 0.18, inks[0])
            tile.dot(ray[-1], 0.5, inks[1] if inks[1] != inks[0] else inks[0])
            tile.dot(ray[-1], 0.28, inks[0])


def _grass_leaves(tile: Tile, inks: Colours, seed: int) -> None:
    dice = np.random.default_rng(seed)
    for number, at in enumerate(scattered(tile.side, 6.8, seed)):
        turn = float(dice.uniform(0, 360))
        outline = leaf(step(at, turn, -3.4), turn, 6.8, 3.6)
        tile.area(outline, inks[number % 2])
        tile.line([step(at, turn, -4.6), step(at, turn, 2.6)], 0.22, inks[(number + 1) % 2])


def _clocks(tile: Tile, inks: Colours, seed: int) -> None:
    for at in scattered(tile.side, 9.2, seed):
        for i in range(16):
            end = step(at, 22.5 * i, 3.6 if i % 2 else 3.0)
            tile.line([at, end], 0.14, inks[0])
            tile.dot(end, 0.32, inks[0])
        tile.dot(at, 0.6, inks[0])
        tile.line(arc(at, 84, 7.5, 14), 0.26, inks[0])
