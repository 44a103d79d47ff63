"""The bench: tools, and the images of stamps and dies."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.views.pages.pieces import Line, Link


@dataclass(frozen=True, slots=True)
class ImageRow:
    """One image of a set of stamps or dies, under its number."""

    number: str
    words: str
    size: str


@dataclass(frozen=True, slots=True)
class ToolRow:
    """One tool: what it is, how far it goes, which batches need it.

    ``anchor`` is its place on the page; ``tie``: what ties the maker to its seller, in a word.
    """

    anchor: str
    name: str
    about: str
    facts: tuple[tuple[str, str], ...]
    """Label and text: its limits, terms of sale."""
    images: tuple[ImageRow, ...]
    link: Link | None
    used_in: tuple[Link, ...]
    tie: str = ""


@dataclass(frozen=True, slots=True)
class BenchShelf:
    """Tools of one kind."""

    heading: str
    rows: tuple[ToolRow, ...]


@dataclass(frozen=True, slots=True)
class BenchPage:
    """The bench: every tool with its limits."""

    title: str
    sentence: Line
    shelves: tuple[BenchShelf, ...]
    disclosure: str = ""
