"""Two thousand tiny jobs, each question against every way tried."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

import pytest

from batchleaf.core.cutting.best_use import best_use
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.verify import cost_faults, faults, use_faults
from batchleaf.facts.jobs import Job, Offer, PartKind, Stock
from cutting.brute import brute_best_use, brute_least_cost, brute_most_makes
from cutting.jobs import mm

RUNS, JOBS_A_RUN = 40, 50


def small_job(dice: random.Random) -> Job:
    """Up to three sheets of up to three kinds, parts that may turn or not, now and then a kerf.

    One job in six has a part that is too large for every sheet, or only just fits one.
    """
    stocks = tuple(
        Stock(
            f"s{at}",
            mm(dice.randint(2, 7), dice.randint(2, 6)),
            dice.choice([0, 1, 1, 1, 2]),
            Fraction(dice.choice([0, 1, 1, 2, 3, 5]), dice.choice([1, 1, 2])),
            scrap=at > 0,
        )
        for at in range(dice.randint(1, 3))
    )
    largest = 7 if dice.random() < 1 / 6 else 4
    parts = tuple(
        PartKind(
            "ABC"[at],
            mm(dice.randint(1, largest), dice.randint(1, 4)),
            dice.randint(1, 3),
            turns=dice.random() < 0.5,
            sources=(dice.choice(stocks).id,) if dice.random() < 0.15 else (),
        )
        for at in range(dice.randint(1, 3))
    )
    return Job(stocks, parts, Fraction(dice.choice([0, 0, 1])))


@pytest.mark.slow
@pytest.mark.parametrize("run", range(RUNS))
def test_all_three_questions(run: int) -> None:
    """Makes, cost (with counted sheets, for a make too many, and without limit) and use: right and proved."""
    dice = random.Random(90_000 + run)
    for _ in range(JOBS_A_RUN):
        job = small_job(dice)
        most = most_makes(job)
        assert faults(job, most) == ()
        assert (most.makes, most.bound) == (brute_most_makes(job),) * 2
        endless = replace(job, stocks=tuple(replace(stock, have=None) for stock in job.stocks))
        for asked, makes in ((job, most.makes), (job, most.makes + 1), (endless, dice.randint(1, 3))):
            plan = least_cost(asked, makes)
            assert cost_faults(asked, plan) == ()
            assert (plan.cost, plan.proved) == (brute_least_cost(asked, makes), True)
        offers = [Offer(part, dice.randint(1, 12), dice.choice([None, 0, 1, 2, 3])) for part in job.parts]
        use = best_use(job.stocks[0], offers, kerf=job.kerf)
        assert use_faults(job.stocks[0], offers, use, kerf=job.kerf) == ()
        assert (use.worth, use.bound) == (brute_best_use(job, offers),) * 2
