"""The papers of a pad with water and grasses, in the colours of its record."""

from __future__ import annotations

from math import pi

import numpy as np
from camera import Field
from colour import between
from drawing import Tile, arc, leaf, scattered, step

Colours = tuple[str, ...]


def towpath(colours: Colours, number: int) -> Field:
    """Water, grass and pale sky by turns; every number is another mix."""
    water, grass, pale = (*colours, *colours, *colours)[:3]
    ground = (water, grass, pale, between(water, pale, 0.5))[(number - 1) % 4]
    ink = (between(water, "#ffffff", 0.5), pale, grass, between(grass, "#20302c", 0.35))[(number - 1) % 4]
    tile = Tile(60, ground)
    motif = (_wavelets, _blades, _blades, _rings, _rushes)[(number - 1) % 5]
    motif(tile, ink, 120 + number)
    return tile.kept()


def _wavelets(tile: Tile, ink: str, seed: int) -> None:
    """Rows of low waves."""
    dice = np.random.default_rng(seed)
    for row in range(20):
        y, phase = 3.0 * row + 1.5, float(dice.uniform(0, 2 * pi))
        xs = np.linspace(0, tile.side, 121)
        swell = np.sin(xs * (2 * pi * 5 / tile.side) + phase) * 0.7
        tile.line(
            [(float(x), y + float(s)) for x, s in zip(xs, swell, strict=True)], 0.3 + 0.25 * (row % 2), ink
        )


def _blades(tile: Tile, ink: str, seed: int) -> None:
    """Blades of grass that lean with the wind."""
    dice = np.random.default_rng(seed)
    for at in scattered(tile.side, 4.0, seed):
        turn = float(dice.uniform(-100, -70))
        for lean in (-14, 4, 22):
            blade = arc(at, turn + lean, float(dice.uniform(4.5, 8)), lean * 1.4, 8)
            tile.line(blade, 0.3, ink)


def _rushes(tile: Tile, ink: str, seed: int) -> None:
    """Bulrushes with a leaf each."""
    dice = np.random.default_rng(seed)
    for at in scattered(tile.side, 7.6, seed):
        turn = float(dice.uniform(-98, -80))
        stalk = arc(step(at, turn + 180, 6), turn, 11, float(dice.uniform(-10, 10)))
        tile.line(stalk, 0.26, ink)
        tile.line([stalk[-3], step(stalk[-3], turn, 2.8)], 1.2, ink)
        tile.area(leaf(stalk[0], turn + 16, 8.4, 0.9), ink)


def _rings(tile: Tile, ink: str, seed: int) -> None:
    """Rings where a fish has risen."""
    for at in scattered(tile.side, 11.0, seed):
        for radius in (1.2, 2.6, 4.2):
            ring = [(at[0] + radius * 1.2 * np.cos(t), at[1] + radius * 0.62 * np.sin(t)) for t in _TURNS]
            tile.line([(float(x), float(y)) for x, y in ring], 0.3, ink)


_TURNS = np.linspace(0, 2 * pi, 49)
