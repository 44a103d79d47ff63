"""What planned batches will take: it still lies in the drawer, and is spoken for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.figures import BatchFigures
from batchleaf.core.movements import Holding
from batchleaf.facts import Cut, Project, Status


@dataclass(frozen=True, slots=True)
class Reservation:
    """So much of a supply, or of its odd pieces of one size, for one planned batch."""

    project: Project
    holding: Holding
    quantity: Fraction


def needed_sheets(batch: BatchFigures) -> tuple[Cut, ...]:
    """The sheets that the record states, or else those that the plan takes."""
    return batch.project.cut or (tuple(batch.cutting.sheets.values()) if batch.cutting else ())


def reservations(batches: Iterable[BatchFigures]) -> tuple[Reservation, ...]:
    """What each planned batch needs, in the order of their days: the earlier one has the first claim.

    An idea reserves nothing. What a batch uses without a measure is not counted.
    """
    planned = [batch for batch in batches if batch.project.status is Status.PLANNED]
    return tuple(
        one
        for batch in sorted(planned, key=lambda batch: (batch.project.date, batch.project.slug))
        for one in _of(batch)
    )


def _of(batch: BatchFigures) -> Iterator[Reservation]:
    project = batch.project
    wanted: dict[Holding, Fraction] = {}
    for cut in needed_sheets(batch):
        holding = Holding(cut.supply, cut.scrap)
        wanted[holding] = wanted.get(holding, Fraction(0)) + cut.count
    for use in project.uses:
        quantity = use.quantity if use.per_make is None else use.per_make * project.begun
        if quantity:
            wanted[Holding(use.supply)] = wanted.get(Holding(use.supply), Fraction(0)) + quantity
    yield from (Reservation(project, holding, quantity) for holding, quantity in wanted.items())
