"""Sets as they are dealt: each keeps its rule, and no part is used twice."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.collate.most_sets import most_sets
from batchleaf.core.collate.question import Group
from batchleaf.core.collate.sets import dealt
from collate.groups import group, groups, keeps, used


@settings(max_examples=300, deadline=None)
@given(groups(), st.data())
def test_every_set_keeps_its_rule_and_no_part_is_used_twice(one: Group, data: st.DataObject) -> None:
    """As many sets as are asked for, up to the most; each has all its parts, of what was cut."""
    sets = data.draw(st.integers(0, most_sets(one)))
    found = dealt(one, sets)
    assert sum(alike.times for alike in found) == sets
    for alike in found:
        assert {letter: len(some) for letter, some in alike.papers.items()} == {
            k.letter: k.each for k in one.kinds
        }
        assert keeps(one, alike.papers)
    for (letter, paper), count in used(found).items():
        assert count <= next(k for k in one.kinds if k.letter == letter).cut[paper]


@settings(max_examples=200, deadline=None)
@given(groups())
def test_a_paper_comes_in_one_set_as_often_as_in_the_next_or_once_more(one: Group) -> None:
    """Also where it may come several times."""
    found = dealt(one, most_sets(one))
    if one.alike or not found:
        return
    of_sets = [
        Counter(one.face(k, paper) for k in one.kinds for paper in alike.papers[k.letter]) for alike in found
    ]
    for face in {face for counts in of_sets for face in counts}:
        counts = [some[face] for some in of_sets]
        assert max(counts) - min(counts) <= 1


@settings(max_examples=100, deadline=None)
@given(groups())
def test_equal_questions_are_dealt_equally(one: Group) -> None:
    """There is no chance in it."""
    assert dealt(one, most_sets(one)) == dealt(one, most_sets(one))


def in_short(one: Group, sets: int) -> list[tuple[int, str]]:
    """How many sets have which papers."""
    return [
        (alike.times, " ".join(paper.supply for some in alike.papers.values() for paper in some))
        for alike in dealt(one, sets)
    ]


def test_four_squares_from_three_papers() -> None:
    """Eight of each for six cards: all three in each, and each of them twice in two."""
    assert in_short(group([8, 8, 8], each=4, most=2), 6) == [
        (2, "p1 p1 p2 p3"),
        (2, "p1 p2 p2 p3"),
        (2, "p1 p2 p3 p3"),
    ]


def test_four_squares_from_two_papers_are_all_alike() -> None:
    """Two of each in every card."""
    assert in_short(group([16, 16], each=4, most=2), 8) == [(8, "p1 p1 p2 p2")]


def test_five_papers_for_four_panels_leave_out_each_in_turn() -> None:
    """Eight of each for ten cards: two of the cards do without it."""
    assert in_short(group([8] * 5, each=4), 10) == [
        (2, "p1 p2 p3 p4"),
        (2, "p1 p2 p3 p5"),
        (2, "p1 p2 p4 p5"),
        (2, "p1 p3 p4 p5"),
        (2, "p2 p3 p4 p5"),
    ]
