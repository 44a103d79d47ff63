"""Lines of a file to come, tried beside the drawer as it stands: read as all records are, and not written."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.facts import Problem, Purchase, Settings, Weight
from batchleaf.records.archive import Reading
from batchleaf.records.drawer import read_drawer
from batchleaf.records.inventory import InventoryFile
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Node
from batchleaf.records.purchases import purchases_of
from batchleaf.records.report import Report
from batchleaf.records.shape import Shaped, shaped
from batchleaf.records.written import InventoryWritten
from batchleaf.records.yaml_text import LARGEST, read_yaml
from batchleaf.writing.csv_in.columns import CannotMapError

TRIED: Final = "the new file"


@dataclass(frozen=True, slots=True)
class Tried:
    """What is wrong with the lines, where everything of them stands, and what they buy."""

    problems: tuple[Problem, ...]
    node: Node
    bought: tuple[Purchase, ...]


def tried(lines: Sequence[str], reading: Reading, settings: Settings) -> Tried:
    """A file of these lines, read. Raises :class:`CannotMapError` where it cannot be one."""
    data = "".join(f"{line}\n" for line in lines).encode()
    if len(data) > LARGEST:
        raise CannotMapError(f"it would be a record larger than {LARGEST // 1024} kB; part the sheet")
    node, unread = read_yaml(data, TRIED)
    if node is None:
        raise CannotMapError(f"it cannot be written as a record: {unread[0].sentence}")
    shape, report = shaped(node, InventoryWritten, "a file of the drawer"), Report()
    bought = _bought(node, shape, reading, settings, report)
    told = {problem.place for problem in shape.problems}
    found = [*unread, *shape.problems, *(one for one in report.found if one.place not in told)]
    errors = (one for one in found if one.weight is Weight.ERROR and one.place.file == TRIED)
    return Tried(tuple(errors), node, bought)


def _bought(
    node: Node, shape: Shaped[InventoryWritten], reading: Reading, settings: Settings, report: Report
) -> tuple[Purchase, ...]:
    if shape.written is None:
        return ()
    one = InventoryFile(TRIED, node, shape.written)
    drawer = read_drawer([*reading.drawer, one], settings, report)
    known = KnownSupplies(drawer.supplies, frozenset(), all_lost=False, tools=drawer.tools)
    return tuple(purchases_of(one, known, settings, report))
