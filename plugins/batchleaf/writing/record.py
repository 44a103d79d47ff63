"""A new record, from a few answers."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from batchleaf.writing.archive import schema_file
from batchleaf.writing.block import quoted


@dataclass(frozen=True, slots=True)
class Answers:
    """What the maker said of a batch that is to come."""

    title: str
    date: str
    base: str
    """What one is and its size: ``bookmark 50 x 180 mm``."""
    makes: str
    paper: str
    """The supply that the base is cut from."""
    series: str = ""


def record_text(answers: Answers, first: tuple[str, ...]) -> str:
    """The record of a planned batch, ready to be filled; ``first`` are the lines it begins with."""
    lines = [
        *first,
        *planned(answers.title, answers.date, answers.makes, answers.series).values(),
        f"base: {_on_one_line(answers.base)}",
        "papers:",
        f"  base: {_on_one_line(answers.paper)}",
    ]
    return "\n".join(lines) + "\n"


def planned(title: str, date: str, makes: str, series: str) -> dict[str, str]:
    """The lines that every batch to come begins with, by their key."""
    said = {
        "title": title,
        "format": "1",
        "date": date,
        **({"series": series} if series else {}),
        "status": "planned",
        "makes": f"0 of {makes}",
    }
    return {key: f"{key}: {_on_one_line(value)}" for key, value in said.items()}


def first_lines(archive: Path, record: Path) -> tuple[str, ...]:
    """The line that tells an editor where the schema of a batch lies; none where the archive has none."""
    schema = schema_file(archive.resolve(), "project")
    if not schema.is_file():
        return ()
    folder = record.resolve().parent
    # On Windows there is no way from one drive to another.
    near = folder.anchor == schema.anchor
    way = Path(os.path.relpath(schema, folder)).as_posix() if near else schema.as_uri()
    return (f"# yaml-language-server: $schema={way}",)


def _on_one_line(text: str) -> str:
    return quoted(" ".join(text.split()))
