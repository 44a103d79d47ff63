"""A question to the cutting planner that belongs to no record."""

from __future__ import annotations

import json
import time
from pathlib import Path
from typing import Final

from batchleaf.commands.terminal import FAULTY, refuse
from batchleaf.core.cutting.answer import NoAnswer, answered
from batchleaf.core.cutting.effort import within_seconds
from batchleaf.facts.jobs import AskedJob
from batchleaf.measure.display import NBSP
from batchleaf.measure.errors import MeasureError
from batchleaf.records.job_line import EXAMPLES, read_job_line
from batchleaf.records.jobs import read_job
from batchleaf.telling import told
from batchleaf.views.job_json import job_json
from batchleaf.views.job_lines import job_lines
from batchleaf.views.words import capitalised

SECONDS: Final = 2.0
"""How long is searched where nothing else is said."""


JOB: Final = f"a job file, or a line like “{EXAMPLES[0]}” or “{EXAMPLES[1]}”"
"""What may be asked."""


class WrongJobError(ValueError):
    """What is wrong with a job, in sentences."""


def cut(job: str, seconds: float, *, as_json: bool) -> int:
    """Answer the job in a file, or in one line; 1 where there is no answer, 2 where the job is wrong."""
    try:
        asked = _asked(job)
    except WrongJobError as error:
        return refuse(str(error))
    began = time.monotonic()
    found = answered(asked.question, within_seconds(seconds, time.monotonic))
    took = time.monotonic() - began
    if isinstance(found, NoAnswer):
        refuse(f"{capitalised(found.sentence)}.")
        return FAULTY
    if as_json:
        print(json.dumps(job_json(asked, found, took), ensure_ascii=False, indent=2))
    else:
        # A terminal breaks lines where it likes, and its words are searched and copied.
        print(*(line.replace(NBSP, " ") for line in job_lines(asked, found)), sep="\n")
    return 0


def _asked(job: str) -> AskedJob:
    path = Path(job)
    if not job.lower().endswith((".yml", ".yaml")) and " from " in job:
        try:
            return read_job_line(job)
        except MeasureError as error:
            raise WrongJobError(str(error)) from None
    try:
        data = path.read_bytes()
    except (OSError, ValueError):
        raise WrongJobError(
            f"There is no file {job}; name a job file, or write a line like “3 3/4 x 5 from 12 x 12”."
        ) from None
    asked, problems = read_job(data, job)
    if asked is None:
        raise WrongJobError("\n".join(told(problem) for problem in problems))
    return asked
