"""Records to figures: the way that the site and the commands share."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from batchleaf.core.batch_cutting import PLANNER, Planner
from batchleaf.core.figures import Figures, work_out
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import Archive, Problem, Settings, Weight
from batchleaf.records.archive import batch_slugs, read_archive


@dataclass(frozen=True, slots=True)
class Worked:
    """``figures`` are there only where no problem is an error.

    ``slugs``: all batches, also those whose records cannot be read.
    """

    archive: Archive
    figures: Figures | None
    problems: tuple[Problem, ...]
    slugs: tuple[str, ...]

    @property
    def errors(self) -> tuple[Problem, ...]:
        """What has to be mended before pages can be made."""
        return tuple(problem for problem in self.problems if problem.weight is Weight.ERROR)

    @property
    def notices(self) -> tuple[Problem, ...]:
        """What the maker may want to know."""
        return tuple(problem for problem in self.problems if problem.weight is Weight.NOTICE)


def read_and_work_out(
    projects: Path, settings: Settings, planner: Planner = PLANNER, remembered: Remembering = afresh
) -> Worked:
    """Read all records; work out all figures if every record can be read."""
    reading, slugs = read_archive(projects, settings), batch_slugs(projects)
    if any(problem.weight is Weight.ERROR for problem in reading.problems):
        return Worked(reading.archive, None, reading.problems, slugs)
    figures = work_out(reading.archive, settings, planner, remembered)
    found = (reading.located(problem) for problem in figures.problems)
    problems = tuple(sorted((*reading.problems, *found)))
    sound = all(problem.weight is not Weight.ERROR for problem in problems)
    return Worked(reading.archive, figures if sound else None, problems, slugs)
