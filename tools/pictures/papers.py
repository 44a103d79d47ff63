"""Papers as the drawer tells them: colour and words from its records, tooth and print from here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Final

import numpy as np
import patterns
from camera import Field
from colour import linear, rgb
from drawing import CELLS_PER_MM
from grain import fibres, noise, relief, sample
from prints import Print, print_of

from batchleaf.facts import ShownSide, Supply


class Tooth(Enum):
    """How a paper is made; says how much shows of it."""

    SMOOTH = "smooth"
    FELT = "felt"
    FLECKED = "flecked"
    LAID = "laid"
    BRUSHED = "brushed"


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper under an even light; ``printed`` is the tile of its pattern.

    ``clear``: how much of what lies behind is seen through it, 0 to 1.
    """

    colour: str
    tooth: Tooth
    printed: Print | None = None
    clear: float = 0.0

    def albedo(self, x: Field, y: Field, shift: tuple[float, float]) -> Field:
        """What the paper gives back at points in mm, in linear light; ``shift`` is where it was cut from."""
        x, y = x + np.float32(shift[0]), y + np.float32(shift[1])
        made = self._ground(x, y)
        made *= (1 + self._roughness(x, y))[..., None]
        return np.clip(made, 0, 1)

    def _ground(self, x: Field, y: Field) -> Field:
        if self.printed is not None:
            return linear(sample(self.printed.tile(), x, y, CELLS_PER_MM)) * self.printed.tint()
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


PLAIN: Final = "#e9e5da"
"""What the drawer gives no colour."""

TOOTH: Final = {
    "oat": Tooth.FLECKED, "kraft": Tooth.FLECKED, "fawn": Tooth.FLECKED, "chalk": Tooth.LAID,
    "ledger": Tooth.LAID, "white": Tooth.SMOOTH, "patterned": Tooth.SMOOTH, "film": Tooth.SMOOTH,
    "vellum": Tooth.SMOOTH, "envelope": Tooth.LAID, "brad": Tooth.BRUSHED,
}  # fmt: skip
"""How a paper feels, by a word of its name or kind; what no word tells is felt-marked card."""

CLEAR: Final = {"film": 0.9, "vellum": 0.5}
"""What one sees through, by a word of its name."""

# Not papers, but cut to an outline like them: the rule and the mat on the bench.
STEEL: Final = Paper("#b9bab6", Tooth.BRUSHED)
MAT: Final = Paper("#3f4648", Tooth.FELT, Print(patterns.mat))


def paper_named(name: str, drawer: Mapping[str, Supply], side: ShownSide = ShownSide.FRONT) -> Paper:
    """The paper of a supply; behind the name of a pad stands the number of an unnamed paper."""
    slug, _, number = name.partition(" ")
    supply = drawer[slug]
    words = f"{slug} {supply.kind}".replace("-", " ")
    return Paper(
        supply.colour or PLAIN,
        next((tooth for word, tooth in TOOTH.items() if word in words), Tooth.FELT),
        print_of(supply, int(number or 0)) if side is ShownSide.FRONT else None,
        next((clear for word, clear in CLEAR.items() if word in words), 0.0),
    )
