"""The drawer's papers by name: colour, tooth and print. Later batches add theirs here."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from typing import Final

import numpy as np
import patterns
from camera import Field
from colour import linear, rgb, written
from drawing import CELLS_PER_MM
from grain import fibres, noise, relief, sample


class Tooth(Enum):
    """How a paper is made; says how much shows of it."""

    SMOOTH = "smooth"
    FELT = "felt"
    FLECKED = "flecked"
    LAID = "laid"
    BRUSHED = "brushed"


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper under an even light; ``printed`` gives the tile of its pattern."""

    colour: str
    tooth: Tooth
    printed: Callable[[], Field] | None = None

    def albedo(self, x: Field, y: Field, shift: tuple[float, float]) -> Field:
        """What the paper gives back at points in mm, in linear light; ``shift`` is where it was cut from."""
        x, y = x + np.float32(shift[0]), y + np.float32(shift[1])
        made = self._ground(x, y)
        made *= (1 + self._roughness(x, y))[..., None]
        return np.clip(made, 0, 1)

    def _ground(self, x: Field, y: Field) -> Field:
        if self.printed is not None:
            return linear(sample(self.printed(), x, y, CELLS_PER_MM))
        return np.broadcast_to(linear(rgb(self.colour)), (*x.shape, 3)).copy()

    def _roughness(self, x: Field, y: Field) -> Field:
        cloud = sample(noise(1.4, 7), x, y, 3.0) * np.float32(0.012)
        match self.tooth:
            case Tooth.SMOOTH:
                return cloud + relief(x, y, 9) * np.float32(0.02)
            case Tooth.FELT:
                return cloud + relief(x, y, 4.5) * np.float32(0.042)
            case Tooth.FLECKED:
                dark, light = _flecks(x, y)
                return cloud + relief(x, y, 6) * np.float32(0.04) - dark + light
            case Tooth.LAID:
                return cloud + relief(x, y, 7) * np.float32(0.03) + _lines(x, y)
            case Tooth.BRUSHED:
                return cloud + _brushing(x, y)


def _lines(x: Field, y: Field) -> Field:
    """The wires of a mould: fine ones close together, and every 24 mm one across."""
    wires = np.sin(y * (2 * np.pi / 1.1)) + 0.7 * (np.abs(x % 24 - 12) < 0.2)
    return np.asarray(0.011 * wires, dtype=np.float32)


def _brushing(x: Field, y: Field) -> Field:
    sheen = 0.12 * np.sin(x * 0.021 + 0.8)
    return np.asarray(sheen + 0.035 * sample(noise(0.4, 27), x / 24, y, 6), dtype=np.float32)


def _flecks(x: Field, y: Field) -> tuple[Field, Field]:
    dark = sample(fibres(420, 2.6, 5), x, y, CELLS_PER_MM) * np.float32(0.2)
    light = sample(fibres(520, 3.4, 6), x, y, CELLS_PER_MM) * np.float32(0.13)
    return dark, light


PAPERS: Final = {
    "oat-card": Paper("#e2d5bb", Tooth.FLECKED),
    "moss-card": Paper("#6c7257", Tooth.FELT),
    "ember-card": Paper("#a9583c", Tooth.FELT),
    "chalk-card": Paper("#efebe1", Tooth.LAID),
    "slate-card": Paper("#58616b", Tooth.FELT),
    "hazel-kraft": Paper("#ad8b66", Tooth.FLECKED),
    "white-card": Paper("#f7f5f0", Tooth.SMOOTH),
    "bramble": Paper("#e7dcc6", Tooth.SMOOTH, patterns.bramble),
    "ripple-green": Paper("#d4dcc3", Tooth.SMOOTH, patterns.ripple_green),
    "dusk-rose": Paper("#d3a89c", Tooth.SMOOTH, patterns.dusk_rose),
    "night-blue": Paper("#2c3e57", Tooth.SMOOTH, patterns.night_blue),
    "frost": Paper("#b9cad4", Tooth.SMOOTH, patterns.frost),
    "catkin": Paper("#ebe2cc", Tooth.SMOOTH, patterns.catkin),
    "nutshell": Paper("#80573f", Tooth.SMOOTH, patterns.nutshell),
    # Not papers, but cut to an outline like them: the rule and the mat on the bench.
    "steel": Paper("#b9bab6", Tooth.BRUSHED),
    "mat": Paper("#3f4648", Tooth.FELT, patterns.mat),
}


def average(name: str) -> str:
    """A paper's colour at arm's length, as ``#rrggbb``: the mean over 120 × 120 mm in linear light."""
    line = np.arange(0, 120, 0.25, dtype=np.float32)
    x, y = np.meshgrid(line, line)
    mean = PAPERS[name].albedo(x, y, (0.0, 0.0)).mean(axis=(0, 1))
    return "#" + "".join(f"{round(float(part) * 255):02x}" for part in written(mean))
