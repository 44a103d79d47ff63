"""A second opinion on a plan: it shares types with the search and nothing else."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from itertools import combinations

from batchleaf.core.cutting.plan import Axis, CuttingPlan, Leftover, Node, PartLeaf, Rect, SheetPlan
from batchleaf.core.cutting.steps import LaidOut
from batchleaf.facts.jobs import Job, PartKind, Stock

_Placed = tuple[PartLeaf, Rect]


def faults(job: Job, plan: CuttingPlan) -> tuple[str, ...]:
    """Everything that is wrong with ``plan`` as an answer to ``job``; empty where it holds."""
    stocks = {stock.id: stock for stock in job.stocks}
    parts = {part.id: part for part in job.parts}
    found = []
    for number, sheet_plan in enumerate(plan.plans, 1):
        told = [f"plan {number}: {fault}" for fault in _sheet_faults(sheet_plan, stocks, parts, job.kerf)]
        found.extend(told)
    if not found:
        found.extend(_stock_faults(plan, job))
        found.extend(_count_faults(plan, job))
    return tuple(found)


def layout_faults(laid: LaidOut) -> tuple[str, ...]:
    """What is wrong with places and cuts: each cut has to go through a piece in hand, edge to edge.

    The cuts are made again in their order; what lies on the table at the end has
    to be the parts and the leftovers.
    """
    on_table = Counter({laid.sheet: 1})
    found = list(_overlaps([(part.part, part.rect) for part in laid.parts]))
    for place, cut in enumerate(laid.cuts, 1):
        if cut.n != place:
            found.append(f"cut {cut.n} stands in place {place}")
        if not on_table[cut.piece]:
            found.append(f"cut {cut.n} is not through a piece in hand")
            continue
        if not _halves_fit(cut.piece, cut.axis, cut.setting, cut.first, cut.second):
            found.append(f"cut {cut.n} does not leave the two pieces it names")
        on_table[cut.piece] -= 1
        on_table.update([cut.first, cut.second])
    left = Counter({rect: n for rect, n in on_table.items() if n and rect.width and rect.height})
    if left != Counter([part.rect for part in laid.parts]) + Counter(laid.leftovers):
        found.append("what the cuts leave on the table is not the parts and the leftovers")
    return tuple(found)


def _halves_fit(piece: Rect, axis: Axis, at: Fraction, first: Rect, second: Rect) -> bool:
    if axis is Axis.X:
        expected = Rect(piece.x, piece.y, at, piece.height)
        return (
            first == expected
            and 0 < at < piece.width
            and (second.y, second.height) == (piece.y, piece.height)
            and second.x >= piece.x + at
            and second.x + second.width == piece.x + piece.width
        )
    expected = Rect(piece.x, piece.y, piece.width, at)
    return (
        first == expected
        and 0 < at < piece.height
        and (second.x, second.width) == (piece.x, piece.width)
        and second.y >= piece.y + at
        and second.y + second.height == piece.y + piece.height
    )


def _sheet_faults(
    plan: SheetPlan, stocks: dict[str, Stock], parts: dict[str, PartKind], kerf: Fraction
) -> Iterator[str]:
    if plan.stock not in stocks:
        yield f"there is no stock {plan.stock}"
        return
    if plan.times < 1:
        yield f"{plan.times} sheets are cut like this"
    size = stocks[plan.stock].size
    placed: list[_Placed] = []
    sheet = Rect(Fraction(0), Fraction(0), size.width, size.height)
    yield from _walk(plan.tree, sheet, kerf, placed)
    for leaf, rect in placed:
        yield from _part_faults(leaf, rect, parts, plan.stock)
        if rect.x < 0 or rect.y < 0 or rect.x + rect.width > size.width or rect.y + rect.height > size.height:
            yield f"part {leaf.part} does not lie on the sheet"
    yield from _overlaps([(leaf.part, rect) for leaf, rect in placed])


def _walk(node: Node, piece: Rect, kerf: Fraction, placed: list[_Placed]) -> Iterator[str]:
    if isinstance(node, Leftover):
        return
    if isinstance(node, PartLeaf):
        placed.append((node, piece))
        return
    length = piece.width if node.axis is Axis.X else piece.height
    if not 0 < node.at < length:
        yield f"a cut at {node.at} does not lie inside a piece of {length}"
        return
    after = node.at + kerf
    rest = max(Fraction(0), length - after)
    if node.axis is Axis.X:
        first = Rect(piece.x, piece.y, node.at, piece.height)
        second = Rect(piece.x + after, piece.y, rest, piece.height)
    else:
        first = Rect(piece.x, piece.y, piece.width, node.at)
        second = Rect(piece.x, piece.y + after, piece.width, rest)
    if not rest and not isinstance(node.second, Leftover):
        yield "the kerf leaves nothing of a piece that is to be used"
        return
    yield from _walk(node.first, first, kerf, placed)
    yield from _walk(node.second, second, kerf, placed)


def _part_faults(leaf: PartLeaf, rect: Rect, parts: dict[str, PartKind], stock: str) -> Iterator[str]:
    part = parts.get(leaf.part)
    if part is None:
        yield f"there is no part {leaf.part}"
        return
    if leaf.turned and not part.turns:
        yield f"part {leaf.part} is turned and may not be"
    if rect.size != (part.size.turned if leaf.turned else part.size):
        yield f"part {leaf.part} is cut {rect.width} by {rect.height}"
    if part.sources and stock not in part.sources:
        yield f"part {leaf.part} may not be cut from {stock}"


def _overlaps(placed: list[tuple[str, Rect]]) -> Iterator[str]:
    for (one, a), (other, b) in combinations(placed, 2):
        beside = a.x + a.width <= b.x or b.x + b.width <= a.x
        above = a.y + a.height <= b.y or b.y + b.height <= a.y
        if not beside and not above:
            yield f"parts {one} and {other} overlap"


def _stock_faults(plan: CuttingPlan, job: Job) -> Iterator[str]:
    used: Counter[str] = Counter()
    for sheet_plan in plan.plans:
        used[sheet_plan.stock] += sheet_plan.times
    for stock in job.stocks:
        if stock.have is not None and used[stock.id] > stock.have:
            yield f"{used[stock.id]} sheets of {stock.id} are cut and {stock.have} are there"


def _count_faults(plan: CuttingPlan, job: Job) -> Iterator[str]:
    cut: Counter[str] = Counter()
    for sheet_plan in plan.plans:
        for name, many in _leaves(sheet_plan.tree).items():
            cut[name] += many * sheet_plan.times
    spares = {}
    for part in job.parts:
        over = cut[part.id] - part.each * plan.makes
        if over < 0:
            yield f"{cut[part.id]} of part {part.id} are too few for {plan.makes} makes"
        if over > 0:
            spares[part.id] = over
    if dict(plan.spares) != spares or len(plan.spares) != len(spares):
        yield f"the spares are {spares} and not {dict(plan.spares)}"
    if plan.bound < plan.makes:
        yield f"{plan.makes} makes are more than the bound of {plan.bound}"


def _leaves(node: Node) -> Counter[str]:
    if isinstance(node, PartLeaf):
        return Counter([node.part])
    if isinstance(node, Leftover):
        return Counter()
    return _leaves(node.first) + _leaves(node.second)
