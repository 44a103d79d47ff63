"""No plan is shown that does not hold when it is looked over."""

from __future__ import annotations

from dataclasses import replace

import pytest

from batchleaf.cli import main
from batchleaf.core.batch_cutting import PLANNER, Planner, checked
from batchleaf.core.cutting import answer
from batchleaf.core.cutting.as_text import Plan
from batchleaf.facts.jobs import Job
from cutting.brute import tiny_job

WRONG = "the plan that was found did not hold when it was checked"


def twice(plans: Planner) -> Planner:
    """A planner that cuts every sheet twice as often as there are."""
    return Planner(
        lambda job: _doubled(plans.most(job)), lambda job, makes: _doubled(plans.cheapest(job, makes))
    )


def _doubled(plan: Plan) -> Plan:
    return replace(plan, plans=tuple(replace(one, times=one.times * 9) for one in plan.plans))


def sound_job() -> Job:
    """A job of which something can be made."""
    return next(job for job in map(tiny_job, range(50)) if PLANNER.most(job).makes)


def test_a_sound_plan_passes() -> None:
    """As it is."""
    job = sound_job()
    assert PLANNER.most(job).plans
    assert checked(PLANNER).most(job) == PLANNER.most(job)
    assert checked(PLANNER).cheapest(job, 1) == PLANNER.cheapest(job, 1)


def test_a_wrong_plan_is_not_shown() -> None:
    """Its place is taken by none, and the reason says so; what is known of the most stays."""
    job = sound_job()
    most, least = checked(twice(PLANNER)).most(job), checked(twice(PLANNER)).cheapest(job, 1)
    assert (most.plans, most.makes, most.reason) == ((), 0, WRONG)
    assert most.bound == PLANNER.most(job).bound
    assert (least.plans, least.cost, least.reason) == ((), None, WRONG)


@pytest.mark.parametrize(
    ("checks", "job"),
    [
        ("faults", "5 x 7 from 12 x 12"),
        ("cost_faults", "5 of 5 x 7 from 12 x 12"),
    ],
)
def test_the_command_shows_none_either(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], checks: str, job: str
) -> None:
    """It says what was wrong, and ends as where there is no answer."""
    monkeypatch.setattr(answer, checks, lambda *_: ("parts A and A overlap",))
    assert main(["cut", job, "--json"]) == 1
    said = capsys.readouterr()
    assert (said.out, said.err) == ("", f"{WRONG.capitalize()}: parts A and A overlap.\n")
