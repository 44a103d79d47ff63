"""Groups of stocks and parts that have nothing to do with one another.

A base of card and a strip of patterned paper share no sheet, so each group is
solved alone; the batch gives as many makes as its poorest group.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from batchleaf.core.cutting.integers import Sheet


@dataclass(frozen=True, slots=True)
class Component:
    """Numbers of stocks and parts in the job, each rising."""

    stocks: tuple[int, ...]
    parts: tuple[int, ...]


def components(sheets: Sequence[Sheet], parts: int) -> tuple[Component, ...]:
    """The groups that share no sheet; stocks that hold no part are in none.

    A part that fits no sheet is a group of its own, without stocks.
    """
    groups: list[tuple[set[int], set[int]]] = [(set(), {part}) for part in range(parts)]
    for stock, sheet in enumerate(sheets):
        held = {shape.part for shape in sheet.shapes}
        touched = [group for group in groups if group[1] & held]
        if not touched:
            continue
        groups = [group for group in groups if not group[1] & held]
        stocks = {stock}.union(*(group[0] for group in touched))
        groups.append((stocks, set[int]().union(*(group[1] for group in touched))))
    found = [Component(tuple(sorted(s)), tuple(sorted(p))) for s, p in groups]
    return tuple(sorted(found, key=lambda group: group.parts))
