"""A search that is ended at any step answers honestly."""

from __future__ import annotations

import pytest

from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.verify import cost_faults, faults
from cutting.brute import brute_least_cost, brute_most_makes, tiny_job


@pytest.mark.parametrize("limit", [0, 1, 2, 5, 12, 40])
@pytest.mark.parametrize("seed", range(12))
def test_whenever_it_is_stopped_the_bound_holds_and_the_plan_is_sound(seed: int, limit: int) -> None:
    """Against brute force: no bound is crossed by the true answer, and no answer is better than it."""
    job = tiny_job(seed)
    true_most = brute_most_makes(job)
    most = most_makes(job, stop=lambda steps: steps > limit)
    assert most.makes <= true_most <= most.bound
    assert faults(job, most) == ()
    if not true_most:
        return
    least = brute_least_cost(job, true_most)
    cheapest = least_cost(job, true_most, stop=lambda steps: steps > limit)
    assert least is not None
    assert cost_faults(job, cheapest) == ()
    assert cheapest.bound is not None
    assert cheapest.bound <= least
    assert cheapest.cost is None or cheapest.cost >= least
