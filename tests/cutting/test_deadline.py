"""A search that ends by the clock of whoever asks."""

from __future__ import annotations

import os
import random
import subprocess
import sys
from fractions import Fraction
from itertools import count

import pytest

from batchleaf.core.cutting.best_use import best_use
from batchleaf.core.cutting.effort import Effort, within_seconds
from batchleaf.core.cutting.least_cost import least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.verify import cost_faults, faults, use_faults
from batchleaf.facts.jobs import Job, Offer, PartKind, Stock
from cutting.brute import brute_least_cost, brute_most_makes, tiny_job
from cutting.jobs import mm
from cutting.work_clock import within_a_second


class Hours:
    """A clock that goes on by a fixed number of seconds whenever somebody looks at it."""

    def __init__(self, tick: float) -> None:
        self._ticks = count()
        self._tick = tick

    def __call__(self) -> float:
        """The time by now."""
        return next(self._ticks) * self._tick


@pytest.mark.parametrize("tick", [0.01, 0.1, 0.4, 3.0])
@pytest.mark.parametrize("seed", range(8))
def test_whenever_the_clock_ends_it_the_answer_is_honest(seed: int, tick: float) -> None:
    """Every answer is sound, and none of its bounds is crossed by what brute force finds."""
    job = tiny_job(seed)
    true_most = brute_most_makes(job)
    most = most_makes(job, stop=within_seconds(1, Hours(tick)))
    assert faults(job, most) == ()
    assert most.makes <= true_most <= most.bound
    if true_most:
        cheapest = least_cost(job, true_most, stop=within_seconds(1, Hours(tick)))
        least = brute_least_cost(job, true_most)
        assert cost_faults(job, cheapest) == ()
        assert least is not None
        assert cheapest.bound is not None
        assert cheapest.bound <= least


def test_a_deadline_ends_an_effort_for_good() -> None:
    """What is kept for tidying is not for the search, and what is kept for writing is for neither."""
    now = [0.0]
    deadline = within_seconds(10, lambda: now[0])
    effort = Effort(deadline)
    assert effort.step()
    assert effort.seconds_left == pytest.approx(9)
    now[0] = 9.5
    assert not effort.step()
    assert effort.for_tidying(100).seconds_left == pytest.approx(0.2)
    assert not deadline(1_000_000)
    now[0] = 10
    assert deadline(0)
    now[0] = 0
    assert not effort.step()


def test_a_large_piece_of_work_is_not_begun_shortly_before_the_end() -> None:
    """A step is about a quarter of a millisecond: a second has room for three thousand, not for five."""
    effort = Effort(within_seconds(1, lambda: 0.0))
    assert (effort.affords(3_000), effort.affords(5_000)) == (True, False)


def test_no_clock_rules_a_search_that_counts_steps() -> None:
    """Whatever the time: equal jobs, equal answers."""
    effort = Effort(lambda steps: steps > 5)
    assert effort.seconds_left is None
    assert [effort.step(3), effort.step(3), effort.affords()] == [True, False, False]


LATE = 0.5
"""Seconds by which an answer may be late."""


def hard_jobs() -> list[Job]:
    """Many kinds, fine measures, many small parts, many stocks."""
    dice = random.Random(5)

    def parts(many: int, low: int, high: int, unit: Fraction = Fraction(1)) -> tuple[PartKind, ...]:
        sizes = [(dice.randint(low, high) * unit, dice.randint(low, high) * unit) for _ in range(many)]
        return tuple(
            PartKind(f"p{at}", mm(*size), dice.randint(1, 6), dice.random() < 0.6)
            for at, size in enumerate(sizes)
        )

    def stocks(many: int, width: int, height: int) -> tuple[Stock, ...]:
        return tuple(
            Stock(f"s{at}", mm(width - 17 * at, height - 11 * at), dice.randint(3, 40), Fraction(1 + at))
            for at in range(many)
        )

    return [
        Job(stocks(1, 2750, 1220), parts(40, 50, 900)),
        Job(stocks(2, 2750, 1220), parts(12, 30, 400)),
        Job(stocks(3, 500, 500), parts(30, 15, 120)),
        Job(stocks(1, 1000, 1000), parts(20, 10, 60)),
        Job(stocks(9, 400, 400), parts(12, 20, 110)),
        Job(stocks(1, 310, 297), parts(10, 2000, 20_000, Fraction(1, 97)), Fraction(1, 7)),
        Job(stocks(1, 1000, 700), (PartKind("a", mm(10, 7), 300), PartKind("b", mm(9, 13), 500))),
    ]


@pytest.mark.slow
@pytest.mark.parametrize("job", hard_jobs())
def test_a_second_is_a_second(job: Job) -> None:
    """All three questions are answered soundly, and on time by a clock of work."""
    offers = [Offer(part, 1 + at * 37 % 101, 1 + at % 4) for at, part in enumerate(job.parts)]
    most, for_makes = within_a_second(lambda end: most_makes(job, stop=end))
    cheapest, for_cost = within_a_second(lambda end: least_cost(job, 1, stop=end))
    use, for_use = within_a_second(lambda end: best_use(job.stocks[0], offers, kerf=job.kerf, stop=end))
    assert faults(job, most) + cost_faults(job, cheapest) == ()
    assert use_faults(job.stocks[0], offers, use, kerf=job.kerf) == ()
    assert max(for_makes, for_cost, for_use) < 1 + LATE


IN_A_PROCESS = """
from batchleaf.core.cutting.most_makes import most_makes
from cutting.test_deadline import hard_jobs
from cutting.work_clock import within_a_second
print(within_a_second(lambda end: most_makes(hard_jobs()[5], stop=end)))
"""
"""A job for which the solver does much in whole numbers."""


@pytest.mark.slow
def test_the_same_work_is_counted_in_every_process() -> None:
    """Texts have other hashes in each; the answer, and its time by a clock of work, are equal."""
    told = {
        subprocess.run(
            [sys.executable, "-c", IN_A_PROCESS],
            env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path), "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(told) == 1
    assert "CuttingPlan" in told.pop()
