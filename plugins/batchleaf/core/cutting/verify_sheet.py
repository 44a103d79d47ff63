"""A second opinion on one sheet: its tree of cuts, and the places that follow from it.

It shares types with the search and nothing else, and takes about a microsecond for
each number it looks at, so that an answer with thousands of parts can be checked
before it is shown.
"""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.facts.jobs import PartKind, Stock
from batchleaf.measure.rects import Rect


@dataclass(slots=True)
class Pieces:
    """What a tree gives: how often each part, and what is wrong with it, each fault once."""

    parts: Counter[str] = field(default_factory=Counter)
    faults: dict[str, None] = field(default_factory=dict)


def pieces_of(tree: Node, stock: Stock, parts: Mapping[str, PartKind], kerf: Fraction) -> Pieces:
    """The pieces that ``tree`` cuts from one sheet of ``stock``.

    Positions need not be known: the two pieces of a cut that goes through a piece lie
    inside it and apart, and so do all that are cut from them.
    """
    found = Pieces()
    waiting: list[tuple[Node, Fraction, Fraction]] = [(tree, stock.size.width, stock.size.height)]
    while waiting:
        node, width, height = waiting.pop()
        if isinstance(node, Leftover):
            continue
        if isinstance(node, PartLeaf):
            found.parts[node.part] += 1
            found.faults |= dict.fromkeys(_part_faults(node, width, height, parts, stock.id))
            continue
        length = width if node.axis is Axis.X else height
        rest = length - node.at - kerf
        if not 0 < node.at < length:
            found.faults[f"a cut at {node.at} does not lie inside a piece of {length}"] = None
        elif rest <= 0 and not isinstance(node.second, Leftover):
            found.faults["the kerf leaves nothing of a piece that is to be used"] = None
        elif node.axis is Axis.X:
            waiting += ((node.first, node.at, height), (node.second, rest, height))
        else:
            waiting += ((node.first, width, node.at), (node.second, width, rest))
    return found


def _part_faults(
    leaf: PartLeaf, width: Fraction, height: Fraction, parts: Mapping[str, PartKind], stock: str
) -> Iterator[str]:
    part = parts.get(leaf.part)
    if part is None:
        yield f"there is no part {leaf.part}"
        return
    if leaf.turned and not part.turns:
        yield f"part {leaf.part} is turned and may not be"
    size = part.size.turned if leaf.turned else part.size
    if (width, height) != (size.width, size.height):
        yield f"part {leaf.part} is cut {width} by {height}"
    if part.sources and stock not in part.sources:
        yield f"part {leaf.part} may not be cut from {stock}"


def layout_faults(laid: LaidOut) -> tuple[str, ...]:
    """What is wrong with places and cuts: each cut has to go through a piece in hand, edge to edge.

    The cuts are made again in their order; what lies on the table at the end has
    to be the parts and the leftovers.
    """
    on_table = Counter({laid.sheet: 1})
    found = list(overlaps([(part.part, part.rect) for part in laid.parts]))
    for place, cut in enumerate(laid.cuts, 1):
        if cut.n != place:
            found.append(f"cut {cut.n} stands in place {place}")
        if not on_table[cut.piece]:
            found.append(f"cut {cut.n} is not through a piece in hand")
            continue
        if not _halves_fit(cut):
            found.append(f"cut {cut.n} does not leave the two pieces it names")
        on_table[cut.piece] -= 1
        on_table.update([cut.first, cut.second])
    left = Counter({rect: n for rect, n in on_table.items() if n and rect.width and rect.height})
    if left != Counter([part.rect for part in laid.parts]) + Counter(laid.leftovers):
        found.append("what the cuts leave on the table is not the parts and the leftovers")
    return tuple(found)


def _halves_fit(cut: CutStep) -> bool:
    piece, first, second = cut.piece, cut.first, cut.second
    if cut.axis is Axis.X:
        return (
            first == Rect(piece.x, piece.y, cut.setting, piece.height)
            and 0 < cut.setting < piece.width
            and (second.y, second.height) == (piece.y, piece.height)
            and second.x >= piece.x + cut.setting
            and second.x + second.width == piece.x + piece.width
        )
    return (
        first == Rect(piece.x, piece.y, piece.width, cut.setting)
        and 0 < cut.setting < piece.height
        and (second.x, second.width) == (piece.x, piece.width)
        and second.y >= piece.y + cut.setting
        and second.y + second.height == piece.y + piece.height
    )


def overlaps(placed: Sequence[tuple[str, Rect]]) -> Iterator[str]:
    """Parts that lie on one another, found by a line that sweeps from left to right.

    Those under the line are kept from top to bottom; as long as they lie apart, a new one
    can only lie on its neighbours. One that does is told and not kept.
    """
    events = sorted(
        [(rect.x + rect.width, 0, at) for at, (_, rect) in enumerate(placed)]
        + [(rect.x, 1, at) for at, (_, rect) in enumerate(placed)]
    )
    tops: list[Fraction] = []
    under: list[int] = []
    for _, begins, at in events:
        name, rect = placed[at]
        place = bisect_left(tops, rect.y)
        if not begins:
            if place < len(under) and under[place] == at:
                del tops[place], under[place]
            continue
        for other in under[max(0, place - 1) : place + 1]:
            beside = placed[other][1]
            if beside.y < rect.y + rect.height and rect.y < beside.y + beside.height:
                yield f"parts {placed[other][0]} and {name} overlap"
                break
        else:
            tops.insert(place, rect.y)
            under.insert(place, at)
