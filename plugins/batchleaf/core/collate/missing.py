"""What is missing for one set more: the fewest parts, and the papers that they may come from."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, replace

from batchleaf.core.collate.most_sets import enough, least_more, most_sets
from batchleaf.core.collate.question import Group, Paper


@dataclass(frozen=True, slots=True)
class Missing:
    """So many more parts of one letter; ``papers``: of which, where several any of them will do."""

    letter: str
    count: int
    papers: tuple[Paper, ...]


def missing(group: Group, sets: int) -> tuple[Missing, ...] | None:
    """The fewest parts with which there would be so many sets; ``None`` where no more parts would help.

    Nothing where there are as many already.
    """
    if group.alike:
        return _for_a_match(group, sets)
    more = least_more(group, sets)
    if more is None:
        return None
    counts = Counter[str]()
    for (letter, _), count in more.items():
        counts[letter] += count
    if len(counts) == 1:
        ((letter, count),) = counts.items()
        kind = next(kind for kind in group.kinds if kind.letter == letter)
        # What can be added is a convex set: where each paper alone will do, any mixture of them will.
        if alone := [one for one in kind.cut if enough(_with(group, {(letter, one): count}), sets)]:
            return (Missing(letter, count, tuple(alone)),)
    return tuple(Missing(letter, count, (paper,)) for (letter, paper), count in more.items())


def _for_a_match(group: Group, sets: int) -> tuple[Missing, ...] | None:
    """The parts that one set more lacks, of the papers of which it lacks fewest."""
    if most_sets(group) >= sets:
        return ()
    lacks = {paper: _lacks(group, paper) for paper in group.common_papers}
    if not lacks:
        return None
    least = min(lacks.values(), key=lambda lack: sum(lack.values()))
    papers = tuple(paper for paper, lack in lacks.items() if lack == least)
    return tuple(Missing(letter, count, papers) for letter, count in least.items() if count)


def _lacks(group: Group, paper: Paper) -> dict[str, int]:
    """Letter → how many parts of a paper one set more of it lacks."""
    more = 1 + min(kind.cut[paper] // kind.each for kind in group.kinds)
    return {kind.letter: max(0, kind.each * more - kind.cut[paper]) for kind in group.kinds}


def _with(group: Group, more: Mapping[tuple[str, Paper], int]) -> Group:
    """The group with more parts cut."""
    kinds = (
        replace(kind, cut={one: cut + more.get((kind.letter, one), 0) for one, cut in kind.cut.items()})
        for kind in group.kinds
    )
    return replace(group, kinds=tuple(kinds))
