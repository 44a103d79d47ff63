"""Where something stands in the maker's files, and what is told about it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """Where something stands in the maker's files; lines and columns count from 1."""

    file: str
    line: int
    column: int


NOWHERE = Place("", 0, 0)


class Weight(StrEnum):
    """How much a problem weighs."""

    ERROR = "error"
    """The record cannot be read as meant; nothing is built from it."""
    NOTICE = "notice"
    """The record is read; the maker may want to know."""
    REMARK = "remark"
    """Nothing has to be mended; something to keep in mind. Only a check tells of it."""


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One sentence for the maker, with the place it speaks of."""

    place: Place
    sentence: str
    weight: Weight = Weight.ERROR
    line_text: str = ""
    paste: str = ""
    """Lines that would mend it, ready to be pasted into a record."""
