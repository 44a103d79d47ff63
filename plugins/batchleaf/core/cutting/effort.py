"""How much work a search may do, counted in steps and never in seconds.

A step is one pass over a grid, one run of the solver or one piece of an
enumeration, so that equal jobs get equal answers on every machine.
"""

from __future__ import annotations

from collections.abc import Callable

Stop = Callable[[int], bool]


class Effort:
    """Counts steps; once the caller wants no more, it is ``over`` for good."""

    def __init__(self, stop: Stop | None = None) -> None:
        self._stop = stop
        self.steps = 0
        self.over = False

    def step(self, many: int = 1) -> bool:
        """Count ``many`` steps; True while the work may go on."""
        self.steps += many
        if self._stop is not None and not self.over:
            self.over = self._stop(self.steps)
        return not self.over
