"""What other numbers of makes take, for programs: the key ``for_makes`` of ``figures.json``."""

from __future__ import annotations

from typing import Any

from batchleaf.core.figures import BatchFigures
from batchleaf.core.for_makes import ForMakes, Needed
from batchleaf.facts import Settings, Supply

Json = dict[str, Any]


def for_makes_json(batch: BatchFigures, supplies: dict[str, Supply], settings: Settings) -> Json:
    """Missing where nothing is known to follow the number of makes."""
    found = [_one(one, supplies, settings) for one in batch.for_makes]
    return {"for_makes": found} if found else {}


def _one(one: ForMakes, supplies: dict[str, Supply], settings: Settings) -> Json:
    told = {
        "makes": one.makes,
        "sheets": [{"supply": needed.supply, "sheets": int(needed.quantity or 0)} for needed in one.sheets],
        "proved": one.proved,
        "supplies": [_use(use, supplies[use.supply]) for use in one.uses],
    }
    if one.cost is None:
        return told
    amount = settings.currency.plain(one.cost.known)
    return told | {"cost": {"amount": amount, "complete": one.cost.complete, "without": list(one.without)}}


def _use(use: Needed, supply: Supply) -> Json:
    """``amount`` is ``None`` where nobody measures it; ``scales``: whether it follows the number."""
    amount = None if use.quantity is None else str(use.quantity)
    return {"supply": use.supply, "amount": amount, "unit": supply.unit, "scales": use.scales}
