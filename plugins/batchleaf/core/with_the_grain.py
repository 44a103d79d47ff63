"""Folds along the fibres: clean where the grain runs with them, cracked where it runs across.

That a fold should run with the grain is common practice among printers and bookbinders. Here
it is a wish: parts lie so where that takes no more paper.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from batchleaf.core.cutting.plan import CostPlan, Leftover, Node, PartLeaf, ThroughCut
from batchleaf.facts import Part, Supply
from batchleaf.facts.jobs import Job, PartKind


def lies_turned(part: Part, papers: Iterable[Supply]) -> bool | None:
    """Whether a part lies turned if it folds with the grain; ``None`` where that is no question.

    It is none without folds, with folds both ways, where the part may not turn or a turn changes
    nothing, and where the papers disagree or their grain is not known.
    """
    folds = {score.runs_down for score in part.scores}
    if len(folds) != 1 or not part.turns or part.size.width == part.size.height:
        return None
    grains = {paper.grain_runs_down for paper in papers}
    if len(grains) != 1 or None in grains:
        return None
    return folds != grains


def lying(job: Job, turned: Mapping[str, bool]) -> Job:
    """``job`` with parts that may lie one way only: turned, or not."""
    return replace(job, parts=tuple(_one_way(kind, turned) for kind in job.parts))


def _one_way(kind: PartKind, turned: Mapping[str, bool]) -> PartKind:
    if kind.id not in turned:
        return kind
    return replace(kind, size=kind.size.turned if turned[kind.id] else kind.size, turns=False)


def all_lie(plan: CostPlan, turned: Mapping[str, bool]) -> bool:
    """Whether every part of ``plan`` lies as it is wished."""
    return all(
        leaf.turned == turned.get(leaf.part, leaf.turned) for one in plan.plans for leaf in leaves(one.tree)
    )


def told_as_asked(plan: CostPlan, turned: Mapping[str, bool]) -> CostPlan:
    """A plan for :func:`lying` parts in the sizes that were asked for first."""
    return replace(plan, plans=tuple(replace(one, tree=_marked(one.tree, turned)) for one in plan.plans))


def leaves(tree: Node) -> Iterable[PartLeaf]:
    """Every part that a tree of cuts gives."""
    waiting = [tree]
    while waiting:
        node = waiting.pop()
        if isinstance(node, PartLeaf):
            yield node
        elif isinstance(node, ThroughCut):
            waiting += (node.first, node.second)


def _marked(tree: Node, turned: Mapping[str, bool]) -> Node:
    match tree:
        case PartLeaf(part=part):
            return replace(tree, turned=turned.get(part, tree.turned))
        case ThroughCut(first=first, second=second):
            return replace(tree, first=_marked(first, turned), second=_marked(second, turned))
        case Leftover():
            return tree
