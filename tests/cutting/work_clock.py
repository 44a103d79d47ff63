"""A clock that goes on by the work that is done: the same on every machine, however busy.

Calls are counted, of Python's functions and of C's, and the solver's iterations. What
is counted depends on the Python and its libraries, so the clock is for bounds with room.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from math import inf
from types import FrameType
from typing import Any, Final, TypeVar

import numpy as np
import pytest

from batchleaf.core.cutting import solver
from batchleaf.core.cutting.effort import Deadline, within_seconds
from batchleaf.core.cutting.grid import grid_of, work_ahead
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.thin_grid import thin_grid_of
from cutting.jobs import mm, one_stock, part

CALLS_A_SECOND: Final = 10_000_000
"""A quick machine does sixteen million; while they are counted, about so many."""
OF_ARRAYS: Final = 100
"""A call of numpy's takes as long as so many others: 5 µs against 0.05 in the mean of this engine's work."""
OF_AN_ITERATION: Final = 700
OF_A_LOOK: Final = 2_500
"""The solver's iterations and, in whole numbers, its looks at the clock: 40 and 150 µs, whichever is more."""

SMALL: Final = one_stock(mm(9, 9), 2, part("A", mm(4, 3)), part("B", mm(2, 2)))

Found = TypeVar("Found")


class WorkClock:
    """Seconds since it was made, by what was counted."""

    def __init__(self) -> None:
        self.calls = 0

    def __call__(self) -> float:
        """The time by now."""
        return self.calls / CALLS_A_SECOND

    def on_event(self, _: FrameType, event: str, function: Any) -> None:
        """Count one event of :func:`sys.setprofile`; what returns was counted when it was called."""
        if event == "c_call":
            arrays = isinstance(function.__self__, np.ndarray) or function.__module__ == "numpy"
            self.calls += OF_ARRAYS if arrays else 1
        elif event == "call":
            self.calls += 1


class SolverByWork:
    """The engine's solver with a :class:`WorkClock` in place of its own, which it looks at as often.

    It looks in whole numbers alone, and these have a clock that begins anew with each run.
    """

    def __init__(self, highs: Any, clock: WorkClock) -> None:
        self._highs = highs
        self._clock = clock
        self._end = inf
        self._began = 0.0
        self._looks = 0
        highs.setOptionValue("time_limit", inf)

    def __getattr__(self, name: str) -> Any:
        return getattr(self._highs, name)

    def getRunTime(self) -> float:  # noqa: N802
        """The time by now."""
        return self._clock()

    def setOptionValue(self, option: str, value: Any) -> None:  # noqa: N802
        """The end is kept here; the rest is the solver's."""
        if option == "time_limit":
            self._end = value
        else:
            self._highs.setOptionValue(option, value)

    def run(self) -> None:
        """What it did without a look counts too, once it is over."""
        self._looks, self._began = 0, self._clock()
        self._highs.cbMipInterrupt.subscribe(self._look)
        self._highs.run()
        self._highs.cbMipInterrupt.unsubscribe(self._look)
        iterations = self._highs.getInfo().simplex_iteration_count
        self._clock.calls += max(0, iterations * OF_AN_ITERATION - self._looks * OF_A_LOOK)

    def _look(self, event: Any) -> None:
        self._looks += 1
        self._clock.calls += OF_A_LOOK
        event.interrupt(self._clock() >= self._began + self._end)


@contextmanager
def by_work() -> Iterator[WorkClock]:
    """A clock of what is done meanwhile. Nothing is remembered from before, and no rubbish is collected."""
    least_cost(SMALL, most_makes(SMALL).makes)  # what Python and its libraries do once only is done before
    for memory in (grid_of, thin_grid_of, work_ahead):
        memory.cache_clear()
    clock, before = WorkClock(), sys.getprofile()
    by_this_clock = SolverByWork(solver._highs(), clock)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(solver, "_highs", lambda: by_this_clock)
        gc.disable()
        sys.setprofile(clock.on_event)
        try:
            yield clock
        finally:
            sys.setprofile(before)
            gc.enable()


def within_a_second(answer: Callable[[Deadline], Found]) -> tuple[Found, float]:
    """What is found by a search that may take a second of work, and how long it took."""
    with by_work() as clock:
        found = answer(within_seconds(1, clock))
        return found, clock()
