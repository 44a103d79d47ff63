"""A new record, from a few answers."""

from __future__ import annotations

import os
import re
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from batchleaf.records.grammar import read_count
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


SOUND: Final = Answers("A batch", "2026-01-01", "tag 5 x 9 cm", "1", "paper")
"""Answers that are fine in every archive, but for the paper."""


def meant(makes: str) -> int:
    """How many a batch to come is to have: ``10``, or ``0 of 10`` as its record says it.

    Raises :class:`~batchleaf.measure.errors.MeasureError`.
    """
    return read_count(re.sub(r"^0\s+of\s+", "", makes.strip()))


def line_of(name: str, record: str) -> int:
    """The line of :func:`record_text` that holds the answer ``name``, from 1."""
    begins = "  base:" if name == "paper" else f"{name}:"
    return next(at for at, line in enumerate(record.splitlines(), 1) if line.startswith(begins))


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
        "makes": f"0 of {meant(makes)}",
    }
    return {key: f"{key}: {_on_one_line(value)}" for key, value in said.items()}


def first_lines(archive: Path, record: Path, kind: str = "project") -> tuple[str, ...]:
    """The line that tells an editor where the schema of a kind lies; none where the archive has none."""
    schema = schema_file(archive.resolve(), kind)
    if not schema.is_file():
        return ()
    folder = record.resolve().parent
    # On Windows there is no way from one drive to another.
    near = folder.anchor == schema.anchor
    way = Path(os.path.relpath(schema, folder)).as_posix() if near else schema.as_uri()
    return (f"# yaml-language-server: $schema={way}",)


def _on_one_line(text: str) -> str:
    return quoted(" ".join(text.split()))
