"""What costs something, and what does not.

Sheets that cost nothing and never run out give whatever fits on them for nothing. What
they give is asked for by itself, from as little paper as can be; the rest is a question
of cost without them.
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import dataclass, replace

from batchleaf.core.cutting.choose import Terms
from batchleaf.core.cutting.integers import Sheet


@dataclass(frozen=True, slots=True)
class Asked:
    """Some parts from some stocks; not ``charged``: the costs are areas, and nobody pays them."""

    sheets: tuple[Sheet, ...]
    wanted: Terms
    charged: bool


def by_charge(sheets: Sequence[Sheet], wanted: Terms) -> tuple[Asked, ...]:
    """``wanted`` in one or two questions that have nothing to do with one another."""
    free = [stock for stock, have in wanted.have.items() if have is None and not wanted.cost[stock]]
    given = {shape.part for stock in free for shape in sheets[stock].shapes}
    if not given:
        return (Asked(tuple(sheets), wanted, charged=True),)
    areas = {stock: sheet.width * sheet.height for stock, sheet in enumerate(sheets)}
    gift = _only(sheets, replace(wanted, cost=areas), given, free, charged=False)
    rest = [part for part in wanted.parts if part not in given]
    return (gift, _only(sheets, wanted, rest, wanted.have, charged=True)) if rest else (gift,)


def _only(
    sheets: Sequence[Sheet], wanted: Terms, parts: Container[int], stocks: Container[int], *, charged: bool
) -> Asked:
    kept = tuple(
        replace(sheet, shapes=tuple(shape for shape in sheet.shapes if shape.part in parts))
        for sheet in sheets
    )
    have = {stock: n for stock, n in wanted.have.items() if stock in stocks and kept[stock].shapes}
    each = {part: many for part, many in wanted.each.items() if part in parts}
    cost = {stock: wanted.cost[stock] for stock in have}
    return Asked(
        kept, Terms(tuple(part for part in wanted.parts if part in parts), each, have, cost), charged
    )
