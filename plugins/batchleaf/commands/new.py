"""A new batch: its record, from a few answers."""

from __future__ import annotations

import argparse
import datetime as dt
from pathlib import Path
from typing import Final

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import answer, nothing_written, refuse
from batchleaf.writing.record import Answers, first_lines, record_text
from batchleaf.writing.slugs import slug_of

QUESTIONS: Final = {
    "title": "What is the batch called?",
    "date": "When is it (year-month-day)? Leave empty for today.",
    "base": "What is one, and how large? For example: bookmark 50 x 180 mm",
    "makes": "How many are meant?",
    "paper": "Which supply is it cut from?",
    "series": "Which series does it belong to? Leave empty for none.",
}
"""Option → the question."""
USUALLY_MEANT: Final = "12"


def new(archive: Opened, asked: argparse.Namespace) -> int:
    """Write a record that passes the check, or write nothing."""
    papers: list[str] = asked.paper or []
    if len(papers) > 1:
        return nothing_written("a new batch begins with one paper; give --paper once")
    answers = Answers(
        title=answer(QUESTIONS["title"], asked.title, ""),
        date=answer(QUESTIONS["date"], asked.date, today()),
        base=answer(QUESTIONS["base"], asked.base, ""),
        makes=answer(f"{QUESTIONS['makes']} Leave empty for {USUALLY_MEANT}.", asked.makes, USUALLY_MEANT),
        paper=answer(QUESTIONS["paper"], papers[0] if papers else None, ""),
        series=answer(QUESTIONS["series"], asked.series, ""),
    )
    file = new_file(archive, answers.title)
    return write_new(archive, file, record_text(answers, first_lines(archive.root, file)))


def today() -> str:
    """The day at the maker's table."""
    return dt.datetime.now().astimezone().date().isoformat()


def new_file(archive: Opened, title: str) -> Path:
    """The record of a batch to come, in a folder that is not there yet."""
    folder = archive.projects
    taken = {path.name.lower() for path in folder.iterdir()} if folder.is_dir() else set()
    return folder / slug_of(title, taken) / "project.yml"


def write_new(archive: Opened, file: Path, record: str) -> int:
    """Write a record, and take it back where the check finds something wrong with it."""
    file.parent.mkdir(parents=True)
    file.write_bytes(record.encode())
    shown = file.relative_to(archive.projects.parent).as_posix()
    mine = [problem for problem in archive.worked().errors if problem.place.file == shown]
    if mine:
        file.unlink()
        file.parent.rmdir()
        return refuse("\n".join(["Nothing was written:", *(problem.sentence for problem in mine)]))
    print(f"Wrote {file}")
    return 0
