"""Plans kept beside an archive: read again as they were, and worked out anew where they cannot be."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path

import pytest

from batchleaf.core.batch_cutting import PLANNER, Planner
from batchleaf.core.cutting.as_text import (
    job_text,
    least_text,
    plan_text,
    read_cheapest,
    read_least,
    read_most,
)
from batchleaf.core.cutting.least_cost import least_alone, least_cost
from batchleaf.core.cutting.most_makes import most_makes
from batchleaf.core.cutting.plan import (
    Axis,
    CostPlan,
    CuttingPlan,
    Least,
    Leftover,
    Node,
    PartLeaf,
    SheetPlan,
    ThroughCut,
)
from batchleaf.core.sheets_needed import count_sheets
from batchleaf.facts.jobs import Job
from batchleaf.kept_plans import keeping, keeping_counts
from batchleaf.store import Store
from cutting.brute import tiny_job


@pytest.mark.parametrize("seed", range(80))
def test_a_plan_is_read_as_it_was(seed: int) -> None:
    """Of each question, with or without an answer."""
    job = tiny_job(seed)
    most, least, alone = most_makes(job), least_cost(job, 1 + seed % 3), least_alone(job, 1 + seed % 3)
    assert read_least(least_text(alone)) == alone
    assert read_most(plan_text(most)) == most
    assert read_cheapest(plan_text(least)) == least


def test_a_deep_tree_is_read_as_it_was() -> None:
    """A strip of three thousand pieces is as many cuts one in another."""
    tree: Node = PartLeaf("A b", turned=True)
    for _ in range(3_000):
        tree = ThroughCut(Axis.Y, Fraction(127, 10), Leftover(), tree)
    plan = CuttingPlan(1, 2, "a “reason”", (SheetPlan("s", 1, tree),), (("A b", 3),))
    again = read_most(plan_text(plan))
    assert plan_text(again) == plan_text(plan)


def test_different_jobs_are_different_texts() -> None:
    """No two jobs share a key."""
    jobs = {job: job_text(job) for job in map(tiny_job, range(400))}
    assert len(set(jobs.values())) == len(jobs)


@dataclass
class Counting:
    """A planner that counts how often it is asked."""

    asked: list[str] = field(default_factory=list)

    @property
    def planner(self) -> Planner:
        def most(job: Job) -> CuttingPlan:
            self.asked.append("most")
            return PLANNER.most(job)

        def cheapest(job: Job, makes: int) -> CostPlan:
            self.asked.append(f"cheapest {makes}")
            return PLANNER.cheapest(job, makes)

        return Planner(most, cheapest)


def test_what_is_known_is_not_asked_again(tmp_path: Path) -> None:
    """Neither here nor later in the same folder; the least cost of other makes is another question."""
    counting, job = Counting(), tiny_job(3)
    first = keeping(counting.planner, Store(tmp_path))
    plans = (first.most(job), first.cheapest(job, 1), first.cheapest(job, 2))
    later = keeping(counting.planner, Store(tmp_path))
    assert (later.most(job), later.cheapest(job, 1), later.cheapest(job, 2)) == plans
    assert counting.asked == ["most", "cheapest 1", "cheapest 2"]


def test_a_count_that_is_known_is_not_asked_again(tmp_path: Path) -> None:
    """A plan for the same job is no count of its sheets."""
    job, asked = tiny_job(3), []

    def count(job: Job) -> Least:
        asked.append(job)
        return count_sheets(job)

    keeping(PLANNER, Store(tmp_path)).cheapest(job, 1)
    found = [keeping_counts(count, Store(tmp_path))(one) for one in (job, job, tiny_job(4))]
    assert found[0] == found[1] == count_sheets(job)
    assert asked == [job, tiny_job(4)]


def test_what_is_damaged_is_worked_out_anew(tmp_path: Path) -> None:
    """Cut short, or with another letter in it."""
    counting, job = Counting(), tiny_job(3)
    plan = keeping(counting.planner, Store(tmp_path)).most(job)
    (file,) = (path for path in tmp_path.rglob("*") if path.is_file() and path.suffix != ".sha256")
    for damaged in (file.read_bytes()[:-4], file.read_bytes().replace(b"1", b"2"), b""):
        file.write_bytes(damaged)
        assert keeping(counting.planner, Store(tmp_path)).most(job) == plan
    assert counting.asked == ["most"] * 4


ASK = """\
import sys
from pathlib import Path
from batchleaf.core.batch_cutting import PLANNER
from batchleaf.kept_plans import keeping, keeping_counts
from batchleaf.store import Store
from cutting.brute import tiny_job
plan = keeping(PLANNER, Store(Path(sys.argv[1]))).most(tiny_job(3))
print(plan.makes, "highspy" in sys.modules)
"""


def test_the_solver_is_only_read_when_it_is_asked(tmp_path: Path) -> None:
    """A plan that is kept needs none: in the second process the library is not even imported."""
    ask = [sys.executable, "-c", ASK, str(tmp_path / "kept")]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    said = [
        subprocess.run(ask, env=environment, capture_output=True, text=True, check=True).stdout.split()
        for _ in range(2)
    ]
    makes = str(most_makes(tiny_job(3)).makes)
    assert said == [[makes, "True"], [makes, "False"]]
