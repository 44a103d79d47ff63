"""Where the finished makes of a batch are, and what those that were sold brought in.

Only what records state: a make of which no line says anything is not told of, and is
counted as that. So the parts always sum to all that were finished.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.facts import Basis, Project, Whereabouts


@dataclass(frozen=True, slots=True)
class Finished:
    """``counts`` has every way, also those that none went; ``brought``: of what was sold.

    What was sold without a price leaves ``brought`` incomplete: it was at least so much.
    """

    finished: int
    counts: Mapping[Whereabouts, int]
    brought: Cost

    @property
    def told(self) -> int:
        """How many the record says something of."""
        return sum(self.counts.values())

    @property
    def not_told(self) -> int:
        """How many may be anywhere."""
        return self.finished - self.told

    @property
    def sold(self) -> int:
        """How many were sold, at any price or none that is known."""
        return self.counts[Whereabouts.SOLD]

    def __add__(self, other: Finished) -> Finished:
        counts = {where: self.counts[where] + other.counts[where] for where in Whereabouts}
        return Finished(self.finished + other.finished, counts, self.brought + other.brought)


def finished_of(project: Project) -> Finished:
    """All finished makes of one batch."""
    counts = Counter[Whereabouts]()
    for went in project.went:
        counts[went.where] += went.count
    sold = (went.value for went in project.went if went.where is Whereabouts.SOLD)
    brought = sum((Cost.of(value, _basis(value)) for value in sold), NOTHING)
    return Finished(project.finished, {where: counts[where] for where in Whereabouts}, brought)


def together(some: Iterable[Finished]) -> Finished:
    """Those of several batches as one."""
    return sum(some, Finished(0, dict.fromkeys(Whereabouts, 0), NOTHING))


def _basis(value: int | None) -> Basis:
    return Basis.UNKNOWN if value is None else Basis.STATED
