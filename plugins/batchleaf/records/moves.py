"""Old addresses of batches that were renamed: each leads to one batch, and no batch lives there."""

from __future__ import annotations

from collections.abc import Sequence

from batchleaf.facts import Project
from batchleaf.records.report import Report


def check_moves(projects: Sequence[Project], report: Report) -> None:
    """Report an old address that is somebody's own, or that two batches claim."""
    living = {project.slug for project in projects}
    claimed: dict[str, str] = {}
    for project in sorted(projects, key=lambda project: project.slug):
        for old in project.was:
            if old in living:
                report.error(
                    project.place, f"“{old}” is where a batch lives now; it cannot be an old address"
                )
            elif old in claimed:
                report.error(
                    project.place, f"“{old}” leads to “{claimed[old]}” already; it cannot lead here too"
                )
            claimed[old] = project.slug
