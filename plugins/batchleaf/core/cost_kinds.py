"""What the cost of a batch consists of: papers, adhesive, what else is worked in, packing, waste, spoilage.

What the papers cost is split by area, paper by paper: into the parts of finished makes,
those of spoiled ones, and the rest, which is waste. A part that comes from several papers
counts to each of them in proportion to how much of it was cut. Nothing here depends on a
computed plan.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.costing import BatchCost
from batchleaf.core.movements import Draw
from batchleaf.facts import Project, Purpose, Supply
from batchleaf.measure.money import share

Supplies = Mapping[str, Supply]


class CostKind(StrEnum):
    """What something in a cost was spent on, in the order of making."""

    PAPERS = "papers"
    ADHESIVE = "adhesive"
    EMBELLISHMENTS = "embellishments"
    PACKING = "packing"
    WASTE = "waste"
    SPOILAGE = "spoilage"


_OF_PURPOSE: Final = {
    Purpose.STICKING: CostKind.ADHESIVE,
    Purpose.PACKING: CostKind.PACKING,
    Purpose.WORKED_IN: CostKind.EMBELLISHMENTS,
}
ADHESIVE: Final = "adhesive"
"""The shelf whose supplies stick, whatever a record says they are for."""


@dataclass(frozen=True, slots=True)
class KindCost:
    """One kind's share of a batch's cost, and of that of one make, in minor units."""

    kind: CostKind
    cost: Cost
    one: int


@dataclass(frozen=True, slots=True)
class _Areas:
    """Of one paper, in mm²: what was cut and not kept, and what of it is in parts of makes."""

    cut: Fraction
    finished: Fraction
    spoiled: Fraction

    def weights(self) -> tuple[Fraction, Fraction, Fraction]:
        """Finished, spoiled and the rest, which together are all; never more than was cut."""
        if not self.cut:
            return Fraction(0), Fraction(0), Fraction(1)
        finished = min(self.finished, self.cut)
        spoiled = min(self.spoiled, self.cut - finished)
        return finished, spoiled, self.cut - finished - spoiled


def cost_by_kind(cost: BatchCost, project: Project, supplies: Supplies) -> tuple[KindCost, ...]:
    """The kinds that cost something, or whose price is not known; they sum to the batch, and to one."""
    areas = _areas(project, supplies)
    sums = dict.fromkeys(CostKind, NOTHING)
    for line in cost.lines:
        for kind, part in _split(line.draws, supplies[line.supply], areas):
            sums[kind] += part
    there = {kind: part for kind, part in sums.items() if part.known or not part.complete}
    ones = share(cost.one or 0, [Fraction(part.known) for part in there.values()])
    return tuple(KindCost(kind, part, one) for (kind, part), one in zip(there.items(), ones, strict=True))


def _split(
    draws: tuple[Draw, ...], supply: Supply, areas: Mapping[str, _Areas]
) -> Iterator[tuple[CostKind, Cost]]:
    """The draws of one supply by kind; its sheets together, so that no share is rounded twice."""
    sheets = [draw for draw in draws if draw.purpose is None]
    if sheets:
        whole = sum((draw.cost for draw in sheets), NOTHING)
        finished, spoiled, waste = share(whole.known, areas[supply.slug].weights())
        yield CostKind.PAPERS, whole.part(finished)
        # What is not known is told once, with the papers.
        yield CostKind.SPOILAGE, Cost(spoiled, rests_on=whole.rests_on if spoiled else frozenset())
        yield CostKind.WASTE, Cost(waste, rests_on=whole.rests_on if waste else frozenset())
    for draw in draws:
        if draw.purpose is not None:
            yield _kind_of(draw.purpose, supply), draw.cost


def _kind_of(purpose: Purpose, supply: Supply) -> CostKind:
    if purpose is Purpose.WORKED_IN and supply.kind == ADHESIVE:
        return CostKind.ADHESIVE
    return _OF_PURPOSE[purpose]


def _areas(project: Project, supplies: Supplies) -> dict[str, _Areas]:
    cut: dict[str, Fraction] = {}
    for line in project.cut:
        sheet = line.scrap or supplies[line.supply].sheet
        kept = sum((piece.size.area * piece.count for piece in line.kept), Fraction(0))
        cut[line.supply] = cut.get(line.supply, Fraction(0)) + max(
            sheet.area * line.count - kept, Fraction(0)
        )
    of_one = dict.fromkeys(cut, Fraction(0))
    for part in project.cut_parts:
        papers = [slug for slug in cut if slug in part.papers or supplies[slug].pad in part.papers]
        there = sum((cut[slug] for slug in papers), Fraction(0))
        for slug in papers if there else ():
            of_one[slug] += part.area * part.each * cut[slug] / there
    spoiled = project.begun - project.finished
    return {
        slug: _Areas(area, of_one[slug] * project.finished, of_one[slug] * spoiled)
        for slug, area in cut.items()
    }
