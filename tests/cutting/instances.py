"""Collections of published and of invented instances, kept outside of this archive.

The environment variable CUTTING_INSTANCES names a folder with ``cutting.json`` and
``batches.json``; without it the tests that need them are skipped. Each instance of
the first names its source: Herz 1972, Christofides and Whitlock 1977, Beasley 1985,
Hifi and Zissimopoulos 1996, Cintra et al. 2008, Furini, Malaguti and Thomopulos 2016.
"""

from __future__ import annotations

import json
import os
from fractions import Fraction
from pathlib import Path
from typing import Any

from batchleaf.core.cutting.integers import Sheet, shapes_of
from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.jobs import mm

FOLDER = os.environ.get("CUTTING_INSTANCES", "")
UNITS = {"1/16": Fraction(127, 80), "1/32": Fraction(127, 160), "mm": Fraction(1)}


def named(file: str) -> dict[str, Any]:
    """The instances of one file by name; none where there is no folder."""
    if not FOLDER:
        return {}
    found: dict[str, Any] = json.loads((Path(FOLDER) / file).read_text("utf-8"))
    return found


def of_kind(kind: str) -> dict[str, Any]:
    """The published instances of one kind."""
    return {name: entry for name, entry in named("cutting.json").items() if entry["kind"] == kind}


def sheet_of(entry: dict[str, Any], *, turns: bool) -> Sheet:
    """The sheet of a published instance with all shapes that fit."""
    shapes = tuple(
        shape
        for at, part in enumerate(entry["parts"])
        for shape in shapes_of(at, part["w"], part["h"], turns=turns)
        if shape.width <= entry["W"] and shape.height <= entry["H"]
    )
    return Sheet(entry["W"], entry["H"], shapes)


def demand(entry: dict[str, Any], *, turns: bool) -> Job:
    """Sheets without limit, each at a cost of 1, and all that is wanted as one make."""
    parts = tuple(
        PartKind(str(at), mm(part["w"], part["h"]), part["demand"], turns)
        for at, part in enumerate(entry["parts"])
    )
    return Job((Stock("sheet", mm(entry["W"], entry["H"])),), parts)


def batch(entry: dict[str, Any], *, counted: bool) -> Job:
    """An invented batch; full sheets have a number where ``counted``, scraps always."""
    unit = UNITS[entry["unit"]]
    stocks = tuple(
        Stock(
            sheet["id"],
            mm(sheet["w"] * unit, sheet["h"] * unit),
            sheet["have"] if counted or sheet["scrap"] else None,
            Fraction(sheet["cost"]),
            sheet["scrap"],
        )
        for sheet in entry["sheets"]
    )
    parts = tuple(
        PartKind(part["id"], mm(part["w"] * unit, part["h"] * unit), part["each"], part["turn"])
        for part in entry["parts"]
    )
    return Job(stocks, parts)
