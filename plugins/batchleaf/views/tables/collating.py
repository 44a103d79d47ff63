"""The table of a batch's collated sets, make by make."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.core.collate.makes import Copy
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Part
from batchleaf.views import site_map
from batchleaf.views.collating_words import paper_name
from batchleaf.views.part_rows import image_words
from batchleaf.views.tables.table import Column, Table, tabled


@dataclass(frozen=True, slots=True)
class _Sorted:
    """So many parts of one letter that are alike in one make; ``keeps``: the make, by all rules."""

    make: int
    part: Part
    copy: Copy
    count: int
    keeps: bool


def collating_table(batch: BatchFigures, figures: Figures) -> Table:
    """A row for each make, part and paper; a part with images has one for each of these too."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    tools = {tool.slug: tool for tool in figures.archive.tools}
    columns: list[Column[_Sorted]] = [
        ("make", lambda row: row.make),
        ("letter", lambda row: row.part.letter),
        ("part", lambda row: row.part.name),
        ("count", lambda row: row.count),
        ("supply", lambda row: row.copy.paper.supply if row.copy.paper else None),
        ("paper", lambda row: paper_name(row.copy.paper, supplies) if row.copy.paper else None),
        ("images", lambda row: ", ".join(image_words(tools[tool], n) for tool, n in row.copy.images)),
        ("by the rule", lambda row: "yes" if row.keeps else "no"),
    ]
    address = f"{site_map.batch(batch.project.slug)}collating.csv"
    return tabled(address, "Collating", columns, _sorted(batch))


def _sorted(batch: BatchFigures) -> Iterator[_Sorted]:
    parts = {part.letter: part for part in batch.project.parts}
    for alike in batch.collated.makes if batch.collated else ():
        for make in range(alike.first, alike.last + 1):
            for letter, copies in alike.parts.items():
                for copy, count in Counter(copies).items():
                    yield _Sorted(make, parts[letter], copy, count, alike.keeps)
