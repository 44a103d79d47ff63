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


class InBoth(str):
    """Words with lengths in the unit of the record; ``other``: the same in the other, for who chooses it.

    It is text like any other. Only where a page is written does the second wording come along.
    """

    __slots__ = ("other",)
    other: str

    @classmethod
    def of(cls, written: str, other: str) -> InBoth:
        """Both wordings."""
        made = cls(written)
        made.other = other
        return made

    @property
    def pieces(self) -> tuple[str, str, str, str]:
        """What both begin with, the words in which they differ in either, what both end with."""
        mine, theirs = self.split(" "), self.other.split(" ")
        before = _alike(mine, theirs)
        after = _alike(mine[before:][::-1], theirs[before:][::-1])
        middle = slice(before, len(mine) - after), slice(before, len(theirs) - after)
        start, end = mine[:before], mine[len(mine) - after :]
        return (
            " ".join([*start, ""]) if start else "",
            " ".join(mine[middle[0]]),
            " ".join(theirs[middle[1]]),
            " ".join(["", *end]) if end else "",
        )


def _alike(mine: list[str], theirs: list[str]) -> int:
    """How many words both begin with; one at least is left over."""
    most = min(len(mine), len(theirs)) - 1
    return next((i for i in range(most) if mine[i] != theirs[i]), max(most, 0))


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
