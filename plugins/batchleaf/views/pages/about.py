"""Pages about the pages: how numbers are worked out, what cannot be read, what has moved."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line


@dataclass(frozen=True, slots=True)
class HowPage:
    """How each number is worked out: anchor, heading, paragraphs."""

    title: str
    sentence: Line
    sections: tuple[HowSection, ...]


@dataclass(frozen=True, slots=True)
class HowSection:
    """One number explained."""

    anchor: str
    heading: str
    paragraphs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ProblemRow:
    """One problem: where, the sentence, the line it speaks of and a caret under it."""

    where: str
    sentence: str
    line_text: str
    caret: str


@dataclass(frozen=True, slots=True)
class ProblemsPage:
    """Shown while serving, when a record cannot be read."""

    title: str
    sentence: Line
    rows: tuple[ProblemRow, ...]


@dataclass(frozen=True, slots=True)
class MovedPage:
    """Stands at an old address and leads to the new one."""

    title: str
    sentence: Line
    href: str
