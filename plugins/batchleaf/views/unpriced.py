"""What is missing from the cost of a batch, in words."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.costing import BatchCost, CostLine
from batchleaf.core.figures import BatchFigures
from batchleaf.core.movements import Draw
from batchleaf.facts import Supply
from batchleaf.views.words import counted, listed


def is_counted(cost: BatchCost) -> bool:
    """True where at least one supply was measured, so that a cost means something."""
    return any(line.measured for line in cost.lines)


def is_whole(batch: BatchFigures) -> bool:
    """True where nothing is missing from the cost, so far as it is counted."""
    return not batch.cost.without and not batch.paper_unknown


def missing(batch: BatchFigures, supplies: dict[str, Supply]) -> str:
    """``the ribbon``, ``1 scrap of slate card``, ``the paper``: whose price is not in the sum."""
    names = ["the paper"] if batch.paper_unknown else []
    for line in batch.cost.lines:
        names += _missing_of(line, supplies[line.supply])
    return listed(names)


def _missing_of(line: CostLine, supply: Supply) -> Iterator[str]:
    unpriced = [draw for draw in line.draws if not draw.cost.complete]
    if unpriced and len(unpriced) == len(line.draws) and not line.cost.known:
        yield f"the {supply.name}"
        return
    for draw in unpriced:
        yield _missing_draw(draw, supply)


def _missing_draw(draw: Draw, supply: Supply) -> str:
    if draw.cost.known:
        return f"part of the {supply.name}"
    if draw.piece is not None and draw.quantity is not None:
        return f"{counted(int(draw.quantity), 'scrap', 'scraps')} of {supply.name}"
    return f"the {supply.name}"
