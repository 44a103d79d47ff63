"""The order of bench work: it can be followed, and no other takes a tool in hand less often."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import groupby, permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.bench import order
from batchleaf.core.bench.order import FIRST, fewest_runs, in_order, must_precede
from batchleaf.facts import Moment, Work, WorkKind

Before = tuple[frozenset[int], ...]


@st.composite
def rows(draw: st.DrawFn, most: int = 6, tools: str = "abc") -> tuple[tuple[str, ...], Before]:
    """Works with a tool each; a work comes after some of those with lower numbers."""
    count = draw(st.integers(1, most))
    chosen = tuple(draw(st.lists(st.sampled_from(tools), min_size=count, max_size=count)))
    before = tuple(
        frozenset(draw(st.sets(st.integers(0, i - 1), max_size=2))) if i else frozenset()
        for i in range(count)
    )
    return chosen, before


@st.composite
def works(draw: st.DrawFn) -> tuple[Work, ...]:
    """Works of any kind on some of four parts."""
    one = st.builds(
        Work,
        kind=st.sampled_from(list(WorkKind)),
        letters=st.sets(st.sampled_from("ABCD"), min_size=1).map(lambda letters: tuple(sorted(letters))),
        tool=st.sampled_from(["", "punch", "board", "press"]),
        moment=st.sampled_from(list(Moment)),
    )
    return tuple(draw(st.lists(one, max_size=9)))


def changes(tools: Sequence[str], row: Sequence[int]) -> int:
    """How often a tool is taken in hand where works are done in this order."""
    return sum(1 for _ in groupby(row, key=lambda i: tools[i]))


def can_follow(row: Sequence[int], before: Before) -> bool:
    """Whether each work comes after those that it has to come after."""
    return all(before[i] <= {*row[:place]} for place, i in enumerate(row))


def fewest_by_trying(tools: Sequence[str], before: Before) -> int:
    """Every order there is."""
    orders = permutations(range(len(tools)))
    return min(changes(tools, row) for row in orders if can_follow(row, before))


@given(rows())
def test_no_order_takes_a_tool_less_often(case: tuple[tuple[str, ...], Before]) -> None:
    """All works are there once, in an order that can be followed; trying all orders finds none better."""
    tools, before = case
    runs = fewest_runs(tools, before)
    row = [i for run in runs for i in run]
    assert sorted(row) == list(range(len(tools)))
    assert can_follow(row, before)
    assert len(runs) == changes(tools, row) == fewest_by_trying(tools, before)


@given(rows(most=30, tools="abcdefghijklmnop"))
def test_an_order_of_many_tools_can_be_followed(case: tuple[tuple[str, ...], Before]) -> None:
    """It is found step by step, and may take a tool once more; each run is of one tool."""
    tools, before = case
    runs = fewest_runs(tools, before)
    row = [i for run in runs for i in run]
    assert sorted(row) == list(range(len(tools)))
    assert can_follow(row, before)
    assert all(len({tools[i] for i in run}) == 1 for run in runs)


@given(rows())
def test_where_there_are_too_many_ways_a_step_at_a_time_will_do(
    case: tuple[tuple[str, ...], Before],
) -> None:
    """It can be followed as well, and takes a tool no less often than the shortest way."""
    tools, before = case
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(order, "MOST_STATES", 0)
        runs = fewest_runs(tools, before)
    row = [i for run in runs for i in run]
    assert sorted(row) == list(range(len(tools)))
    assert can_follow(row, before)
    assert len(runs) >= len(fewest_runs(tools, before))


def test_step_by_step_a_tool_is_first_taken_where_it_is_then_done_with() -> None:
    """Two works of a can be done at once, and a third after that of b: b first, so that a is taken once."""
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(order, "MOST_TOOLS", 0)
        runs = fewest_runs("aaba", [frozenset(), frozenset(), frozenset(), frozenset({2})])
    assert runs == ((2,), (0, 1, 3))


@given(works())
def test_works_are_done_by_moment_and_what_must_come_first_comes_first(some: tuple[Work, ...]) -> None:
    """Nothing is lost; cutting lies between the moments; on one part the usual order holds within each."""
    runs = in_order(some)
    row = [work for run in runs for work in run]
    assert sorted(map(repr, row)) == sorted(map(repr, some))
    moments = [list(Moment).index(work.moment) for work in row]
    assert moments == sorted(moments)
    for i, later in enumerate(row):
        assert not any(must_precede(later, earlier) for earlier in row[:i] if earlier.moment is later.moment)


@given(works())
def test_the_order_written_changes_no_number_of_runs(some: tuple[Work, ...]) -> None:
    """A record with its lines in another order takes a tool as often."""
    assert len(in_order(some)) == len(in_order(some[::-1]))


def test_what_comes_first_is_no_circle() -> None:
    """Works can always be put in order: each pair follows one order of all kinds."""
    usual = list(WorkKind)
    assert all(usual.index(first) < usual.index(later) for first, later in FIRST)


def test_a_board_is_not_taken_twice_for_two_parts() -> None:
    """Both are scored before either is folded, though the folds are by hand."""
    score = Work(WorkKind.SCORE, ("A",), "board", Moment.AFTER)
    fold = replace(score, kind=WorkKind.FOLD, tool="")
    other = [replace(work, letters=("L",)) for work in (score, fold)]
    runs = in_order((score, fold, *other))
    assert [[(work.kind.value, work.letters) for work in run] for run in runs] == [
        [("score", ("A",)), ("score", ("L",))],
        [("fold", ("A",)), ("fold", ("L",))],
    ]
