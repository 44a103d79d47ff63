"""Rows of supplies as lines of a new file of the drawer: those that it has not and that can be read."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence

from batchleaf.facts import Problem, Settings
from batchleaf.measure.errors import MeasureError
from batchleaf.records.archive import Reading
from batchleaf.records.nodes import Plain, key_place
from batchleaf.writing.block import entry
from batchleaf.writing.csv_in.found import Found, Remark
from batchleaf.writing.csv_in.said import Said
from batchleaf.writing.csv_in.supplies import Names, Usual, supply_in
from batchleaf.writing.csv_in.tried import tried


def new_supplies(
    rows: Iterable[Said], reading: Reading, settings: Settings, usual: Usual, found: Found
) -> tuple[list[str], int]:
    """The lines of the new file, and how many rows stand in them. Raises :class:`CannotMapError`."""
    new = dict(_not_there(rows, reading, settings, usual, found))
    while new:
        lines = ["supplies:", *_below({slug: supply for slug, (_, supply) in new.items()})]
        read = tried(lines, reading, settings)
        starts = [key_place(read.node, ("supplies", slug)).line for slug in new]
        faulty = _by_start(read.problems, starts, list(new))
        if not faulty:
            return lines, len(new)
        found.faults += (Remark(new[slug][0], sentence) for slug, sentence in faulty)
        new = {slug: one for slug, one in new.items() if slug not in dict(faulty)}
    return [], 0


def _not_there(
    rows: Iterable[Said], reading: Reading, settings: Settings, usual: Usual, found: Found
) -> Iterator[tuple[str, tuple[int, dict[str, Plain]]]]:
    archive = reading.archive
    kept = {one.slug: one for one in archive.supplies if not one.supposed}
    names = Names(kept, frozenset(tool.slug for tool in archive.tools))
    for said in rows:
        if slug := names.there(said):
            found.there.append(Remark(said.line, f"“{slug}” is in the drawer already; it is left as it is"))
            continue
        try:
            yield names.take(said), (said.line, supply_in(said, usual, settings))
        except MeasureError as error:
            found.faults.append(Remark(said.line, str(error)))


def _below(group: dict[str, dict[str, Plain]]) -> Iterator[str]:
    for slug, supply in group.items():
        yield from entry(slug, dict(supply), 2)


def _by_start(problems: Sequence[Problem], starts: list[int], names: list[str]) -> list[tuple[str, str]]:
    """Each problem with the name below which it stands."""
    return [
        (names[max(bisect_right(starts, problem.place.line) - 1, 0)], problem.sentence)
        for problem in problems
    ]
