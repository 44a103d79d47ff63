"""What the models of several pages are made of: lines with links, pictures."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Link:
    """Words that lead somewhere; ``tie``: what ties the maker to those it leads to, in a word, or nothing."""

    text: str
    href: str
    tie: str = ""


@dataclass(frozen=True, slots=True)
class Aside:
    """Words in the quieter voice of a note within a line."""

    text: str


Line = tuple[str | Link | Aside, ...]
"""A sentence, some of whose words are links or quiet."""


def text_of(line: Line) -> str:
    """The words of a line alone."""
    return "".join(piece if isinstance(piece, str) else piece.text for piece in line)


@dataclass(frozen=True, slots=True)
class Source:
    """One format of a picture in its widths: ``(href, width in px)``, smallest first."""

    media_type: str
    files: tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A photo in WebP and JPEG; ``width`` and ``height`` of the largest, for a steady layout."""

    sources: tuple[Source, ...]
    fallback: str
    width: int
    height: int
    alt: str
