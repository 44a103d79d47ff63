"""Sixty invented batches, none of which the search was made for."""

from __future__ import annotations

import pytest

from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.verify import cost_faults, faults
from batchleaf.core.cutting.verify_sheet import layout_faults
from cutting.invented import Batch, invented

BATCHES = invented(60, seed=20_261)
SHARE_PROVED = 0.9
STEPS = 8_000
"""Of work, about two seconds."""


@pytest.mark.slow
@pytest.mark.parametrize("batch", BATCHES)
def test_an_invented_batch_is_cut_soundly(batch: Batch) -> None:
    """The plans hold; as many makes as were found can be paid for, and more sheets never cost more."""
    most = most_makes(batch.counted)
    assert faults(batch.counted, most) == ()
    for plan in most.plans:
        assert layout_faults(lay_out(plan, batch.counted)) == ()
    from_these = least_cost(batch.counted, most.makes)
    bought = least_cost(batch.bought, most.makes)
    assert cost_faults(batch.counted, from_these) + cost_faults(batch.bought, bought) == ()
    assert from_these.cost is not None
    assert bought.bound is not None
    assert bought.bound <= from_these.cost


@pytest.mark.slow
def test_nine_in_ten_invented_batches_are_proved_within_a_few_thousand_steps() -> None:
    """Of both questions."""
    makes = [most_makes(batch.counted, stop=lambda steps: steps > STEPS) for batch in BATCHES]
    costs = [least_cost(batch.bought, batch.makes, stop=lambda steps: steps > STEPS) for batch in BATCHES]
    assert sum(plan.proved for plan in makes) >= SHARE_PROVED * len(BATCHES)
    assert sum(plan.proved for plan in costs) >= SHARE_PROVED * len(BATCHES)
