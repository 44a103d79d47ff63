"""The recipients: ``projects/recipients.yml``, who was sent what.

Nothing that makes a site reads this file, or may import this module: what is never read
cannot be shown. Only commands at the maker's own table do (``check``, ``sent``).
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final

from batchleaf.facts import Place, Problem, Project
from batchleaf.facts.recipients import Recipient, Sent
from batchleaf.measure.errors import MeasureError
from batchleaf.records.folder import CANNOT_BE_READ, LEADS_OUT, bytes_of, lies_within
from batchleaf.records.grammar import read_count, read_date
from batchleaf.records.known import respelt
from batchleaf.records.nodes import Node, key_place, place_of
from batchleaf.records.report import Report
from batchleaf.records.shape import shaped
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.written import RecipientsFileWritten, RecipientWritten
from batchleaf.records.yaml_text import lines_of, read_yaml

FILE: Final = "recipients.yml"
_LINE: Final = re.compile(r"(?P<date>\S+)(?:\s+(?P<count>[0-9]+))?\s+(?P<batch>\S+)")


@dataclass(frozen=True, slots=True)
class Batches:
    """The batches that a line may name: those that were read, and ``slugs``, which could not all be.

    To name one whose own record is faulty is no second problem.
    """

    projects: Sequence[Project]
    slugs: Collection[str]

    @property
    def by_slug(self) -> Mapping[str, Project]:
        """Each that was read."""
        return {project.slug: project for project in self.projects}

    @property
    def moved(self) -> Mapping[str, str]:
        """Each old address, and the one that it leads to."""
        return {old: project.slug for project in self.projects for old in project.was}


@dataclass(frozen=True, slots=True)
class RecipientsRead:
    """All whose lines can be read, by short name, and what is off; ``there`` False: there is no file."""

    people: tuple[Recipient, ...]
    problems: tuple[Problem, ...]
    there: bool = True


def read_recipients(projects: Path, batches: Batches) -> RecipientsRead:
    """What the file below ``projects`` says; a faulty line is told of, and the others are read."""
    file, report = projects / FILE, Report()
    shown = f"{projects.name}/{FILE}"
    if not file.is_file():
        return RecipientsRead((), (), there=False)
    if not lies_within(file, projects):
        report.error(Place(shown, 1, 1), LEADS_OUT)
        return RecipientsRead((), tuple(report.found))
    try:
        data = bytes_of(file)
    except OSError:
        report.error(Place(shown, 1, 1), CANNOT_BE_READ)
        return RecipientsRead((), tuple(report.found))
    people = tuple(_people(data, shown, batches, report))
    _tell_too_many(people, batches, report)
    lines = lines_of(data.decode("utf-8-sig", errors="replace"))
    problems = sorted(_located(problem, lines) for problem in report.found)
    return RecipientsRead(tuple(sorted(people, key=lambda one: one.slug)), tuple(problems))


def read_sent(text: str) -> Sent:
    """``2026-05-16 2 hawthorn-boxes``: the day, how many (one where nothing is said), the batch.

    Raises :class:`MeasureError`.
    """
    found = _LINE.fullmatch(" ".join(text.split()))
    if found is None:
        raise MeasureError(
            f"“{text}” does not say what was sent on which day; write for example 2026-05-16 2 hawthorn-boxes"
        )
    return Sent(read_date(found["date"]), read_count(found["count"] or "1"), found["batch"])


def _people(data: bytes, shown: str, batches: Batches, report: Report) -> Iterator[Recipient]:
    node, problems = read_yaml(data, shown)
    report.take(problems)
    if node is None:
        return
    record = shaped(node, RecipientsFileWritten, "the file of recipients")
    report.take(record.problems)
    told = {problem.place for problem in record.problems}
    if record.written is None:
        return
    mark = report.mark()
    for slug, one in record.written.people.items():
        yield _recipient(slug, one, node, batches, report)
    report.forget_repeats(mark, told)


def _recipient(
    slug: str, written: RecipientWritten, node: Node, batches: Batches, report: Report
) -> Recipient:
    lines = (
        _sent(text, place_of(node, ("people", slug, "sent", i)), batches, report)
        for i, text in enumerate(written.sent)
    )
    sent = sorted(filter(None, lines), key=lambda one: (one.date, one.place))
    return Recipient(slug, written.name or slug, tuple(sent), key_place(node, ("people", slug)))


def _sent(text: str, place: Place, batches: Batches, report: Report) -> Sent | None:
    sent = report.read(place, read_sent, text)
    if sent is None:
        return None
    slug = batches.moved.get(sent.batch, sent.batch)
    if slug not in batches.by_slug and slug not in batches.slugs:
        own = respelt(slug, batches.slugs)
        hint = f"; did you mean “{own}”?" if own else did_you_mean(slug, batches.slugs)
        report.error(place, f"there is no batch “{sent.batch}”{hint}")
        return None
    return replace(sent, batch=slug, place=place)


def _tell_too_many(people: Sequence[Recipient], batches: Batches, report: Report) -> None:
    """A notice at the line by which more of a batch were sent than were finished, over all people."""
    gone = Counter[str]()
    finished = {slug: project.finished for slug, project in batches.by_slug.items()}
    for sent in sorted((one for who in people for one in who.sent), key=lambda one: (one.date, one.place)):
        before = gone[sent.batch]
        gone[sent.batch] += sent.count
        there = finished.get(sent.batch, gone[sent.batch])
        if before <= there < gone[sent.batch]:
            project = batches.by_slug[sent.batch]
            report.notice(
                sent.place,
                f"with this, {gone[sent.batch]} {project.name_of(gone[sent.batch])} {_be(gone[sent.batch])}"
                f" sent, and {there or 'none'} {_be(there or 1)} finished",
            )


def _be(count: int) -> str:
    return "was" if count == 1 else "were"


def _located(problem: Problem, lines: Sequence[str]) -> Problem:
    at = problem.place.line - 1
    return replace(problem, line_text=lines[at]) if 0 <= at < len(lines) else problem
