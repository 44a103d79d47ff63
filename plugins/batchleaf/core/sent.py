"""What somebody had, and what of late they had not."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence

from batchleaf.facts import Project
from batchleaf.facts.recipients import Recipient, Sent


def newest_first(person: Recipient) -> tuple[Sent, ...]:
    """All that was sent; of one day in the order written."""
    return tuple(sorted(person.sent, key=lambda one: one.date, reverse=True))


def last_sent_first(people: Iterable[Recipient]) -> tuple[Recipient, ...]:
    """Who had something last comes first, by name among equals; who never had anything comes last."""
    by_name = sorted(people, key=lambda one: one.name.casefold())
    return tuple(sorted(by_name, key=lambda one: last_date(one) or dt.date.min, reverse=True))


def last_date(person: Recipient) -> dt.date | None:
    """The last day on which something was sent."""
    return max((one.date for one in person.sent), default=None)


def not_had(person: Recipient, projects: Sequence[Project], today: dt.date) -> tuple[Project, ...]:
    """Batches of the year up to ``today`` with finished makes, none of which was sent; newest first."""
    had = {one.batch for one in person.sent}
    since = _a_year_before(today)
    made = [one for one in projects if one.finished and one.status.moves_the_drawer]
    missed = [one for one in made if since < one.date <= today and one.slug not in had]
    return tuple(sorted(missed, key=lambda one: (one.date, one.slug), reverse=True))


def _a_year_before(day: dt.date) -> dt.date:
    """The same day a year before; of the 29th of February the 28th."""
    try:
        return day.replace(year=day.year - 1)
    except ValueError:
        return day.replace(year=day.year - 1, day=day.day - 1)
