"""What is told of the rows of a sheet."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Remark:
    """A sentence about the row that begins in ``line``."""

    line: int
    sentence: str


@dataclass(frozen=True, slots=True)
class Brought:
    """``record``: the new file; nothing where no row is left. ``taken``: how many rows stand in it.

    ``there``: rows of what the drawer has already; ``faults``: rows that cannot be taken.
    """

    record: str
    taken: int
    there: tuple[Remark, ...]
    faults: tuple[Remark, ...]


@dataclass(slots=True)
class Found:
    """What is told of rows while they are read."""

    there: list[Remark] = field(default_factory=list)
    faults: list[Remark] = field(default_factory=list)

    def brought(self, record: str, taken: int) -> Brought:
        """All of it, by line."""
        there, faults = (tuple(sorted(some, key=lambda one: one.line)) for some in (self.there, self.faults))
        return Brought(record, taken, there, faults)
