"""How much work a search may do: counted in steps, or, where a person waits, by a clock.

A step is about a quarter of a millisecond: one piece of an enumeration, a part of
a pass over a grid, a column of a program in whole numbers. A search that ends by
steps gives equal jobs equal answers on every machine. A :class:`Deadline` ends it
by the clock of whoever asks; its answers hold just as well, but differ.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

Stop = Callable[[int], bool]
"""Told how many steps are done, or would be; True: no more. May be a :class:`Deadline`."""

PLENTY: Final = 16_000
"""Steps after which a search ends by itself where the caller sets no end."""
SECONDS_A_STEP: Final = 0.000_25
FOR_TIDYING: Final = 0.1
FOR_WRITING: Final = 0.03
"""Of the seconds of a deadline, the shares that are kept: for both, and to write the plan up at last."""


@dataclass(frozen=True, slots=True)
class Deadline:
    """A :data:`Stop` by the clock: it is over once ``clock`` shows ``end``. All in seconds."""

    clock: Callable[[], float]
    seconds: float
    end: float

    def __call__(self, steps: int) -> bool:
        """Whatever was done until now: whether time is up."""
        return self.left <= 0

    @property
    def left(self) -> float:
        """Below 0 when it is over."""
        return self.end - self.clock()


def within_seconds(seconds: float, clock: Callable[[], float]) -> Deadline:
    """The end of a search that begins now; ``clock`` is :func:`time.monotonic`, or a test's."""
    return Deadline(clock, seconds, clock() + seconds)


def after_plenty(steps: int) -> bool:
    """The end of a search that nobody else ends."""
    return steps > PLENTY


class Effort:
    """Counts steps; once the caller wants no more, it is ``over`` for good."""

    def __init__(self, stop: Stop | None = None, *, kept: float = FOR_TIDYING) -> None:
        self._stop = stop or after_plenty
        self._deadline = stop if isinstance(stop, Deadline) else None
        self._kept = self._deadline.seconds * kept if self._deadline else 0.0
        self.steps = 0
        self.over = False

    @property
    def seconds_left(self) -> float | None:
        """Never below 0; None where no clock rules."""
        return max(0.0, self._deadline.left - self._kept) if self._deadline else None

    def affords(self, many: int = 0) -> bool:
        """Whether ``many`` more steps are within what the caller wants; none is counted."""
        if self.over:
            return False
        left = self.seconds_left
        return not self._stop(self.steps + many) if left is None else many * SECONDS_A_STEP < left

    def step(self, many: int = 1) -> bool:
        """Count ``many`` steps; True while the work may go on."""
        self.steps += many
        self.over = self.over or not self.affords()
        return not self.over

    def for_tidying(self, steps: int) -> Effort:
        """An effort of its own, of so many steps; a deadline holds for it too, nearly to its end."""
        if self._deadline is None:
            return Effort(lambda done: done > steps)
        return Effort(self._deadline, kept=FOR_WRITING)
