"""A batch made again: the design of an old one, with other papers."""

from __future__ import annotations

import argparse
from collections.abc import Mapping

from batchleaf.commands.new import QUESTIONS, USUALLY_MEANT, new_file, today, write_new
from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import answer, nothing_written
from batchleaf.writing.again import Again, begun_in, left_behind, old_record, record_again, roles_of
from batchleaf.writing.record import first_lines
from batchleaf.writing.record_lines import CannotPartError, RecordLines


def again(archive: Opened, asked: argparse.Namespace) -> int:
    """Write a planned batch with the design of an old one; it passes the check, or nothing is written."""
    try:
        if asked.base:
            return nothing_written("the base comes from the old batch; leave out --base")
        old = old_record(archive.projects, asked.source)
        new = _answers(old, asked)
        file = new_file(archive, new.title)
        record = record_again(old, new, first_lines(archive.root, file))
    except CannotPartError as error:
        return nothing_written(str(error))
    code = write_new(archive, file, record)
    left = left_behind(old, new)
    if left and not code:
        print(f"Left with the old batch: {', '.join(left)}")
    return code


def _answers(old: RecordLines, asked: argparse.Namespace) -> Again:
    roles = roles_of(old)
    given = _given(asked.paper or [], roles)
    begun = begun_in(old, USUALLY_MEANT)
    title = str(old.values.get("title", ""))
    return Again(
        title=answer(f"{QUESTIONS['title']} Leave empty for {title}.", asked.title, title),
        date=answer(QUESTIONS["date"], asked.date, today()),
        makes=answer(f"{QUESTIONS['makes']} Leave empty for {begun}.", asked.makes, begun),
        papers={role: new for role, text in roles.items() if (new := _filled(role, text, given)) != text},
        series=answer(QUESTIONS["series"], asked.series, ""),
    )


def _filled(role: str, text: str, given: Mapping[str, str]) -> str:
    return answer(f"Which supply fills “{role}”? Leave empty for {text}.", given.get(role), text)


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
