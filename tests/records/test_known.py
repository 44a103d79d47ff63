"""Names of supplies and tools, as makers spell them."""

from __future__ import annotations

import pytest

from batchleaf.facts import NOWHERE, Tool
from batchleaf.measure.lengths import Unit
from batchleaf.records.known import KnownSupplies, KnownTools, respelt
from batchleaf.records.report import Report
from core.drawers import supply

DRAWER = {slug: supply(slug) for slug in ("chalk-card", "gift-box", "gift-glass", "brass")}
BENCH = {"long-trimmer": Tool("long-trimmer", "the long trimmer", "trimmer", Unit.MM)}


@pytest.mark.parametrize(
    "spelling", ["chalk_card", "Chalk-Card", "chalkcard", "chalk card", "chalk-cards", "CHALK CARDS"]
)
def test_another_spelling_is_told_as_the_drawer_has_it(spelling: str) -> None:
    """Large letters, hyphens, spaces and an s for several make no other supply."""
    report = Report()
    assert KnownSupplies(DRAWER, set(), all_lost=False).find(spelling, NOWHERE, report) is None
    assert [one.sentence for one in report.found] == [
        f"“{spelling}” is “chalk-card” in the drawer; write it so"
    ]


@pytest.mark.parametrize(
    ("spelling", "own"),
    [
        ("gift-boxes", "gift-box"),
        ("gift-glasses", "gift-glass"),
        ("brass", ""),
        ("bras", ""),
        ("chalk", ""),
        ("chalk-cardboard", ""),
        ("-", ""),
    ],
)
def test_what_is_another_word_is_not_respelt(spelling: str, own: str) -> None:
    """Only the ending of several is taken off, and the s of “brass” is no such ending."""
    assert respelt(spelling, DRAWER) == own


def test_another_spelling_is_never_taken_as_new() -> None:
    """What a batch uses besides its sheets may be new to the drawer, but not under a second spelling."""
    known = KnownSupplies(DRAWER, set(), all_lost=False, tools=BENCH)
    report = Report()
    for slug in ("chalkcard", "long-trimmer"):
        assert known.find_or_suppose(slug, "piece", NOWHERE, report) is None
    assert [one.sentence for one in report.found] == [
        "“chalkcard” is “chalk-card” in the drawer; write it so",
        "“long-trimmer” is a tool of the bench, so it is not used up; write it under tools",
    ]
    assert len(known.all()) == len(DRAWER)


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("longtrimmer", "“longtrimmer” is “long-trimmer” on the bench; write it so"),
        ("long-timmer", "“long-timmer” is not on the bench; did you mean “long-trimmer”?"),
        ("hammer", "“hammer” is not on the bench"),
        ("chalk-card", "“chalk-card” is used up, so it is no tool; write it under supplies"),
    ],
)
def test_a_tool_that_is_not_there_is_told(name: str, sentence: str) -> None:
    """With the one that was meant, where one is near."""
    report = Report()
    known = KnownTools(BENCH, set(), all_lost=False, supplies=DRAWER)
    assert known.find(name, NOWHERE, report) is None
    assert [one.sentence for one in report.found] == [sentence]


@pytest.mark.parametrize("name", ["score-board", "Score_Boards"])
def test_a_lost_tool_is_no_second_problem(name: str) -> None:
    """Whoever cannot be read has been told of already, under each spelling."""
    report = Report()
    assert KnownTools(BENCH, {"score-board"}, all_lost=False).find(name, NOWHERE, report) is None
    assert KnownTools(BENCH, set(), all_lost=True).find(name, NOWHERE, report) is None
    assert report.found == []


def test_a_tool_is_found_by_its_name() -> None:
    """And all are sorted by it."""
    known = KnownTools(BENCH, set(), all_lost=False)
    assert known.find("long-trimmer", NOWHERE, Report()) is BENCH["long-trimmer"] is known.get("long-trimmer")
    assert known.all() == (BENCH["long-trimmer"],)
