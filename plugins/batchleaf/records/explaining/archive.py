"""What every record of an archive leaves to be understood."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.facts import Settings
from batchleaf.records.archive import Reading
from batchleaf.records.explaining.drawer import of_the_drawer
from batchleaf.records.explaining.inferred import Understood
from batchleaf.records.explaining.projects import of_a_batch
from batchleaf.records.nodes import Mapping


@dataclass(frozen=True, slots=True)
class Explained:
    """One file, as it was read, and all that is to be understood besides."""

    file: str
    node: Mapping
    understood: tuple[Understood, ...]


def explained(reading: Reading, settings: Settings) -> Iterator[Explained]:
    """Every batch and every file of the drawer; ``reading`` has no errors."""
    supplies = {supply.slug: supply for supply in reading.archive.supplies}
    for one in reading.drawer:
        if isinstance(one.node, Mapping):
            yield Explained(one.file, one.node, tuple(of_the_drawer(one, supplies, settings.unit)))
    projects = {project.slug: project for project in reading.archive.projects}
    for batch in reading.batches:
        if isinstance(batch.node, Mapping):
            found = of_a_batch(batch, projects[batch.slug], reading.designs, supplies, settings.unit)
            yield Explained(batch.node.place.file, batch.node, tuple(found))
