"""Colours for the edges of a bipartite graph, one by one, each of them as often as the next.

The edges of two colours are paths and rings; where the two change places along one of them, no
colour meets itself. So a colour is made free where an edge is to get it, and one that comes too
often is made rarer (Bondy and Murty, Graph Theory with Applications (1976), theorem 6.3).
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence

Edge = tuple[Hashable, Hashable]


def balanced_colours(edges: Sequence[Edge], colours: int) -> list[int]:
    """The colour of each edge, from 0; no node has more than ``colours`` edges."""
    graph = _Coloured(edges)
    for edge in range(len(edges)):
        graph.colour(edge, colours)
    while graph.swap_the_most_frequent(colours):
        pass
    return graph.colours


class _Coloured:
    """Knows which edge of each colour every node has."""

    def __init__(self, edges: Sequence[Edge]) -> None:
        self._edges = edges
        self._at: dict[Hashable, dict[int, int]] = {node: {} for edge in edges for node in edge}
        self.colours = [-1] * len(edges)

    def colour(self, edge: int, colours: int) -> None:
        """Give an edge the first colour that is free at its one end, and is made so at the other."""
        here, there = self._edges[edge]
        mine, other = (next(c for c in range(colours) if c not in self._at[node]) for node in (here, there))
        # Where this colour comes in on the near side of the graph, the path never leads back to ``here``.
        self._swap(self._path(there, mine, other), mine, other)
        self._set(edge, mine)

    def swap_the_most_frequent(self, colours: int) -> bool:
        """Make the most frequent colour rarer and the rarest more frequent by one, if they are two apart."""
        counts = [self.colours.count(colour) for colour in range(colours)]
        most, least = counts.index(max(counts)), counts.index(min(counts))
        if counts[most] - counts[least] < 2:
            return False
        starts = (node for node, mine in self._at.items() if most in mine and least not in mine)
        paths = (self._path(node, most, least) for node in starts)
        self._swap(next(path for path in paths if len(path) % 2), most, least)
        return True

    def _path(self, node: Hashable, first: int, second: int) -> list[int]:
        """The edges of two colours by turns, from a node that has none of the second."""
        path: list[int] = []
        while (edge := self._at[node].get(first)) is not None:
            path.append(edge)
            ends = self._edges[edge]
            node = ends[1] if node == ends[0] else ends[0]
            first, second = second, first
        return path

    def _swap(self, path: Sequence[int], one: int, other: int) -> None:
        before = [self.colours[edge] for edge in path]
        for edge, colour in zip(path, before, strict=True):
            for node in self._edges[edge]:
                del self._at[node][colour]
            self.colours[edge] = -1
        for edge, colour in zip(path, before, strict=True):
            self._set(edge, other if colour == one else one)

    def _set(self, edge: int, colour: int) -> None:
        for node in self._edges[edge]:
            self._at[node][colour] = edge
        self.colours[edge] = colour
