"""Edges of a bipartite graph in colours, none of which meets itself at a node.

As many colours as the largest degree are enough (König, Mathematische Annalen 77 (1916)
453–465): there is always a matching that covers every node of that degree, and without it
the largest degree is one less. Such a matching is pieced together from one that covers those
on the left and one that covers those on the right (Mendelsohn and Dulmage, Canadian Journal
of Mathematics 10 (1958) 230–241).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Set

from batchleaf.core.collate.most_sets import largest

Edges = Mapping[tuple[int, int], int]
"""(Left node, right node) → how many edges there are between them."""
Matching = tuple[tuple[int, int], ...]
"""Edges of one colour, by their left node."""


def edge_colours(edges: Edges, colours: int) -> tuple[tuple[Matching, int], ...]:
    """The edges of each colour, and how many colours have these; as few different ones as come easily.

    ``colours``: at least the largest degree. A colour may have no edges.
    """
    rest = Counter({edge: times for edge, times in edges.items() if times})
    found: list[tuple[Matching, int]] = []
    while colours:
        matching, times = _fullest(rest, colours)
        rest -= Counter(dict.fromkeys(matching, times))
        colours -= times
        found.append((matching, times))
    return tuple(found)


def _fullest(edges: Edges, colours: int) -> tuple[Matching, int]:
    """A matching for as many colours as any, and how many these are."""
    times = largest(1, colours, lambda times: _matching(edges, colours, times) is not None)
    return _matching(edges, colours, times) or (), times


def _matching(edges: Edges, colours: int, times: int) -> Matching | None:
    """A matching that can be taken so many times; ``None`` where there is none.

    Each of its edges is there as often, and a node that it leaves out can wait as long.
    """
    degrees_left, degrees_right = Counter[int](), Counter[int]()
    rights: dict[int, list[int]] = {}
    lefts: dict[int, list[int]] = {}
    for (left, right), there in sorted(edges.items()):
        degrees_left[left] += there
        degrees_right[right] += there
        if there >= times:
            rights.setdefault(left, []).append(right)
            lefts.setdefault(right, []).append(left)
    of_left, of_right = dict[int, int](), dict[int, int]()
    urgent = {node for node, degree in degrees_left.items() if degree > colours - times}
    if not all(_covered(node, rights, of_left, of_right, urgent, set()) for node in sorted(urgent)):
        return None
    urgent = {node for node, degree in degrees_right.items() if degree > colours - times}
    for node in sorted(urgent):
        if node not in of_right and not _covered(node, lefts, of_right, of_left, urgent, set()):
            return None
    return tuple(sorted(of_left.items()))


def _covered(
    node: int,
    near: Mapping[int, list[int]],
    mates: dict[int, int],
    opposite: dict[int, int],
    urgent: Set[int],
    seen: set[int],
) -> bool:
    """Find ``node`` a mate; what has that already finds another, or does without if it is not urgent.

    Nodes on the opposite side keep a mate once they have one.
    """
    for other in near.get(node, ()):
        if other in seen:
            continue
        seen.add(other)
        before = opposite.get(other)
        if before is not None:
            if before in urgent and not _covered(before, near, mates, opposite, urgent, seen):
                continue
            if mates[before] == other:
                del mates[before]
        mates[node], opposite[other] = other, node
        return True
    return False
