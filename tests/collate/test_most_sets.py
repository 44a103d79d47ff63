"""The most collated sets: published statements, everything tried, and another program's flow."""

from __future__ import annotations

import random
from typing import Any

import pytest
from hypothesis import given, settings

from batchleaf.core.collate.most_sets import fewest_times, most_sets, uses_of
from batchleaf.core.collate.question import Group
from batchleaf.core.collate.sets import dealt
from batchleaf.facts import ShownSide
from collate.groups import LETTERS, by_trying, group, groups, kind


def test_four_papers_cut_alike_give_eight_sets() -> None:
    """Common practice: two of each of four parts from each of four papers, and no paper twice."""
    assert most_sets(group(*[[2] * 4] * 4)) == 8


@pytest.mark.parametrize("there", range(1, 6))
@pytest.mark.parametrize("slots", range(1, 7))
@pytest.mark.parametrize("times", [1, 3])
def test_papers_cut_alike_are_a_latin_square(there: int, slots: int, times: int) -> None:
    """Of each part the same number from each paper: all of it goes into sets if there are papers enough."""
    most = most_sets(group(*[[times] * there] * slots))
    assert (most == there * times) is (slots <= there)


@settings(max_examples=150, deadline=None)
@given(groups(largest=3, kinds=2, of=3))
def test_no_trying_gives_more_sets(one: Group) -> None:
    """Every choice of papers for set after set, whatever the rule and the counts."""
    assert most_sets(one) == by_trying(one)


def test_the_front_and_the_back_of_a_paper_are_two_where_sides_count() -> None:
    """Three fronts and three backs of one paper: a set has one of each, if it may."""
    front, back = kind("B", [3]), kind("C", [3], side=ShownSide.BACK)
    assert most_sets(Group((front, back), 1)) == 0
    assert most_sets(Group((front, back), 1, by_side=True)) == 3


def test_one_part_from_a_paper_that_many_have() -> None:
    """Nine of p1 and one of p2, two in a make: each make needs one of p2, so there is one."""
    assert most_sets(group([9, 1], each=2)) == 1
    assert most_sets(group([9, 1], each=2, most=2)) == 5


def test_sets_that_match_are_counted_paper_by_paper() -> None:
    """Two B and one C of one paper: 5 and 3 give two sets, 4 and 1 one, 1 and 9 none."""
    one = Group((kind("B", [5, 4, 1], each=2), kind("C", [3, 1, 9])), 0)
    assert most_sets(one) == 3
    assert {paper.supply: count for (letter, paper), count in uses_of(one, 3).items() if letter == "B"} == {
        "p1": 4,
        "p2": 2,
    }


def test_a_paper_comes_no_more_often_than_it_must() -> None:
    """Four squares: once from four papers or more, twice from three or two, four times from one."""
    assert [fewest_times([kind("C", [1] * there, each=4)]) for there in (5, 4, 3, 2, 1)] == [1, 1, 2, 2, 4]
    assert fewest_times([kind("B", [1, 1], each=4), kind("C", [1] * 6)]) == 2


@settings(max_examples=60, deadline=None)
@given(groups(largest=3, kinds=2, of=3))
def test_parts_are_taken_from_all_papers_as_evenly_as_can_be(one: Group) -> None:
    """Of all ways to take the parts, none takes more from the least used, nor then from the next."""
    if one.alike or not (sets := most_sets(one)):
        return
    mine = _sorted_totals(one, uses_of(one, sets))
    assert mine == max(_sorted_totals(one, uses) for uses in _all_uses(one, sets))


def _sorted_totals(one: Group, uses: Any) -> list[int]:
    totals = {one.face(k, paper): 0 for k in one.kinds for paper in k.cut}
    for k in one.kinds:
        for paper in k.cut:
            totals[one.face(k, paper)] += uses.get((k.letter, paper), 0)
    return sorted(totals.values())


def _all_uses(one: Group, sets: int) -> list[dict[Any, int]]:
    found: list[dict[Any, int]] = [{}]
    for k in one.kinds:
        of_kind: list[dict[Any, int]] = [{}]
        for paper, cut in k.cut.items():
            of_kind = [some | {(k.letter, paper): n} for some in of_kind for n in range(cut + 1)]
        of_kind = [some for some in of_kind if sum(some.values()) == k.each * sets]
        found = [some | more for some in found for more in of_kind]
    return [some for some in found if max(_sorted_totals(one, some)) <= one.most * sets]


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(400))
def test_it_is_the_flow_that_networkx_finds(seed: int) -> None:
    """So many sets fill the network of that program, and one more does not."""
    networkx = pytest.importorskip("networkx", reason="networkx is not installed")
    dice = random.Random(seed)
    there = dice.randint(1, 12)
    kinds = tuple(
        kind(letter, [dice.randint(0, 30) * (dice.random() < 0.8) for _ in range(there)], dice.randint(1, 3))
        for letter in LETTERS[: dice.randint(1, 8)]
    )
    one = Group(kinds, dice.randint(1, 3))
    most = most_sets(one)
    filled = [_flow_of(networkx, one, sets) == one.slots * sets for sets in (most, most + 1)]
    assert filled == [True, False]


def _flow_of(networkx: Any, one: Group, sets: int) -> int:
    graph = networkx.DiGraph()
    for k in one.kinds:
        graph.add_edge(k.letter, "sink", capacity=k.each * sets)
        for paper, cut in k.cut.items():
            graph.add_edge("source", paper, capacity=one.most * sets)
            graph.add_edge(paper, k.letter, capacity=cut)
    return int(networkx.maximum_flow(graph, "source", "sink")[0]) if "source" in graph else 0


def test_two_hundred_makes_are_all_dealt() -> None:
    """Eight parts from twelve papers, cut unevenly: as many as are counted are laid out."""
    dice = random.Random(7)
    one = group(*([dice.randint(10, 30) for _ in range(12)] for _ in range(8)))
    assert most_sets(one) >= 200
    assert sum(alike.times for alike in dealt(one, 200)) == 200
