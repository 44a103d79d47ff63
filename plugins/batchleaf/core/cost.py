"""A cost that may not be wholly known."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Cost:
    """Minor units that are known; ``complete`` False: something in it has no known price,

    so the true cost is at least this.
    """

    known: int
    complete: bool = True

    def __add__(self, other: Cost) -> Cost:
        return Cost(self.known + other.known, self.complete and other.complete)

    def __sub__(self, other: Cost) -> Cost:
        """What stays when ``other`` is taken out; what is not known stays not known."""
        return Cost(self.known - other.known, self.complete and other.complete)


NOTHING = Cost(0)
UNKNOWN = Cost(0, complete=False)
