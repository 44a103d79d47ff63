"""What is missing from the cost of a batch, in words."""

from __future__ import annotations

from batchleaf.core.costing import Unpriced
from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Supply
from batchleaf.views.words import counted, listed


def is_whole(batch: BatchFigures) -> bool:
    """True where nothing is missing from the cost, so far as it is counted."""
    return batch.cost_is_whole


def missing(batch: BatchFigures, supplies: dict[str, Supply]) -> str:
    """``the ribbon``, ``1 scrap of slate card``, ``the paper``: whose price is not in the sum."""
    paper = ["the paper"] if batch.paper_unknown else []
    return listed([*paper, *(_in_words(lack, supplies[lack.supply]) for lack in batch.lacks)])


def _in_words(lack: Unpriced, supply: Supply) -> str:
    if lack.partly:
        return f"part of the {supply.name}"
    if lack.pieces:
        return f"{counted(lack.pieces, 'scrap', 'scraps')} of {supply.name}"
    return f"the {supply.name}"
