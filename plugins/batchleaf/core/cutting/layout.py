"""From a tree of cuts to places on the sheet and cuts in the order of a person at a trimmer.

A piece is cut off strip by strip, each at the left or top; then the strips are
taken in hand, the first ones first. Equal strips are cut together: the stop is
set once, all of them go through, then it moves.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import groupby

from batchleaf.core.cutting.plan import Axis, Leftover, Node, PartLeaf, SheetPlan, ThroughCut
from batchleaf.core.cutting.steps import CutStep, LaidOut, PlacedPart
from batchleaf.facts.jobs import Job
from batchleaf.measure.rects import Rect


@dataclass(frozen=True, slots=True)
class _InHand:
    """A piece and what is to become of it."""

    rect: Rect
    node: Node

    @property
    def alike(self) -> tuple[Fraction, Fraction, Node]:
        """Equal for pieces that are cut alike."""
        return (self.rect.width, self.rect.height, self.node)


@dataclass(slots=True)
class _Table:
    """What has been cut so far."""

    kerf: Fraction
    parts: list[PlacedPart] = field(default_factory=list)
    leftovers: list[Rect] = field(default_factory=list)
    cuts: list[CutStep] = field(default_factory=list)


def lay_out(plan: SheetPlan, job: Job) -> LaidOut:
    """Where everything of ``plan`` lies, and its cuts in order. ``job`` knows its stock.

    Raises :class:`KeyError` where the job has no such stock.
    """
    size = {stock.id: stock.size for stock in job.stocks}[plan.stock]
    sheet = Rect(Fraction(0), Fraction(0), size.width, size.height)
    table = _Table(job.kerf)
    _cut_alike([_InHand(sheet, plan.tree)], table)
    return LaidOut(
        sheet,
        tuple(sorted(table.parts, key=lambda part: (part.rect.y, part.rect.x))),
        tuple(sorted(table.leftovers, key=lambda rect: (rect.y, rect.x))),
        tuple(table.cuts),
    )


def settings_of(laid: LaidOut) -> int:
    """How many times the stop is set for the cuts in their order."""
    return sum(1 for _ in groupby(laid.cuts, key=lambda cut: cut.setting))


def split(piece: Rect, axis: Axis, at: Fraction, kerf: Fraction) -> tuple[Rect, Rect]:
    """The two pieces a cut leaves; the second is empty where the kerf takes all that is left."""
    if axis is Axis.X:
        rest = max(Fraction(0), piece.width - at - kerf)
        return (
            Rect(piece.x, piece.y, at, piece.height),
            Rect(piece.x + piece.width - rest, piece.y, rest, piece.height),
        )
    rest = max(Fraction(0), piece.height - at - kerf)
    return (
        Rect(piece.x, piece.y, piece.width, at),
        Rect(piece.x, piece.y + piece.height - rest, piece.width, rest),
    )


def _cut_alike(pieces: list[_InHand], table: _Table) -> None:
    """Cut ``pieces``, all alike, each setting on all of them before the next."""
    node = pieces[0].node
    if not isinstance(node, ThroughCut):
        for piece in pieces:
            _put_down(piece, table)
        return
    rests = pieces
    strips: list[list[_InHand]] = [[] for _ in pieces]
    for _, run in groupby(_row(node), key=lambda cut: cut.at):
        many = len(list(run))
        for which, rest in enumerate(rests):
            here = rest
            for _ in range(many):
                first, here = _through(here, table)
                strips[which].append(first)
            rests[which] = here
    for strip, rest in zip(strips, rests, strict=True):
        strip.append(rest)
    _take_in_turn([piece for strip in strips for piece in strip], table)


def _row(node: Node) -> Iterator[ThroughCut]:
    """The cuts along one axis that follow one another on the rest of the piece."""
    axis = node.axis if isinstance(node, ThroughCut) else None
    while isinstance(node, ThroughCut) and node.axis is axis:
        yield node
        node = node.second


def _through(piece: _InHand, table: _Table) -> tuple[_InHand, _InHand]:
    cut = piece.node
    if not isinstance(cut, ThroughCut):
        raise TypeError("only a piece that is to be cut goes through the trimmer")
    first, second = split(piece.rect, cut.axis, cut.at, table.kerf)
    table.cuts.append(CutStep(len(table.cuts) + 1, piece.rect, cut.axis, cut.at, first, second))
    return _InHand(first, cut.first), _InHand(second, cut.second)


def _take_in_turn(pieces: Iterable[_InHand], table: _Table) -> None:
    """Groups of equal pieces in their order; one that needs the stop where it stands comes first."""
    groups: dict[tuple[Fraction, Fraction, Node], list[_InHand]] = {}
    for piece in pieces:
        groups.setdefault(piece.alike, []).append(piece)
    waiting = list(groups.values())
    while waiting:
        stop = table.cuts[-1].setting
        ready = [group for group in waiting if _first_setting(group[0].node) == stop]
        group = ready[0] if ready else waiting[0]
        waiting.remove(group)
        _cut_alike(group, table)


def _first_setting(node: Node) -> Fraction | None:
    return node.at if isinstance(node, ThroughCut) else None


def _put_down(piece: _InHand, table: _Table) -> None:
    match piece.node:
        case PartLeaf(part, turned):
            table.parts.append(PlacedPart(part, piece.rect, turned))
        case Leftover() if piece.rect.width and piece.rect.height:
            table.leftovers.append(piece.rect)
        case _:
            pass
