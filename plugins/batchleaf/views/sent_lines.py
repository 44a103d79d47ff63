"""Who was sent what, in lines for a terminal; no page of a site ever says it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from batchleaf.core.sent import last_date, last_sent_first, newest_first
from batchleaf.facts import Project
from batchleaf.facts.recipients import Recipient, Sent
from batchleaf.views.words import counted


def people_lines(people: Iterable[Recipient]) -> Iterator[str]:
    """Each person with the last day: ``2026-05-16  marsh-aunt, the aunt on the marsh``."""
    ordered = last_sent_first(people)
    if not ordered:
        yield "Nobody stands there yet."
    for one in ordered:
        last = last_date(one)
        yield f"{last.isoformat() if last else 'never':<10}  {_called(one)}"


def sent_lines(person: Recipient, projects: Sequence[Project], missed: Sequence[Project]) -> Iterator[str]:
    """What one person had, newest first, and what of the last year they had not (``missed``)."""
    by_slug = {project.slug: project for project in projects}
    had = "had" if person.sent else "had nothing yet"
    yield f"{_called(person)}, {had}{':' if person.sent else '.'}"
    for one in newest_first(person):
        yield f"  {one.date.isoformat()}  {_what(one, by_slug.get(one.batch))}"
    if missed:
        yield "Of the last year not had:" if person.sent else "The batches of the last year:"
        yield from (f"  {one.date.isoformat()}  {one.title}" for one in missed)
    elif person.sent:
        yield "Of the last year nothing is missing."


def _what(sent: Sent, project: Project | None) -> str:
    """``2 boxes, Hawthorn boxes``; of a batch whose record cannot be read, its address."""
    if project is None:
        return f"{sent.count} of {sent.batch}"
    return f"{counted(sent.count, project.thing, project.things)}, {project.title}"


def _called(person: Recipient) -> str:
    return person.slug if person.name == person.slug else f"{person.slug}, {person.name}"
