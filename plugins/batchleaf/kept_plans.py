"""Plans and counts of sheets that were worked out before, kept beside the archive.

An answer depends on its job, on how long is searched, and on the planner itself: its own code and
the solver's version are part of the key, so that a new planner finds nothing of the old one.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from typing import Final, TypeVar

from batchleaf.core.batch_cutting import COST_STEPS, MOST_STEPS, Planner
from batchleaf.core.cutting.as_text import (
    job_text,
    least_text,
    one_sheet_text,
    plan_text,
    read_cheapest,
    read_least,
    read_most,
    read_one_sheet,
)
from batchleaf.core.cutting.from_one_sheet import FromOneSheet, OneSize
from batchleaf.core.cutting.plan import CostPlan, CuttingPlan, Least
from batchleaf.core.sheets_needed import Counting
from batchleaf.facts.jobs import Job
from batchleaf.store import Store, key_of

Answer = TypeVar("Answer")

PLANS: Final = "plans"
"""The part of the store for plans and counts."""
SOLVERS: Final = ("highspy", "numpy")


def keeping(planner: Planner, store: Store) -> Planner:
    """``planner``, which looks into ``store`` first and keeps there what it works out."""
    plans = store.part(PLANS)

    def most(job: Job) -> CuttingPlan:
        return _kept(plans, f"most {MOST_STEPS}", job, plan_text, read_most, lambda: planner.most(job))

    def cheapest(job: Job, makes: int) -> CostPlan:
        question = f"least cost of {makes} {COST_STEPS}"
        return _kept(plans, question, job, plan_text, read_cheapest, lambda: planner.cheapest(job, makes))

    def of_one_size(asked: OneSize) -> FromOneSheet:
        question = f"from one sheet {asked}"
        return _kept_as(plans, question, one_sheet_text, read_one_sheet, lambda: planner.of_one_size(asked))

    return Planner(most, cheapest, of_one_size)


def keeping_counts(count: Counting, store: Store) -> Counting:
    """The same for the fewest sheets."""
    plans = store.part(PLANS)

    def counted(job: Job) -> Least:
        return _kept(plans, f"fewest sheets {COST_STEPS}", job, least_text, read_least, lambda: count(job))

    return counted


def _kept(
    store: Store,
    question: str,
    job: Job,
    text: Callable[[Answer], str],
    read: Callable[[str], Answer],
    work_out: Callable[[], Answer],
) -> Answer:
    return _kept_as(store, f"{question}\n{job_text(job)}", text, read, work_out)


def _kept_as(
    store: Store,
    question: str,
    text: Callable[[Answer], str],
    read: Callable[[str], Answer],
    work_out: Callable[[], Answer],
) -> Answer:
    key = key_of(question.encode(), _engine())
    found = store.read(key)
    if found is not None:
        return read(found.decode("ascii"))
    answer = work_out()
    store.put(key, text(answer).encode("ascii"))
    return answer


@cache
def _engine() -> bytes:
    """The planner's code and its solvers, in a few letters."""
    modules = (one for one in files("batchleaf.core.cutting").iterdir() if one.name.endswith(".py"))
    code = sorted((one.name, one.read_bytes()) for one in modules)
    versions = [f"{name} {version(name)}".encode() for name in SOLVERS]
    return key_of(
        *(piece for name, content in code for piece in (name.encode(), content)), *versions
    ).encode()
