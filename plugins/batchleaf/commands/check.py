"""Reading all records, and telling what was understood."""

from __future__ import annotations

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import FAULTY
from batchleaf.made_site import prepared_photos
from batchleaf.store import Store
from batchleaf.telling import told, told_in_short


def check(archive: Opened) -> int:
    """Print every problem of every record; 1 where one of them stops the build."""
    worked = archive.worked()
    unreadable = prepared_photos(worked.archive.projects, Store(archive.cache)).problems
    for problem in sorted((*worked.problems, *unreadable)):
        print(told(problem))
    if worked.errors or unreadable:
        return FAULTY
    print(told_in_short(worked.archive))
    return 0
