"""How much work a search may do, counted in steps and never in seconds.

A step is about a quarter of a millisecond: one piece of an enumeration, a part of
a pass over a grid, a column of a program in whole numbers. Equal jobs get equal
answers on every machine.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

Stop = Callable[[int], bool]

PLENTY: Final = 16_000
"""Steps after which a search ends by itself where the caller sets no end."""


def after_plenty(steps: int) -> bool:
    """The end of a search that nobody else ends."""
    return steps > PLENTY


class Effort:
    """Counts steps; once the caller wants no more, it is ``over`` for good."""

    def __init__(self, stop: Stop | None = None) -> None:
        self._stop = stop or after_plenty
        self.steps = 0
        self.over = False

    def affords(self, many: int) -> bool:
        """Whether ``many`` more steps are within what the caller wants; none is counted."""
        return not (self.over or self._stop(self.steps + many))

    def step(self, many: int = 1) -> bool:
        """Count ``many`` steps; True while the work may go on."""
        self.steps += many
        self.over = self.over or self._stop(self.steps)
        return not self.over
