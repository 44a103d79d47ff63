"""Which total costs there can be."""

from __future__ import annotations

import pytest

from batchleaf.core.cutting.choose import Terms
from batchleaf.core.cutting.totals import Totals

TERMS = Terms((), {}, {0: None, 1: 2}, {0: 12, 1: 5})


@pytest.mark.parametrize(("cost", "total"), [(0, 0), (1, 5), (6, 10), (11, 12), (13, 17), (18, 22), (23, 24)])
def test_the_next_total_that_can_be_paid(cost: int, total: int) -> None:
    """Sheets at 12 without limit and two scraps at 5 make 0 5 10 12 17 22 24 and so on."""
    assert Totals(TERMS, 100).at_least(cost) == total


def test_costs_with_a_common_step_make_multiples_of_it() -> None:
    """Sheets at 12 and 40 cents: 41 is not to be had, 44 would need a sheet at 4, 48 is the next."""
    terms = Terms((), {}, {0: None, 1: None}, {0: 12, 1: 40})
    assert Totals(terms, 200).at_least(41) == 48
