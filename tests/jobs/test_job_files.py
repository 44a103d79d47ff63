"""Job files in, whole messages out; and what a job means."""

from __future__ import annotations

import re
from contextlib import suppress
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from batchleaf.facts.jobs import (
    AskedJob,
    CostQuestion,
    FillQuestion,
    Job,
    MakesQuestion,
    Offer,
    PartKind,
    Stock,
)
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import MM_PER_INCH, Size, Unit
from batchleaf.records.job_line import read_job_line
from batchleaf.records.jobs import read_job
from batchleaf.records.kinds import keys_of, models_of
from batchleaf.records.written.jobs import JobWritten
from batchleaf.telling import told

CASES = sorted((Path(__file__).parent / "cases").glob("*.case"))
KEYS = {key.name for model in models_of(JobWritten) for key in keys_of(model)}


def inch(number: str) -> Fraction:
    """Inches in mm."""
    return Fraction(number) * MM_PER_INCH


def split(case: Path) -> tuple[str, str]:
    """The job of a case, and what is told of it."""
    _, job, told_of = re.split(r"^=== .+\n", case.read_text(encoding="utf-8"), flags=re.MULTILINE)
    return job, told_of.strip("\n")


@pytest.mark.parametrize("case", CASES, ids=lambda path: path.stem)
def test_what_is_told_of_a_job(case: Path) -> None:
    """Every slip is told in one run, each at its line; a job with one asks nothing."""
    job, expected = split(case)
    asked, problems = read_job(job.encode(), "job.yml")
    assert "\n".join(told(problem) for problem in problems) == expected
    assert (asked is None) == bool(expected)


@pytest.mark.parametrize("key", sorted(KEYS))
def test_every_key_is_in_a_case(key: str) -> None:
    """No key of a job is read without a case that has it."""
    assert any(re.search(rf"(?:^|[\s{{]){key}:", split(case)[0]) for case in CASES)


def test_what_a_job_means() -> None:
    """Measures are exact, in the unit of the job or their own; kerf and gap are lost together."""
    job, _ = split(next(case for case in CASES if case.stem == "sound"))
    asked, _ = read_job(job.encode(), "job.yml")
    stocks = (
        Stock("letter", Size(inch("17/2"), inch("11")), 7, Fraction(2, 5), name="letter"),
        Stock("bit", Size(Fraction(102), Fraction(216)), 2, Fraction(0), scrap=True, name="bit"),
    )
    parts = (
        PartKind("A", Size(inch("4"), inch("5")), 2, turns=False, sources=("letter",)),
        PartKind("B", Size(inch("2"), inch("3/4"))),
    )
    assert asked == AskedJob(MakesQuestion(Job(stocks, parts, inch("1/32"))), Unit.INCH)


FILL = """\
unit: in
sheets: [{id: a, size: 6 x 6}, {id: b, size: 9 x 9}]
parts:
  - {id: A, size: 1 1/3 x 2}
  - {id: B, size: 1 x 1, worth: 2.5, most: 3}
  - {id: C, size: 1 x 1, from: [b]}
fill: a
"""


def test_what_filling_a_sheet_means() -> None:
    """A part is worth its area in the job's unit where nothing is said; what is tied elsewhere stays out."""
    asked, _ = read_job(FILL.encode(), "job.yml")
    assert asked is not None
    question = asked.question
    assert isinstance(question, FillQuestion)
    assert question.stock.id == "a"
    assert [(one.part.id, one.worth * question.worth_unit, one.most) for one in question.offers] == [
        ("A", Fraction(8, 3), None),
        ("B", Fraction(5, 2), 3),
    ]
    assert all(isinstance(one, Offer) for one in question.offers)


# --- in one line ---------------------------------------------------------------------


def line(*parts: tuple[str, str, int], sheets: tuple[tuple[str, str, int | None], ...]) -> Job:
    """A job as one line means it, in inches."""
    return Job(
        tuple(Stock(f"sheet {n}", Size(inch(w), inch(h)), have) for n, (w, h, have) in enumerate(sheets, 1)),
        tuple(PartKind("ABC"[n], Size(inch(w), inch(h)), each) for n, (w, h, each) in enumerate(parts)),
    )


@pytest.mark.parametrize(
    ("text", "question"),
    [
        ("3 3/4 x 5 from 12 x 12", MakesQuestion(line(("15/4", "5", 1), sheets=(("12", "12", 1),)))),
        ("3¾ × 5 from 12×12 in", MakesQuestion(line(("15/4", "5", 1), sheets=(("12", "12", 1),)))),
        (
            "15/4 by 5 from 3 sheets of 12 by 12",
            MakesQuestion(line(("15/4", "5", 1), sheets=(("12", "12", 3),))),
        ),
        (
            "5 x 7, 2 x 2 from 2 of 12 x 12, 1 scrap of 4 x 8",
            MakesQuestion(line(("5", "7", 1), ("2", "2", 1), sheets=(("12", "12", 2), ("4", "8", 1)))),
        ),
        (
            "24 of 3 3/4 x 5, 48 of 2 x 2 from 12 x 12",
            CostQuestion(line(("15/4", "5", 1), ("2", "2", 2), sheets=(("12", "12", None),)), 24),
        ),
        (
            "24 of 4 x 5 from 5 of 12 x 12",
            CostQuestion(line(("4", "5", 1), sheets=(("12", "12", 5),)), 24),
        ),
    ],
)
def test_what_a_line_means(text: str, question: MakesQuestion | CostQuestion) -> None:
    """Without counts the most from what is there, with counts the sheets they need."""
    assert read_job_line(text) == AskedJob(question, Unit.INCH)


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("105 x 74 from 210 x 297", Unit.MM),
        ("35 x 35 from 35.9 x 35", Unit.INCH),
        ("35 x 35 from 36 x 35", Unit.MM),
        ("5 x 5 from 30.5 x 30.5 cm", Unit.CM),
        ("5 cm x 5 cm from 210 x 297 mm", Unit.MM),
    ],
)
def test_the_unit_of_a_line(text: str, unit: Unit) -> None:
    """The one that is written last, else inches where all is small."""
    assert read_job_line(text).unit == unit


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("3 x 5", "“3 x 5” does not say what to cut from what; write for example 3 3/4 x 5 from 12 x 12"),
        (
            "3 x 5, from 12 x 12",
            "a size is missing in “3 x 5,”; write for example 24 of 3 3/4 x 5, 48 ",
        ),
        ("0 of 3 x 5 from 12 x 12", "“0 of 3 x 5” asks for none; write 1 or more"),
        ("2 of 3 x 5, 2 x 2 from 12 x 12", "some of these parts have a count and some have none"),
        ("3 x 5 from twelve", "“twelve” is not a size; write two lengths with x between, like 44 x 70"),
        (
            ", ".join(["1 x 1"] * 27) + " from 12 x 12",
            "these are 27 kinds of parts; write more than ",
        ),
    ],
)
def test_what_is_told_of_a_line(text: str, sentence: str) -> None:
    """A sentence that says what to write."""
    with pytest.raises(MeasureError) as told_of:
        read_job_line(text)
    assert str(told_of.value).startswith(sentence)


@given(st.text(alphabet='0123456789 x×/.,of-from¼½in"m', max_size=40))
def test_any_line_is_read_or_refused(text: str) -> None:
    """Nothing else comes of it."""
    with suppress(MeasureError):
        assert read_job_line(text).unit in Unit
