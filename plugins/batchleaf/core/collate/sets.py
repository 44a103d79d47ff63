"""Collated sets: the parts that go into them, dealt so that every set keeps the rule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from batchleaf.core.collate.colouring import Edges, edge_colours
from batchleaf.core.collate.most_sets import Uses, uses_of
from batchleaf.core.collate.question import Face, Group, Paper

Papers = tuple[Paper, ...]


@dataclass(frozen=True, slots=True)
class AlikeSets:
    """``times`` sets with the same papers: letter → the paper of each part, in the order of the papers."""

    papers: Mapping[str, Papers]
    times: int


def dealt(group: Group, sets: int) -> tuple[AlikeSets, ...]:
    """So many sets, which there are, by the rule of the group; each part is used once."""
    uses = uses_of(group, sets)
    if group.alike:
        return tuple(_from_one_paper(group, uses))
    return as_varied_as_can_be(group, uses, sets)


def _from_one_paper(group: Group, uses: Uses) -> Iterator[AlikeSets]:
    first = group.kinds[0]
    for paper in group.papers:
        if parts := uses.get((first.letter, paper), 0):
            yield AlikeSets({kind.letter: (paper,) * kind.each for kind in group.kinds}, parts // first.each)


def as_varied_as_can_be(group: Group, uses: Uses, sets: int) -> tuple[AlikeSets, ...]:
    """Sets of exactly these parts, in which each face comes as often as in the next, or once more.

    Each part of a make is a node with one edge for every set. A face is as many nodes as it takes to
    give each as many edges as there are sets, and one with the rest: a set takes one edge of each full
    node, and at most one of the rest.
    """
    if not sets:
        return ()
    edges, paper_of, letter_of = _edges(group, uses, sets)
    order = {paper: at for at, paper in enumerate(group.papers)}
    found = Counter[tuple[Papers, ...]]()
    for matching, times in edge_colours(edges, sets):
        papers: dict[str, list[Paper]] = {kind.letter: [] for kind in group.kinds}
        for left, right in matching:
            papers[letter_of[right]].append(paper_of[left])
        found[tuple(tuple(sorted(one, key=order.__getitem__)) for one in papers.values())] += times
    letters = [kind.letter for kind in group.kinds]
    by_paper = sorted(found.items(), key=lambda one: [[order[p] for p in papers] for papers in one[0]])
    return tuple(AlikeSets(dict(zip(letters, papers, strict=True)), times) for papers, times in by_paper)


def _edges(group: Group, uses: Uses, sets: int) -> tuple[Edges, list[Paper], list[str]]:
    """An edge for each part; of the nodes on the left the paper, of those on the right the letter."""
    edges = Counter[tuple[int, int]]()
    number: dict[tuple[Face, int], int] = {}
    given = Counter[Face]()
    letters: list[str] = []
    for kind in group.kinds:
        parts = [paper for paper in kind.cut for _ in range(uses.get((kind.letter, paper), 0))]
        for nth, paper in enumerate(parts):
            face = group.face(kind, paper)
            left = number.setdefault((face, given[face] // sets), len(number))
            edges[left, len(letters) + nth // sets] += 1
            given[face] += 1
        letters += [kind.letter] * kind.each
    return edges, [paper for (paper, _), _ in number], letters
