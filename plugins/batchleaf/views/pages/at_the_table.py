"""The page for the table: a form that answers by itself, without any record."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class UsualSize:
    """A sheet that is laid down by one press: its name, its size as one writes it, and in which units."""

    name: str
    size: str
    units: str


@dataclass(frozen=True, slots=True)
class TablePage:
    """``site``: what the archive is called; ``back``: the way to its first page.

    ``unit``: that of the archive, one of ``units`` (as written, in words). ``signs``: signs that a
    phone's keys hide, each with its name.
    """

    site: str
    back: str
    unit: str
    units: tuple[tuple[str, str], ...]
    usual: tuple[UsualSize, ...]
    signs: tuple[tuple[str, str], ...]
