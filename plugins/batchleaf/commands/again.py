"""A batch made again: the design of an old one, with other papers."""

from __future__ import annotations

import argparse
from collections.abc import Mapping

from batchleaf.commands.new import USUALLY_MEANT, begin, common, trial_of
from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import UNUSABLE, Question, Said, nothing_written
from batchleaf.writing.again import Again, begun_in, left_behind, old_record, record_again, roles_of
from batchleaf.writing.record_lines import CannotPartError, RecordLines
from batchleaf.writing.trial import Trial


def again(archive: Opened, asked: argparse.Namespace) -> int:
    """Write a planned batch with the design of an old one; it passes the check, or nothing is written."""
    try:
        if asked.base:
            return nothing_written("the base comes from the old batch; leave out --base")
        old = old_record(archive.projects, asked.source)
        return _again(archive, old, asked)
    except CannotPartError as error:
        return nothing_written(str(error))


def _again(archive: Opened, old: RecordLines, asked: argparse.Namespace) -> int:
    trial, roles = trial_of(archive), roles_of(old)
    given = _given(asked.paper or [], roles)
    title = str(old.values.get("title", "")) or None
    *first, series = common(trial, asked, begun_in(old, USUALLY_MEANT), title)
    papers = [_fills(trial, role, text, given.get(role)) for role, text in roles.items()]
    said = begin(
        archive,
        (*first, *papers, series),
        lambda said, lines: record_again(old, _new(said, roles), lines),
        once_more=papers,
    )
    if said is None:
        return UNUSABLE
    if left := left_behind(old, _new(said, roles)):
        print(f"Left with the old batch: {', '.join(left)}")
    return 0


def _fills(trial: Trial, role: str, text: str, given: str | None) -> Question:
    name = _question(role)
    asked = f"Which supply fills “{role}”? Leave empty for {text}."
    return Question(name, asked, given, lambda said: trial.told_of_paper(said[name]), text)


def _question(role: str) -> str:
    return f"paper of {role}"


def _new(said: Said, roles: Mapping[str, str]) -> Again:
    papers = {role: said[_question(role)] for role in roles}
    return Again(
        title=said["title"],
        date=said["date"],
        makes=said["makes"],
        papers={role: new for role, new in papers.items() if new != roles[role]},
        series=said["series"],
    )


def _given(papers: list[str], roles: Mapping[str, str]) -> dict[str, str]:
    """``ROLE=SUPPLY``, as often as it was typed. Raises :class:`CannotPartError`."""
    given = {}
    for paper in papers:
        role, sign, supply = (word.strip() for word in paper.partition("="))
        if not sign or role not in roles:
            known = ", ".join(roles) or "none"
            raise CannotPartError(f"“{paper}” fills no role; write ROLE=SUPPLY, the roles here are {known}")
        given[role] = supply
    return given
