"""Jobs and plans as text that can be kept and read again, the same on every machine."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import lru_cache
from typing import Any, TypeVar

from batchleaf.core.cutting.from_one_sheet import FromOneSheet
from batchleaf.core.cutting.plan import (
    Axis,
    CostPlan,
    CuttingPlan,
    Least,
    Leftover,
    Node,
    PartLeaf,
    SheetPlan,
    ThroughCut,
)
from batchleaf.facts.jobs import Job

Plan = TypeVar("Plan", CuttingPlan, CostPlan)


def job_text(job: Job) -> str:
    """All that an answer to ``job`` depends on."""
    stocks = [
        [one.id, str(one.size.width), str(one.size.height), one.have, str(one.cost), one.scrap, one.name]
        for one in job.stocks
    ]
    parts = [
        [one.id, str(one.size.width), str(one.size.height), one.each, one.turns, one.sources, one.name]
        for one in job.parts
    ]
    return json.dumps([stocks, parts, str(job.kerf)], ensure_ascii=True, separators=(",", ":"))


def plan_text(plan: CuttingPlan | CostPlan) -> str:
    """A plan, to be read by :func:`read_most` or :func:`read_cheapest`."""
    sheets = [[one.stock, one.times, list(_spelt(one.tree))] for one in plan.plans]
    best = str(plan.cost) if isinstance(plan, CostPlan) else None
    bound = None if plan.bound is None else str(plan.bound)
    return json.dumps([plan.makes, best, bound, plan.reason, sheets, plan.spares], ensure_ascii=True)


def read_most(text: str) -> CuttingPlan:
    """The plan for the most makes that :func:`plan_text` spelt."""
    makes, _, bound, reason, sheets, spares = json.loads(text)
    return CuttingPlan(makes, int(bound), reason, _sheets(sheets), _spares(spares))


def read_cheapest(text: str) -> CostPlan:
    """The plan for the least cost that :func:`plan_text` spelt."""
    makes, cost, bound, reason, sheets, spares = json.loads(text)
    return CostPlan(makes, _amount(cost), _amount(bound), reason, _sheets(sheets), _spares(spares))


def least_text(least: Least) -> str:
    """Both figures, to be read by :func:`read_least`."""
    return json.dumps([None if one is None else str(one) for one in (least.cost, least.bound)])


def read_least(text: str) -> Least:
    """What :func:`least_text` spelt."""
    cost, bound = json.loads(text)
    return Least(_amount(cost), _amount(bound))


def one_sheet_text(found: FromOneSheet) -> str:
    """The counts, to be read by :func:`read_one_sheet`."""
    return json.dumps([found.grid, found.through, found.at_most, found.stopped])


def read_one_sheet(text: str) -> FromOneSheet:
    """What :func:`one_sheet_text` spelt."""
    return FromOneSheet(*json.loads(text))


def _amount(text: str | None) -> Fraction | None:
    return None if text in (None, "None") else Fraction(str(text))


def _sheets(sheets: Sequence[Any]) -> tuple[SheetPlan, ...]:
    return tuple(SheetPlan(stock, times, _tree(spelt)) for stock, times, spelt in sheets)


def _spares(spares: Sequence[Any]) -> tuple[tuple[str, int], ...]:
    return tuple((part, many) for part, many in spares)


def _spelt(tree: Node) -> Iterator[str]:
    """The nodes before what is below them; a tree may be too deep to walk it otherwise."""
    waiting: list[Node] = [tree]
    while waiting:
        node = waiting.pop()
        match node:
            case PartLeaf(part, turned):
                yield f"{'t' if turned else 'p'}{part}"
            case Leftover():
                yield "-"
            case ThroughCut(axis, at, first, second):
                yield f"{axis.value}{at}"
                waiting += (second, first)


def _tree(spelt: Sequence[str]) -> Node:
    """Read from the end, where both pieces of a cut come before it."""
    done: list[Node] = []
    for node in reversed(spelt):
        kind, rest = node[:1], node[1:]
        match kind:
            case "p" | "t":
                done.append(PartLeaf(rest, turned=kind == "t"))
            case "-":
                done.append(Leftover())
            case _:
                first, second = done.pop(), done.pop()
                done.append(ThroughCut(*_cut(node), first, second))
    (tree,) = done
    return tree


@lru_cache(maxsize=4096)
def _cut(spelt: str) -> tuple[Axis, Fraction]:
    """Remembered: plans of a batch cut at the same few places."""
    return Axis(spelt[0]), Fraction(spelt[1:])
