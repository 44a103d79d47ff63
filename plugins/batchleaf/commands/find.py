"""Looking things up at the terminal: batches, and what is on hand."""

from __future__ import annotations

import json
from collections.abc import Sequence

from batchleaf.commands.opened import Opened
from batchleaf.commands.sent import one_called, recipients_of
from batchleaf.commands.terminal import FAULTY, refuse
from batchleaf.core.figures import BatchFigures, with_the_drawer
from batchleaf.telling import told
from batchleaf.views.drawer_lines import drawer_json, drawer_lines
from batchleaf.views.find.find_lines import find_json, find_lines
from batchleaf.views.find.find_words import found_by, plain
from batchleaf.views.find.indexed import indexed
from batchleaf.views.stock import on_shelves
from batchleaf.workflow import Worked


def find(archive: Opened, words: Sequence[str], *, today: bool, unsent_to: str, as_json: bool) -> int:
    """Print the batches that all ``words`` are told of.

    ``today``: only those of which another one can be made from what is on hand. ``unsent_to``: only
    those of which nothing was sent to this person.
    """
    worked = archive.worked()
    if worked.figures is None:
        return _faulty(worked)
    figures = with_the_drawer(worked.figures, archive.planner())
    had = _had(archive, worked, unsent_to) if unsent_to else frozenset[str]()
    if isinstance(had, int):
        return had
    found = [
        batch
        for batch in found_by(_apart(words), indexed(figures), figures)
        if batch.project.slug not in had and (not today or _can_be_made(batch))
    ]
    currency = figures.settings.currency
    if as_json:
        print(json.dumps(find_json(found, currency), ensure_ascii=False, indent=2))
    else:
        print(*find_lines(found, currency), sep="\n")
    return 0


def drawer(archive: Opened, words: Sequence[str], *, as_json: bool) -> int:
    """Print what is on hand of the supplies that have all ``words`` in their name or kind."""
    worked = archive.worked()
    figures = worked.figures
    if figures is None or figures.ledger is None:
        return _faulty(worked)
    wanted = [plain(word) for word in _apart(words)]
    supplies = [
        supply
        for supply in on_shelves(figures)
        if all(word in plain(f"{supply.slug} {supply.name} {supply.kind}") for word in wanted)
    ]
    if as_json:
        print(json.dumps(drawer_json(supplies, figures, figures.ledger), ensure_ascii=False, indent=2))
    else:
        print(*drawer_lines(supplies, figures, figures.ledger), sep="\n")
    return 0


def _apart(words: Sequence[str]) -> list[str]:
    """``"oat card"`` is two words as well."""
    return " ".join(words).split()


def _can_be_made(batch: BatchFigures) -> bool:
    return batch.from_drawer is not None and batch.from_drawer.makes > 0


def _had(archive: Opened, worked: Worked, name: str) -> frozenset[str] | int:
    """The batches of which somebody was sent something; an exit code where it is not known who is meant."""
    read = recipients_of(archive, worked.archive)
    person = one_called(name, read.people)
    if isinstance(person, str):
        return refuse(person)
    return frozenset(one.batch for one in person.sent)


def _faulty(worked: Worked) -> int:
    for problem in worked.errors:
        print(told(problem))
    return FAULTY
