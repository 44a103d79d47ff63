"""A new batch: its record, from a few answers."""

from __future__ import annotations

import argparse
import datetime as dt
from collections.abc import Callable
from typing import Final

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import ask, refuse, somebody_types
from batchleaf.writing.record import Answers, record_text
from batchleaf.writing.slugs import slug_of

QUESTIONS: Final[dict[str, tuple[str, Callable[[], str]]]] = {
    "title": ("What is the batch called?", str),
    "date": ("When is it (year-month-day)?", lambda: dt.datetime.now().astimezone().date().isoformat()),
    "base": ("What is one, and how large? For example: bookmark 50 x 180 mm", str),
    "makes": ("How many are meant?", lambda: "12"),
    "paper": ("Which supply is it cut from?", str),
    "series": ("Which series does it belong to? Leave empty for none.", str),
}
"""Option → the question, and what an empty answer means."""


def new(archive: Opened, asked: argparse.Namespace) -> int:
    """Write a record that passes the check, or write nothing."""
    folder = archive.projects
    taken = {path.name.lower() for path in folder.iterdir()} if folder.is_dir() else set()
    answers = Answers(**{option: _answer(option, asked) for option in QUESTIONS})
    slug = slug_of(answers.title, taken)
    file = folder / slug / "project.yml"
    file.parent.mkdir(parents=True)
    file.write_text(record_text(answers), encoding="utf-8")
    mine = [problem for problem in archive.worked().errors if f"/{slug}/" in problem.place.file]
    if mine:
        file.unlink()
        file.parent.rmdir()
        return refuse("\n".join(["Nothing was written:", *(problem.sentence for problem in mine)]))
    print(f"Wrote {file}")
    return 0


def _answer(option: str, asked: argparse.Namespace) -> str:
    question, usual = QUESTIONS[option]
    given: str | None = getattr(asked, option)
    if given is None and somebody_types():
        given = ask(f"{question} ")
    return (given or "").strip() or usual()
