"""A new batch: its record, from a few answers."""

from __future__ import annotations

import argparse
import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import (
    UNUSABLE,
    GaveUpError,
    Question,
    Said,
    WrongAnswersError,
    answers,
    at_terminal,
    nothing_written,
    refuse,
)
from batchleaf.measure.errors import MeasureError
from batchleaf.records.archive import read_archive
from batchleaf.writing.record import Answers, first_lines, meant, record_text
from batchleaf.writing.slugs import slug_of
from batchleaf.writing.trial import Trial

QUESTIONS: Final = {
    "title": "What is the batch called?",
    "date": "When is it (year-month-day)? Leave empty for today.",
    "base": "What is one, and how large? For example: bookmark 50 x 180 mm; card A6, side fold;"
    " card 8 1/2 x 5 1/2 in, side fold (the size before folding)",
    "makes": "How many are meant?",
    "paper": "Which supply is it cut from?",
    "series": "Which series does it belong to? Leave empty for none.",
}
"""Option → the question."""
USUALLY_MEANT: Final = "12"

RecordOf = Callable[[Said, tuple[str, ...]], str]
"""Makes a record of all answers and the lines that it begins with."""


def new(archive: Opened, asked: argparse.Namespace) -> int:
    """Write a record that passes the check, or write nothing."""
    papers: list[str] = asked.paper or []
    if len(papers) > 1:
        return nothing_written("a new batch begins with one paper; give --paper once")
    trial = trial_of(archive)
    cut_from = Question("paper", QUESTIONS["paper"], papers[0] if papers else None, _tried(trial, "paper"))
    base = Question("base", QUESTIONS["base"], asked.base, _tried(trial, "base"))
    title, date, makes, series = common(trial, asked, USUALLY_MEANT)
    said = begin(
        archive,
        (title, date, base, makes, cut_from, series),
        lambda said, first: record_text(Answers(**said), first),
        once_more=(base, cut_from),
    )
    return 0 if said else UNUSABLE


def trial_of(archive: Opened) -> Trial:
    """What answers are tried with."""
    return Trial(read_archive(archive.projects, archive.settings), archive.settings)


def common(
    trial: Trial, asked: argparse.Namespace, begun: str, title: str | None = None
) -> tuple[Question, Question, Question, Question]:
    """What is asked of every batch: title, date, makes and series; ``begun`` and ``title`` are usual."""
    call_it = f"{QUESTIONS['title']} Leave empty for {title}." if title else QUESTIONS["title"]
    how_many = f"{QUESTIONS['makes']} Leave empty for {begun}."
    return (
        Question("title", call_it, asked.title, _tried(trial, "title"), title),
        Question("date", QUESTIONS["date"], asked.date, _tried(trial, "date"), today()),
        Question("makes", how_many, asked.makes, _no_count, begun),
        Question("series", QUESTIONS["series"], asked.series, _tried(trial, "series"), ""),
    )


def begin(
    archive: Opened, questions: Sequence[Question], record_of: RecordOf, once_more: Sequence[Question]
) -> Said | None:
    """Ask, and write a record that passes the check; the answers, or ``None`` where nothing was written.

    Where something is wrong that shows only when all is said, ``once_more`` is asked again at a terminal.
    """
    try:
        answered = answers(questions, {})
        file = new_file(archive, answered["title"])
        said = _written(archive, file, record_of, answered, once_more)
    except WrongAnswersError as error:
        refuse(f"Nothing was written:\n{error}")
        return None
    except GaveUpError:
        refuse("Nothing was written.")
        return None
    print(f"Wrote {file}")
    return said


def _written(
    archive: Opened, file: Path, record_of: RecordOf, said: Said, once_more: Sequence[Question]
) -> Said:
    """The answers that stand in ``file`` in the end."""
    first = first_lines(archive.root, file)
    while told := write_new(archive, file, record_of(said, first)):
        if not (once_more and at_terminal()):
            raise WrongAnswersError(told)
        print(*told, sep="\n")
        said = answers((_again(question, said) for question in once_more), said)
    return said


def _again(question: Question, said: Said) -> Question:
    usual = said[question.name]
    return replace(question, given=None, text=f"{question.text} Leave empty for {usual}.", usual=usual)


def _tried(trial: Trial, name: str) -> Callable[[Said], Sequence[str]]:
    return lambda said: trial.told(name, said)


def _no_count(said: Said) -> Sequence[str]:
    try:
        meant(said["makes"])
    except MeasureError as error:
        return (str(error),)
    return ()


def today() -> str:
    """The day at the maker's table."""
    return dt.datetime.now().astimezone().date().isoformat()


def new_file(archive: Opened, title: str) -> Path:
    """The record of a batch to come, in a folder that is not there yet."""
    folder = archive.projects
    taken = {path.name.lower() for path in folder.iterdir()} if folder.is_dir() else set()
    return folder / slug_of(title, taken) / "project.yml"


def write_new(archive: Opened, file: Path, record: str) -> tuple[str, ...]:
    """Write a record; where the check finds something wrong with it, take it back and say what."""
    file.parent.mkdir(parents=True)
    file.write_bytes(record.encode())
    shown = file.relative_to(archive.projects.parent).as_posix()
    told = tuple(problem.sentence for problem in archive.worked().errors if problem.place.file == shown)
    if told:
        file.unlink()
        file.parent.rmdir()
    return told
