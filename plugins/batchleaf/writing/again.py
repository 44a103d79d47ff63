"""A batch made again: a new record with the design of an old one, and papers of its own.

The lines of the design are copied as they stand, remarks and all.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from batchleaf.measure.errors import MeasureError
from batchleaf.records.folder import lies_within
from batchleaf.records.grammar import read_makes
from batchleaf.writing.edits import Put, edited
from batchleaf.writing.record import planned
from batchleaf.writing.record_lines import CannotPartError, RecordLines, record_lines
from batchleaf.writing.slugs import not_there

PAPERS: Final = "papers"
TAKEN_OVER: Final = (
    *("unit", "thing", "design", "base", PAPERS, "parts"),
    *("stick", "supplies", "packing", "collate", "tools", "bench", "steps", "credit"),
)
"""Keys that say how a make is made; the others belong to the one batch."""


@dataclass(frozen=True, slots=True)
class Again:
    """What is new about it. ``papers``: role → what fills it now, for the roles that change."""

    title: str
    date: str
    makes: str
    series: str
    papers: Mapping[str, str]


def old_record(projects: Path, slug: str) -> RecordLines:
    """The record of the batch ``slug``. Raises :class:`CannotPartError`."""
    files = [file for file in projects.glob("*/project.yml") if lies_within(file, projects)]
    batches = sorted(file.parent.name for file in files)
    if slug not in batches:
        raise CannotPartError(not_there(slug, batches))
    try:
        return record_lines((projects / slug / "project.yml").read_bytes())
    except CannotPartError as error:
        raise CannotPartError(f"{projects.name}/{slug}/project.yml, {error}") from None


def roles_of(old: RecordLines) -> dict[str, str]:
    """The roles of the old record, and what filled them."""
    papers = old.values.get(PAPERS)
    filled = papers.items() if isinstance(papers, dict) else ()
    return {role: text for role, text in filled if isinstance(text, str)}


def begun_in(old: RecordLines, otherwise: str) -> str:
    """How many makes the old batch began."""
    try:
        return str(read_makes(str(old.values.get("makes", "")))[1])
    except MeasureError:
        return otherwise


def left_behind(old: RecordLines, new: Again) -> tuple[str, ...]:
    """The keys of the old record that are neither taken over nor said anew."""
    said = planned(new.title, new.date, new.makes, new.series)
    return tuple(one.key for one in old.keys if one.key not in (*TAKEN_OVER, *said))


def record_again(old: RecordLines, new: Again, first: tuple[str, ...]) -> str:
    """The record of a planned batch with the design of ``old``; ``first`` are the lines it begins with.

    Raises :class:`CannotPartError` where the old lines mean something else in their new place.
    """
    filled = _filled(old, new.papers)
    kept = [one for one in filled.keys if one.key in TAKEN_OVER]
    lines = [row.rstrip("\r\n") for one in kept for row in (*one.above, *one.lines)]
    said = planned(new.title, new.date, new.makes, new.series)
    text = "\n".join([*first, *said.values(), *lines, ""])
    values = record_lines(text.encode()).values
    if any(values[one.key] != filled.values[one.key] for one in kept) or len(values) != len(said) + len(kept):
        raise CannotPartError("its lines cannot be copied as they stand; begin a new record instead")
    return text


def _filled(old: RecordLines, papers: Mapping[str, str]) -> RecordLines:
    edits = [Put((PAPERS,), role, paper) for role, paper in papers.items()]
    return record_lines(edited(old.text, old.root, edits).encode())
