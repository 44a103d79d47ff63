"""Which pattern a printed paper shows, and how it takes on the colours of its record."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Final

import hedge_patterns
import numpy as np
import patterns
import water_patterns
from camera import Field
from colour import linear, rgb

from batchleaf.facts import Supply

Colours = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Print:
    """A tile that repeats; with ``mean`` it is tinted until it looks like that colour at arm's length."""

    drawn: Callable[[], Field] | Callable[[Colours, int], Field]
    mean: str = ""
    colours: Colours = ()
    number: int = 0

    def tile(self) -> Field:
        """The colours as written, 0 to 1."""
        return _drawn(self.drawn, self.colours, self.number)

    def tint(self) -> Field:
        """What its linear light is multiplied by."""
        return _tint(self.drawn, self.mean) if self.mean else np.ones(3, dtype=np.float32)


@cache
def _drawn(drawn: Callable[..., Field], colours: Colours, number: int) -> Field:
    return drawn(colours, number) if colours else drawn()


@cache
def _tint(drawn: Callable[..., Field], mean: str) -> Field:
    light = linear(drawn()).mean(axis=(0, 1))
    return np.asarray(linear(rgb(mean)) / np.maximum(light, 0.004), dtype=np.float32)


OF_ONE_COLOUR: Final[dict[str, Callable[[], Field]]] = {
    "bramble-paper": patterns.bramble,
    "ripple-green": patterns.ripple_green,
    "dusk-rose": patterns.dusk_rose,
    "night-blue": patterns.night_blue,
    "frost-paper": patterns.frost,
    "catkin-paper": patterns.catkin,
    "nutshell-paper": patterns.nutshell,
    "ledger-paper": patterns.ledger,
}
"""Drawn in colours of their own; the record tells one, their mean."""

OF_SEVERAL: Final[dict[str, Callable[[Colours, int], Field]]] = {
    "ivy-paper": hedge_patterns.ivy,
    "hawthorn-paper": hedge_patterns.may_blossom,
    "swift-paper": hedge_patterns.swifts,
    "hedgebank-pad": hedge_patterns.hedgebank,
    "towpath-pad": water_patterns.towpath,
}
"""Drawn in the colours of the record, ground first; of a pad each number is another pattern."""


def print_of(supply: Supply, number: int = 0) -> Print | None:
    """The pattern of a paper; ``None`` for what is plain."""
    if drawn := OF_ONE_COLOUR.get(supply.slug):
        return Print(drawn, mean=supply.colour)
    if several := OF_SEVERAL.get(supply.pad or supply.slug):
        return Print(several, colours=supply.colours, number=supply.number or number)
    return None
