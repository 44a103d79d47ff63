"""Reading all records, and telling what was understood."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.commands.opened import Opened
from batchleaf.commands.sent import recipients_of
from batchleaf.commands.terminal import FAULTY
from batchleaf.facts import Problem, Weight
from batchleaf.made_site import prepared_photos
from batchleaf.records.recipients import FILE
from batchleaf.store import Store
from batchleaf.telling import told, told_in_short
from batchleaf.views.edition import as_told
from batchleaf.views.video_text import told_of_length, video_texts
from batchleaf.workflow import Worked


def check(archive: Opened) -> int:
    """Print every problem of every record; 1 where one of them stops the build."""
    worked = archive.worked()
    unreadable = prepared_photos(worked.archive.projects, Store(archive.cache)).problems
    recipients = recipients_of(archive, worked.archive)
    problems = sorted((*worked.problems, *unreadable, *recipients.problems, *_texts(archive, worked)))
    for problem in problems:
        print(told(problem))
    if any(problem.weight is Weight.ERROR for problem in problems):
        return FAULTY
    print(told_in_short(worked.archive))
    if recipients.there:
        print(f"Read {FILE} too, which no site shows.")
    return 0


def _texts(archive: Opened, worked: Worked) -> Iterator[Problem]:
    """What the texts for videos had no room for."""
    if worked.figures:
        videos = video_texts(as_told(worked.figures, archive.told, archive.planner()), archive.masthead)
        yield from told_of_length(videos, worked.archive.projects, archive.settings.video_text)
