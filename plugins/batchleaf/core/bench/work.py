"""The bench work of a batch: what there is of each work, in order, and how long it may take.

Strokes of a work: for each pile ⌈pieces ÷ how many at once⌉ × strokes for one, summed.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.bench.order import in_order
from batchleaf.core.bench.piles import Pile, piles_for
from batchleaf.core.bench.times import CuttingTime, cutting_time, seconds_of
from batchleaf.core.bench_limits import Tools
from batchleaf.core.cutting.from_one_sheet import from_one_sheet
from batchleaf.core.dealing import Supplies
from batchleaf.facts import Project, Tool, Work
from batchleaf.measure.lengths import Size


@dataclass(frozen=True, slots=True)
class InHand:
    """A pile, how many of it go under the tool at once, and the strokes that it takes."""

    pile: Pile
    at_once: int

    @property
    def strokes(self) -> int:
        """The last ones take a stroke as well, however few they are."""
        return -(-self.pile.count // self.at_once) * self.pile.each


@dataclass(frozen=True, slots=True)
class Done:
    """One work with all that it is done to; ``seconds``: the estimate for hands on it."""

    work: Work
    piles: tuple[InHand, ...]
    seconds: int

    @property
    def pieces(self) -> int:
        """Pieces, or sheets."""
        return sum(one.pile.count for one in self.piles)

    @property
    def strokes(self) -> int:
        """Of all piles."""
        return sum(one.strokes for one in self.piles)

    @property
    def of_sheets(self) -> bool:
        """Whether it is done to whole sheets."""
        return all(one.pile.sheets for one in self.piles)


@dataclass(frozen=True, slots=True)
class Bench:
    """``runs``: works in order, those that follow one another with one tool together."""

    runs: tuple[tuple[Done, ...], ...]
    cutting: CuttingTime | None

    @property
    def works(self) -> tuple[Done, ...]:
        """All of them in order."""
        return tuple(done for run in self.runs for done in run)

    @property
    def seconds(self) -> int:
        """The estimate for hands on all works and on cutting."""
        return sum(done.seconds for done in self.works) + (self.cutting.seconds if self.cutting else 0)

    @property
    def waiting(self) -> int:
        """Minutes of drying and waiting: once for each work, since its pieces wait together."""
        return sum(done.work.wait.minutes for done in self.works if done.work.wait)


def bench_work(project: Project, cutting: Cutting | None, supplies: Supplies, tools: Tools) -> Bench | None:
    """All that is done besides cutting; ``None`` where there is nothing."""
    if not project.works:
        return None
    runs = tuple(
        tuple(_done(work, project, cutting, supplies, tools) for work in run)
        for run in in_order(project.works)
    )
    return Bench(runs, cutting_time(project, cutting, supplies, tools))


def _done(work: Work, project: Project, cutting: Cutting | None, supplies: Supplies, tools: Tools) -> Done:
    tool = tools[work.tool] if work.tool else None
    piles = tuple(
        InHand(pile, takes_at_once(tool, pile)) for pile in piles_for(work, project, cutting, supplies)
    )
    return Done(work, piles, seconds_of(work.kind, tool, sum(one.strokes for one in piles)))


def takes_at_once(tool: Tool | None, pile: Pile) -> int:
    """How many of a pile go under the tool: one above another, and beside one another on its plate."""
    if tool is None:
        return 1
    beside = on_the_plate(tool.plate, pile.size) if tool.plate else 1
    return tool.takes_at_once(pile.grammage) * max(beside, 1)


def on_the_plate(plate: Size, piece: Size) -> int:
    """How many pieces of one size lie on a plate; none where it is too small for one."""
    return from_one_sheet(plate, piece, turns=True).stopped


def too_heavy(tool: Tool, grammage: Fraction | None) -> bool:
    """Whether a paper is heavier than any that the tool says it takes."""
    return grammage is not None and tool.heaviest is not None and grammage > tool.heaviest


def each_pile(bench: Bench) -> Iterator[tuple[Work, Pile]]:
    """Every pile with the work that is done to it."""
    for done in bench.works:
        for one in done.piles:
            yield done.work, one.pile
