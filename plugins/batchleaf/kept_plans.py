"""Plans that were worked out before, kept beside the archive.

A plan depends on its job, on how long is searched, and on the planner itself: its own code and
the solver's version are part of the key, so that a new planner finds nothing of the old one.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from typing import Final

from batchleaf.core.batch_cutting import COST_STEPS, MOST_STEPS, Planner
from batchleaf.core.cutting.as_text import Plan, job_text, plan_text, read_cheapest, read_most
from batchleaf.core.cutting.plan import CostPlan, CuttingPlan
from batchleaf.facts.jobs import Job
from batchleaf.store import Store, key_of

SOLVERS: Final = ("highspy", "numpy")


def keeping(planner: Planner, store: Store, asks: str = "least cost") -> Planner:
    """``planner``, which looks into ``store`` first and keeps there what it works out.

    ``asks`` tells planners apart that answer one question in different ways.
    """

    def most(job: Job) -> CuttingPlan:
        return _kept(store, f"most {MOST_STEPS}", job, read_most, lambda: planner.most(job))

    def cheapest(job: Job, makes: int) -> CostPlan:
        question = f"{asks} of {makes} {COST_STEPS}"
        return _kept(store, question, job, read_cheapest, lambda: planner.cheapest(job, makes))

    return Planner(most, cheapest)


def _kept(
    store: Store, question: str, job: Job, read: Callable[[str], Plan], work_out: Callable[[], Plan]
) -> Plan:
    key = key_of(question.encode(), job_text(job).encode(), _engine())
    found = store.find(key)
    if found is not None:
        return read(found.read_text(encoding="ascii"))
    plan = work_out()
    store.put(key, plan_text(plan).encode("ascii"))
    return plan


@cache
def _engine() -> bytes:
    """The planner's code and its solvers, in a few letters."""
    modules = (one for one in files("batchleaf.core.cutting").iterdir() if one.name.endswith(".py"))
    code = sorted((one.name, one.read_bytes()) for one in modules)
    versions = [f"{name} {version(name)}".encode() for name in SOLVERS]
    return key_of(
        *(piece for name, content in code for piece in (name.encode(), content)), *versions
    ).encode()
