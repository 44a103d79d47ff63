"""The records that move the drawer, in the order in which they do.

By date; on one day openings, purchases, what batches take and keep, what went
elsewhere, counts of numbered papers and of odd pieces, counts of whole supplies: so
the count of a pad stands as it was made. Nothing depends on the order of files.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from dataclasses import dataclass
from enum import IntEnum
from graphlib import CycleError, TopologicalSorter
from itertools import groupby
from typing import Final

from batchleaf.facts import Archive, Count, Gone, Opening, Place, Project, Purchase, Scrap, Supply
from batchleaf.measure.lengths import Size


class Kind(IntEnum):
    """What moved; the number is the order on one day."""

    OPENING = 0
    BOUGHT = 1
    UNEXPLAINED = 2
    TAKEN = 3
    KEPT = 4
    GONE = 5
    COUNTED = 6


_COUNTED_PART: Final = Kind.COUNTED
_COUNTED_WHOLE: Final = Kind.COUNTED + 1
"""The order of counts on one day."""


@dataclass(frozen=True, slots=True)
class SupplyOpening:
    """What was there of a supply before the first record."""

    supply: Supply
    opening: Opening


@dataclass(frozen=True, slots=True)
class ScrapOpening:
    """Odd pieces that were there before the first record."""

    supply: Supply
    scrap: Scrap


Entry = SupplyOpening | ScrapOpening | Purchase | Project | Gone | Count
_Ordered = tuple[dt.date, int, str, Place, Entry]


def entries_of(archive: Archive, until: dt.date | None = None) -> Iterator[Entry]:
    """Every record that moves the drawer, in order; those after the day ``until`` are left out."""
    found = (entry for entry in _entries(archive) if until is None or entry[0] <= until)
    entries = sorted(found, key=lambda entry: entry[:4])
    for _, day in groupby(entries, key=lambda entry: entry[:2]):
        alike = [entry for *_, entry in day]
        batches = {entry.slug: entry for entry in alike if isinstance(entry, Project)}
        yield from _givers_first(batches) if batches else alike


def newest_day(archive: Archive) -> dt.date | None:
    """The day of the newest record that moves the drawer; ``None`` where none does."""
    return max((entry[0] for entry in _entries(archive)), default=None)


def _entries(archive: Archive) -> Iterator[_Ordered]:
    """Each record with what it is sorted by."""
    for supply in archive.supplies:
        if supply.opening:
            opening = supply.opening
            yield opening.date, Kind.OPENING, supply.slug, opening.place, SupplyOpening(supply, opening)
        for scrap in supply.scraps:
            yield scrap.date, Kind.OPENING, supply.slug, scrap.place, ScrapOpening(supply, scrap)
    for purchase in archive.purchases:
        yield purchase.date, Kind.BOUGHT, purchase.supply, purchase.place, purchase
    for project in archive.projects:
        if project.status.moves_the_drawer:
            yield project.date, Kind.TAKEN, project.slug, project.place, project
    for gone in archive.gone:
        yield gone.date, Kind.GONE, gone.supply, gone.place, gone
    papers = {supply.slug for supply in archive.supplies if supply.pad}
    for count in archive.counts:
        rank = _COUNTED_PART if count.supply in papers or count.piece else _COUNTED_WHOLE
        yield count.date, rank, count.supply, count.place, count


def _givers_first(batches: dict[str, Project]) -> Iterator[Project]:
    """The batches of one day: one that cuts a piece comes after the one that keeps it."""
    givers = {
        (cut.supply, piece.size): slug
        for slug, batch in batches.items()
        for cut in batch.cut
        for piece in cut.kept
    }
    needs = {slug: _givers_to(batch, givers) - {slug} for slug, batch in batches.items()}
    try:
        order = list(TopologicalSorter(needs).static_order())
    except CycleError:
        order = list(batches)
    yield from (batches[slug] for slug in order)


def _givers_to(batch: Project, givers: dict[tuple[str, Size], str]) -> set[str]:
    pieces = [(cut.supply, cut.scrap) for cut in batch.cut if cut.scrap is not None]
    return {givers[piece] for piece in pieces if piece in givers}
