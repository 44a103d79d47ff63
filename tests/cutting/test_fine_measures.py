"""Measures so fine that no rule shows them: the answer is the same, and comes as soon."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.core.cutting.grid import BITS, MOST_SUMS, sums, work_ahead
from batchleaf.core.cutting.integers import Shape, Sheet
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.verify import faults
from batchleaf.facts.jobs import Job, PartKind, Stock
from batchleaf.measure.lengths import Unit, parse_size
from cutting.jobs import mm, one_stock, part
from waiting import soon

HAIR = Fraction(1, 999_983)
"""Of a millimetre, by a prime, so that no other measure is a multiple of it."""


@given(st.integers(1, 120), st.sets(st.integers(3, 60), max_size=5))
def test_sums_in_a_fine_unit_are_the_same_sums(length: int, sizes: set[int]) -> None:
    """Measured in a millionth, every sum is a million times as many units."""
    fine = sums(length * BITS + BITS // 2, [size * BITS for size in sizes])
    assert fine == tuple(at * BITS for at in sums(length, sizes))


def test_of_very_many_sums_no_whole_grid_is_made() -> None:
    """Every number of units from 1 on is a sum of 2 and 3."""
    shapes = tuple(Shape(0, turned, 2 + turned, 3 - turned) for turned in (False, True))
    assert work_ahead(Sheet(10 * BITS, 10 * BITS, shapes)) == MOST_SUMS**3


@pytest.mark.parametrize("parts", [((44, 70),), ((44, 70), (30, 12)), ((90, 40), (41, 17), (13, 29))])
def test_a_hair_changes_nothing(parts: tuple[tuple[int, int], ...]) -> None:
    """Parts of whole millimetres gain nothing from less than one."""
    kinds = [part(name, mm(*sides)) for name, sides in zip("ABC", parts, strict=False)]
    one, other = (
        most_makes(one_stock(size, 1, *kinds), stop=lambda steps: steps > 300)
        for size in (mm(210, 297), mm(210 + HAIR, 297 + 2 * HAIR))
    )
    assert (one.makes, one.bound) == (other.makes, other.bound)


@pytest.mark.parametrize(
    "texts",
    [
        ("12.345678 x 5", "10 x 20", "10 x 10"),
        ("4.330709 x 6.692913 in", "3.937008 x 5.511811 in", "1.181102 x 0.787402 in"),
        tuple(f"{20 + at} 1/{97 + at} x {17 + at} 1/{89 + at}" for at in range(9)),
    ],
    ids=["millionths", "inches from a converter", "odd fractions"],
)
def test_an_odd_measure_takes_no_longer(texts: tuple[str, ...]) -> None:
    """A figure copied with all its decimals, and fractions whose common unit is beyond 64 bits."""
    kinds = tuple(PartKind(text, parse_size(text, Unit.MM), 1) for text in texts)
    job = Job((Stock("card", mm(210, 297), 1, Fraction(1)),), kinds)
    with soon():
        plan = most_makes(job, stop=lambda steps: steps > 20)
    assert plan.makes >= 1
    assert faults(job, plan) == ()
