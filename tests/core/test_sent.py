"""What somebody had, and what they had not."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

import pytest

from batchleaf.core.sent import last_date, last_sent_first, newest_first, not_had
from batchleaf.facts import Project, Status
from batchleaf.facts.recipients import Recipient, Sent
from core.drawers import batch

TODAY = dt.date(2026, 6, 1)


def made(slug: str, date: dt.date, finished: int = 3, status: Status = Status.MADE) -> Project:
    """A batch of some day."""
    return replace(batch(1, slug=slug, finished=finished), date=date, status=status)


def somebody(*sent: Sent, name: str = "somebody") -> Recipient:
    """A person who had these."""
    return Recipient(name.replace(" ", "-"), name, sent)


@pytest.mark.parametrize(
    ("date", "missed"),
    [
        (dt.date(2025, 6, 1), 0),
        (dt.date(2025, 6, 2), 1),
        (TODAY, 1),
        (dt.date(2026, 6, 2), 0),
    ],
)
def test_a_year_ends_today(date: dt.date, missed: int) -> None:
    """The same day a year ago is out of it, and so is what is dated in days to come."""
    assert len(not_had(somebody(), [made("a", date)], TODAY)) == missed


def test_the_year_before_a_leap_day() -> None:
    """From the 29th of February back to the first of March."""
    leap = dt.date(2024, 2, 29)
    dates = [dt.date(2023, 2, 28), dt.date(2023, 3, 1)]
    found = not_had(somebody(), [made(f"b{i}", date) for i, date in enumerate(dates)], leap)
    assert [one.slug for one in found] == ["b1"]


def test_only_what_is_finished_and_was_not_sent() -> None:
    """Newest first."""
    day = dt.date(2026, 3, 1)
    projects = [
        made("had", day),
        made("not", day),
        made("later", dt.date(2026, 4, 1), status=Status.PUBLISHED),
        made("in-hand", day, finished=0, status=Status.CUT),
        made("planned", day, finished=0, status=Status.PLANNED),
    ]
    found = not_had(somebody(Sent(day, 1, "had")), projects, TODAY)
    assert [one.slug for one in found] == ["later", "not"]


def test_people_in_order_of_their_last_day() -> None:
    """The last first; who had nothing comes last, by name."""
    early, late = Sent(dt.date(2026, 1, 1), 1, "a"), Sent(dt.date(2026, 2, 1), 2, "b")
    both = somebody(early, late, name="both")
    people = [somebody(name="never b"), somebody(early, name="early"), somebody(name="Never a"), both]
    assert [one.name for one in last_sent_first(people)] == ["both", "early", "Never a", "never b"]
    assert newest_first(both) == (late, early)
    assert (last_date(both), last_date(somebody())) == (late.date, None)
