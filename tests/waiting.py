"""No end of waiting is itself a fault: what takes many times too long is ended and told."""

from __future__ import annotations

import signal
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

LONGEST_WAIT: Final = 10
"""Seconds of processor time for something small, many times what it takes on any machine."""


@contextmanager
def soon() -> Iterator[None]:
    """Ends what takes longer than :data:`LONGEST_WAIT`, on systems that can."""
    if sys.platform == "win32":
        yield
        return

    def too_long(*_: object) -> None:
        raise TimeoutError(f"this took more than {LONGEST_WAIT} seconds of work")

    before = signal.signal(signal.SIGPROF, too_long)
    signal.setitimer(signal.ITIMER_PROF, LONGEST_WAIT)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)
