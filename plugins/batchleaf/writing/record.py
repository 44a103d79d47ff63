"""A new record, from a few answers."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from batchleaf.writing.plain_value import quoted

SCHEMA_LINE: Final = "# yaml-language-server: $schema=../../.batchleaf/project.schema.json"


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


def record_text(answers: Answers) -> str:
    """The record of a planned batch, ready to be filled."""
    lines = [
        SCHEMA_LINE,
        f"title: {quoted(answers.title)}",
        "format: 1",
        f"date: {quoted(answers.date)}",
        *([f"series: {quoted(answers.series)}"] if answers.series else []),
        "status: planned",
        f"makes: 0 of {quoted(answers.makes)}",
        f"base: {quoted(answers.base)}",
        "papers:",
        f"  base: {quoted(answers.paper)}",
    ]
    return "\n".join(lines) + "\n"
