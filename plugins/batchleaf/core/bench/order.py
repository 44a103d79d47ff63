"""An order in which works can be done, with a tool taken in hand as seldom as possible.

Works are done by moment: cutting lies between them. Within a moment what must come first on a
part comes first, and works with one tool follow one another as far as that allows.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Moment, Work, WorkKind

FIRST: Final = frozenset(
    (
        (WorkKind.INK, WorkKind.STAMP),
        (WorkKind.INK, WorkKind.EMBOSS),
        (WorkKind.DIE_CUT, WorkKind.STAMP),
        (WorkKind.STAMP, WorkKind.EMBOSS),
        *((kind, WorkKind.FOLD) for kind in WorkKind if kind is not WorkKind.FOLD),
    )
)
"""(Earlier, later) on one part, by common practice; a part is folded last, since flat work needs it flat."""
MOST_TOOLS: Final = 10
"""So many tools, each way of taking them in hand is looked at."""
MOST_STATES: Final = 20_000
"""So many ways to have got part of the works done are kept in mind at once."""

_USUAL: Final = tuple(WorkKind)
Run = tuple[int, ...]
"""Works by their number, one after another with one tool."""


def must_precede(one: Work, other: Work) -> bool:
    """Whether ``one`` is done before ``other``, since both are done to one part."""
    return (one.kind, other.kind) in FIRST and not {*one.letters}.isdisjoint(other.letters)


def in_order(works: Sequence[Work]) -> tuple[tuple[Work, ...], ...]:
    """All works in runs, each of one moment and one tool."""
    return tuple(run for moment in Moment for run in _of_one_moment(works, moment))


def _of_one_moment(works: Sequence[Work], moment: Moment) -> Iterator[tuple[Work, ...]]:
    mine = sorted(
        (work for work in works if work.moment is moment),
        key=lambda work: (_USUAL.index(work.kind), work.letters),
    )
    before = tuple(frozenset(i for i, other in enumerate(mine) if must_precede(other, work)) for work in mine)
    for run in fewest_runs(tuple(work.in_hand for work in mine), before):
        yield tuple(mine[i] for i in run)


def fewest_runs(tools: Sequence[str], before: Sequence[frozenset[int]]) -> tuple[Run, ...]:
    """Numbers of works in as few runs of one tool as can be; ``before``: those that come before each.

    A work that can be done with the tool in hand is done at once: that takes no further tool, and
    only lets others follow. So each way is a row of tools, and the shortest is found by
    breadth. With many tools it is looked for step by step, and may be longer.
    """
    table = _Table(tuple(tools), tuple(before))
    found = table.shortest() if len(set(tools)) <= MOST_TOOLS else None
    return found if found is not None else tuple(table.step_by_step())


@dataclass(frozen=True, slots=True)
class _Table:
    """The tool of each work, and the works that come before it."""

    tools: tuple[str, ...]
    before: tuple[frozenset[int], ...]

    def shortest(self) -> tuple[Run, ...] | None:
        """The fewest runs; ``None`` where there are too many ways to look at."""
        ways: dict[frozenset[int], tuple[Run, ...]] = {frozenset(): ()}
        everything = frozenset(range(len(self.tools)))
        while everything not in ways:
            if len(ways) > MOST_STATES:
                return None
            further: dict[frozenset[int], tuple[Run, ...]] = {}
            for done, runs in ways.items():
                for run in self._next(done):
                    further.setdefault(done.union(run), (*runs, run))
            ways = further
        return ways[everything]

    def step_by_step(self) -> Iterator[Run]:
        """First a tool that is then done with, else the one that does most."""
        done: frozenset[int] = frozenset()
        while len(done) < len(self.tools):
            run = max(self._next(done), key=lambda run: (self._finishes(run, done), len(run), -run[0]))
            done = done.union(run)
            yield run

    def _next(self, done: frozenset[int]) -> Iterator[Run]:
        """For each tool that something can be done with, all that follows."""
        free = (i for i in range(len(self.tools)) if i not in done and self.before[i] <= done)
        for tool in dict.fromkeys(self.tools[i] for i in free):
            yield self._all_with(tool, done)

    def _all_with(self, tool: str, done: frozenset[int]) -> Run:
        run: list[int] = []
        waiting = [i for i, one in enumerate(self.tools) if one == tool and i not in done]
        while ready := [i for i in waiting if i not in run and self.before[i] <= done.union(run)]:
            run.append(ready[0])
        return tuple(run)

    def _finishes(self, run: Run, done: frozenset[int]) -> bool:
        tool = self.tools[run[0]]
        return all(i in run or i in done for i, one in enumerate(self.tools) if one == tool)
