"""Where finished makes are."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cost import Cost
from batchleaf.core.finished import Finished, finished_of, together
from batchleaf.facts import Project, Went, Whereabouts
from core.drawers import batch

WAYS = st.builds(
    lambda count, where, value: Went(count, where, value if where is Whereabouts.SOLD else None),
    st.integers(1, 30),
    st.sampled_from(list(Whereabouts)),
    st.none() | st.integers(0, 10_000),
)


def finished(*went: Went, of: int) -> Project:
    """A batch of which ``of`` are finished, and these went somewhere."""
    return replace(batch(1, finished=of), went=went)


@st.composite
def batches(draw: st.DrawFn) -> Project:
    """Any batch whose lines do not say more than was finished."""
    went = draw(st.lists(WAYS, max_size=6))
    return finished(*went, of=sum(one.count for one in went) + draw(st.integers(0, 20)))


@given(batches())
def test_the_parts_sum_to_all_that_were_finished(project: Project) -> None:
    """Every way and those that are not told, none of them below nothing."""
    where = finished_of(project)
    assert set(where.counts) == set(Whereabouts)
    assert sum(where.counts.values()) + where.not_told == where.finished == project.finished
    assert where.not_told >= 0
    assert where.told == sum(one.count for one in project.went)


@given(batches())
def test_what_was_brought_in_is_the_sum_of_what_is_known(project: Project) -> None:
    """It is known wholly where every line of what was sold has a price."""
    sold = [one for one in project.went if one.where is Whereabouts.SOLD]
    brought = finished_of(project).brought
    assert brought.known == sum(one.value or 0 for one in sold)
    assert brought.complete == all(one.value is not None for one in sold)


@given(st.lists(batches(), max_size=5))
def test_all_batches_together_are_their_sum(projects: list[Project]) -> None:
    """Count by count, in whatever order they come."""
    each = [finished_of(project) for project in projects]
    total = together(each)
    assert total == together(reversed(each))
    assert total.finished == sum(one.finished for one in each)
    for where in Whereabouts:
        assert total.counts[where] == sum(one.counts[where] for one in each)
    assert (total.told, total.not_told) == (sum(o.told for o in each), sum(o.not_told for o in each))


def test_by_hand() -> None:
    """Eight: five sold for 17.50, two kept, and of one nobody says where it is."""
    went = (Went(5, Whereabouts.SOLD, 17_50), Went(2, Whereabouts.KEPT))
    counts = dict.fromkeys(Whereabouts, 0) | {Whereabouts.SOLD: 5, Whereabouts.KEPT: 2}
    assert finished_of(finished(*went, of=8)) == Finished(8, counts, Cost(17_50))
