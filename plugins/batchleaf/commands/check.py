"""Reading all records, and telling what was understood."""

from __future__ import annotations

from batchleaf.commands.opened import Opened
from batchleaf.commands.sent import recipients_of
from batchleaf.commands.terminal import FAULTY
from batchleaf.facts import Weight
from batchleaf.made_site import prepared_photos
from batchleaf.records.recipients import FILE
from batchleaf.store import Store
from batchleaf.telling import told, told_in_short


def check(archive: Opened) -> int:
    """Print every problem of every record; 1 where one of them stops the build."""
    worked = archive.worked()
    unreadable = prepared_photos(worked.archive.projects, Store(archive.cache)).problems
    recipients = recipients_of(archive, worked.archive)
    problems = sorted((*worked.problems, *unreadable, *recipients.problems))
    for problem in problems:
        print(told(problem))
    if any(problem.weight is Weight.ERROR for problem in problems):
        return FAULTY
    print(told_in_short(worked.archive))
    if recipients.there:
        print(f"Read {FILE} too, which no site shows.")
    return 0
