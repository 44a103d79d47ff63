"""A cost that may not be wholly known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Basis

_WORTH_TELLING: Final = frozenset({Basis.GUESSED, Basis.GIFT})


@dataclass(frozen=True, slots=True)
class Cost:
    """Minor units that are known; ``complete`` False: something in it has no known price,

    so the true cost is at least this. ``rests_on``: a guess, or a gift, that is
    part of it.
    """

    known: int
    complete: bool = True
    rests_on: frozenset[Basis] = frozenset()

    @classmethod
    def of(cls, value: int | None, basis: Basis) -> Cost:
        """What a record says that something cost, and how its maker knows."""
        rests_on = _WORTH_TELLING & {basis}
        return cls(value or 0, complete=value is not None, rests_on=rests_on)

    def __add__(self, other: Cost) -> Cost:
        return Cost(
            self.known + other.known, self.complete and other.complete, self.rests_on | other.rests_on
        )

    def __sub__(self, other: Cost) -> Cost:
        """What stays when ``other`` is taken out; what is not known stays not known."""
        return self + -other

    def __neg__(self) -> Cost:
        return self.part(-self.known)

    def part(self, known: int) -> Cost:
        """``known`` of it, known as well and as badly as the whole."""
        return Cost(known, self.complete, self.rests_on)


NOTHING: Final = Cost(0)
UNKNOWN: Final = Cost(0, complete=False)
