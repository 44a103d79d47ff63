"""What a batch took of each supply, without a price to it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.facts import Project
from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class Taken:
    """What one line of the record took: odd pieces of one size, or whole units (``piece`` None).

    ``quantity`` None: used, but not measured.
    """

    piece: Size | None
    quantity: Fraction | None


@dataclass(frozen=True, slots=True)
class Used:
    """All that a batch took of one supply."""

    supply: str
    taken: tuple[Taken, ...]


def used_by(project: Project) -> tuple[Used, ...]:
    """By supply, in the order of the record; nothing before the batch is cut."""
    by_supply: dict[str, list[Taken]] = {}
    if project.status.moves_the_drawer:
        for supply, taken in _taken(project):
            by_supply.setdefault(supply, []).append(taken)
    return tuple(Used(supply, tuple(mine)) for supply, mine in by_supply.items())


def _taken(project: Project) -> Iterator[tuple[str, Taken]]:
    for cut in project.cut:
        yield cut.supply, Taken(cut.scrap, Fraction(cut.count))
    for use in project.used_so_far:
        yield use.supply, Taken(None, use.quantity)
