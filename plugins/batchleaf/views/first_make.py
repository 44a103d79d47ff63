"""The first make of a batch as it is collated: which of its papers each copy of each part has."""

from __future__ import annotations

from dataclasses import replace

from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Part, Project


def as_first_made(batch: BatchFigures) -> Project:
    """The batch with one paper for each copy of a part, those of the first make, where they are dealt."""
    if batch.collated is None:
        return batch.project
    parts = tuple(_as_first_made(part, batch) for part in batch.project.parts)
    return replace(batch.project, parts=parts)


def _as_first_made(part: Part, batch: BatchFigures) -> Part:
    """As it is where the record leaves open which paper of a pad it comes from."""
    copies = batch.collated.makes[0].parts.get(part.letter, ()) if batch.collated else ()
    papers = tuple(copy.paper.supply for copy in copies if copy.paper and not copy.paper.nth)
    return replace(part, papers=papers) if len(papers) == part.each else part
