"""What one set more would take."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from batchleaf.core.collate.missing import missing
from batchleaf.core.collate.most_sets import most_sets
from batchleaf.core.collate.question import Group, Paper
from collate.groups import group, groups, kind

Additions = Mapping[tuple[str, Paper], int]


def with_more(one: Group, more: Additions) -> Group:
    """The group with more parts cut."""
    kinds = (
        replace(k, cut={paper: cut + more.get((k.letter, paper), 0) for paper, cut in k.cut.items()})
        for k in one.kinds
    )
    return replace(one, kinds=tuple(kinds))


def additions(one: Group, parts: int) -> Iterator[dict[tuple[str, Paper], int]]:
    """Every way to cut so many parts more."""
    spots = [(k.letter, paper) for k in one.kinds for paper in k.cut]

    def some(at: int, left: int) -> Iterator[dict[tuple[str, Paper], int]]:
        if at == len(spots) - 1:
            yield {spots[at]: left}
            return
        for here in range(left + 1):
            yield from ({spots[at]: here} | rest for rest in some(at + 1, left - here))

    return some(0, parts)


@settings(max_examples=150, deadline=None)
@given(groups(largest=3, kinds=2, of=3))
def test_fewer_parts_would_not_give_one_set_more(one: Group) -> None:
    """With what is missing there is one more; with one part less, wherever it is from, there is not."""
    sets = most_sets(one) + 1
    found = missing(one, sets)
    if found is None:
        plenty = {(k.letter, paper): 99 for k in one.kinds for paper in k.cut}
        assert most_sets(with_more(one, plenty)) < sets
        return
    count = sum(some.count for some in found)
    assert count > 0
    assert all(most_sets(with_more(one, more)) < sets for more in additions(one, count - 1))
    first = {(some.letter, some.papers[0]): some.count for some in found}
    assert most_sets(with_more(one, first)) >= sets


@settings(max_examples=150, deadline=None)
@given(groups(largest=3, kinds=2, of=3), st.data())
def test_any_of_the_papers_that_are_told_will_do(one: Group, data: st.DataObject) -> None:
    """Where several are, the parts may come from any of them, and also some from each."""
    sets = most_sets(one) + 1
    found = missing(one, sets) or ()
    if one.alike or len(found) != 1:
        return
    ((letter, count, papers),) = ((some.letter, some.count, some.papers) for some in found)
    chosen = data.draw(st.lists(st.sampled_from(papers), min_size=count, max_size=count))
    more = {(letter, paper): chosen.count(paper) for paper in papers}
    assert most_sets(with_more(one, more)) >= sets
    others = [paper for k in one.kinds if k.letter == letter for paper in k.cut if paper not in papers]
    assert all(most_sets(with_more(one, {(letter, paper): count})) < sets for paper in others)


def test_nothing_is_missing_where_there_is_enough() -> None:
    """Of a rule that gives more sets than another."""
    assert missing(group([3, 3]), 6) == ()
    assert missing(Group((kind("B", [3, 3]),), 0), 6) == ()


def in_short(one: Group, sets: int) -> list[str]:
    """``2 C of p1 or p2``."""
    return [
        f"{some.count} {some.letter} of {' or '.join(paper.supply for paper in some.papers)}"
        for some in missing(one, sets) or ()
    ]


@pytest.mark.parametrize(
    ("one", "sets", "told"),
    [
        (group([8, 8, 8]), 25, ["1 B of p1 or p2 or p3"]),
        (group([16, 16], each=4, most=2), 9, ["2 B of p1", "2 B of p2"]),
        (group([8, 8, 8], each=4, most=2), 7, ["4 B of p1 or p2 or p3"]),
        (group([8] * 5, each=4), 11, ["1 B of p1", "1 B of p2", "1 B of p3", "1 B of p4"]),
        (group([5, 1], [5, 1]), 3, ["1 C of p2"]),
        (Group((kind("B", [10, 11], 2), kind("C", [5, 5])), 0), 11, ["1 B of p2", "1 C of p2"]),
    ],
)
def test_what_is_missing_in_plain_cases(one: Group, sets: int, told: list[str]) -> None:
    """Any paper, each of both, any again, one of each of several; of a match what it lacks."""
    assert in_short(one, sets) == told


def test_more_parts_do_not_help_where_papers_are_too_few() -> None:
    """Three in a make and two papers; nor where kinds that are to match have no paper in common."""
    assert missing(group([9, 9], each=3), 1) is None
    assert missing(Group((kind("B", [3, 0]), kind("C", [0, 3])), 0), 1) is None
