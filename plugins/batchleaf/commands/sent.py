"""Who was sent what: the one command, besides the check, that reads the file of recipients."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from batchleaf.commands.new import today
from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import FAULTY, refuse
from batchleaf.core.sent import not_had
from batchleaf.facts import Archive, Weight
from batchleaf.facts.recipients import Recipient
from batchleaf.records.archive import batch_slugs, read_archive
from batchleaf.records.recipients import FILE, Batches, RecipientsRead, read_recipients
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.telling import told
from batchleaf.views.sent_lines import people_lines, sent_lines


def sent(archive: Opened, name: str) -> int:
    """Print what the person called ``name`` had, or all people where that is empty.

    What is off in the file is told first; 1 where a line of it cannot be read.
    """
    records = read_archive(archive.projects, archive.settings).archive
    read = recipients_of(archive, records)
    if not read.there:
        return refuse(
            f"There is no {archive.projects.name}/{FILE}; write one that begins with “people:”, and no site"
            " will ever show it."
        )
    for problem in read.problems:
        print(told(problem))
    if not name:
        print(*people_lines(read.people), sep="\n")
    else:
        person = one_called(name, read.people)
        if isinstance(person, str):
            return refuse(person)
        missed = not_had(person, records.projects, dt.date.fromisoformat(today()))
        print(*sent_lines(person, records.projects, missed), sep="\n")
    return FAULTY if any(one.weight is Weight.ERROR for one in read.problems) else 0


def recipients_of(archive: Opened, records: Archive) -> RecipientsRead:
    """The file of recipients, held against the batches of an archive."""
    return read_recipients(archive.projects, Batches(records.projects, batch_slugs(archive.projects)))


def one_called(name: str, people: Sequence[Recipient]) -> Recipient | str:
    """Who is meant, or a sentence that says why nobody can be."""
    meant = called(name, people)
    return meant[0] if len(meant) == 1 else _which(name, meant, people)


def called(name: str, people: Sequence[Recipient]) -> tuple[Recipient, ...]:
    """The one of that short name, else all whose short name or name it is a part of."""
    wanted = " ".join(name.casefold().split())
    exact = [one for one in people if wanted in (one.slug, one.name.casefold())]
    parts = [one for one in people if wanted in one.slug or wanted in one.name.casefold()]
    return tuple(exact if len(exact) == 1 else parts)


def _which(name: str, meant: Sequence[Recipient], people: Sequence[Recipient]) -> str:
    if meant:
        return f"“{name}” may be {' or '.join(one.slug for one in meant)}; name one of them."
    names = [*(one.slug for one in people), *(one.name for one in people)]
    hint = did_you_mean(name, names)
    return f"There is nobody “{name}” in {FILE}{hint or '; say sent alone to see who there is.'}"
