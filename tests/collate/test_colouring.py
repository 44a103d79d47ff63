"""Colours of edges: König's theorem, and colours as often as one another."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.collate.alternating import balanced_colours
from batchleaf.core.collate.colouring import edge_colours

EDGES = st.dictionaries(st.tuples(st.integers(0, 5), st.integers(0, 5)), st.integers(0, 4), max_size=20)


def largest_degree(edges: dict[tuple[int, int], int]) -> int:
    """How many edges the node has that has most."""
    degrees = Counter[tuple[str, int]]()
    for (left, right), times in edges.items():
        degrees.update({("left", left): times, ("right", right): times})
    return max(degrees.values(), default=0)


@settings(max_examples=300, deadline=None)
@given(EDGES, st.integers(0, 2))
def test_as_many_colours_as_the_largest_degree_are_enough(
    edges: dict[tuple[int, int], int], more: int
) -> None:
    """König 1916: every edge has a colour, and no colour meets itself at a node."""
    colours = largest_degree(edges) + more
    found = edge_colours(edges, colours)
    assert sum(times for _, times in found) == colours
    drawn = Counter[tuple[int, int]]()
    for matching, times in found:
        for side in (0, 1):
            nodes = [edge[side] for edge in matching]
            assert len(set(nodes)) == len(nodes)
        drawn.update(dict.fromkeys(matching, times))
    assert +drawn == +Counter(edges)


def test_alike_colours_are_told_together() -> None:
    """Four papers, four parts, five of each from each: four kinds of sets, five of each."""
    edges = {(left, right): 5 for left in range(4) for right in range(4)}
    assert [times for _, times in edge_colours(edges, 20)] == [5] * 4


@settings(max_examples=300, deadline=None)
@given(EDGES, st.integers(0, 3))
def test_each_colour_is_as_often_as_another_or_once_more(
    edges: dict[tuple[int, int], int], more: int
) -> None:
    """Bondy and Murty 1976, theorem 6.3, for any number of colours from the largest degree on."""
    colours = max(1, largest_degree(edges) + more)
    single = [(("left", a), ("right", b)) for (a, b), times in edges.items() for _ in range(times)]
    found = balanced_colours(single, colours)
    for side in (0, 1):
        met = [(edge[side], colour) for edge, colour in zip(single, found, strict=True)]
        assert len(set(met)) == len(met)
    counts = [found.count(colour) for colour in range(colours)]
    assert max(counts) - min(counts) <= 1
