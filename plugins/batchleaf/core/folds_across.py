"""Folds that run across the fibres of their paper, as the plan lays the parts on its sheets.

Across the grain a fold of card cracks (common practice); a part lies so where that saves paper,
or where its pattern has an up.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.with_the_grain import leaves
from batchleaf.facts import Part, Problem, Project, Supply, Weight

Supplies = Mapping[str, Supply]


def folds_across(project: Project, cutting: Cutting | None, supplies: Supplies) -> Iterator[Problem]:
    """One notice for each part of which some copies fold across the grain of one paper."""
    if cutting is None:
        return
    folded = {part.letter: part for part in project.cut_parts if len(_ways(part)) == 1}
    across, of = Counter[tuple[str, str]](), Counter[tuple[str, str]]()
    for letter, slug, count, runs_along in _laid(folded, cutting, supplies):
        of[letter, slug] += count
        across[letter, slug] += 0 if runs_along else count
    for (letter, slug), count in across.items():
        if count:
            yield _notice(folded[letter], supplies[slug], count, of[letter, slug])


def _ways(part: Part) -> set[bool]:
    return {score.runs_down for score in part.scores}


def _laid(
    folded: Mapping[str, Part], cutting: Cutting, supplies: Supplies
) -> Iterator[tuple[str, str, int, bool]]:
    """Letter, paper, how many, and whether their folds run with its grain; scraps have lost theirs."""
    for plan in cutting.plans:
        cut = cutting.sheets[plan.stock]
        grain = supplies[cut.supply].grain_runs_down
        if grain is None or cut.scrap is not None:
            continue
        for leaf in leaves(plan.tree):
            if leaf.part in folded:
                runs_down = _ways(folded[leaf.part]) == {True}
                yield leaf.part, cut.supply, plan.times, (runs_down is not leaf.turned) is grain


def _notice(part: Part, paper: Supply, count: int, of: int) -> Problem:
    many = "" if count == of else f" on {count} of {of}"
    why = "" if part.turns else ", since it may not be turned"
    return Problem(
        part.place,
        f"{part.letter} folds across the grain of {paper.name}{many}{why}; score it well before it is folded",
        Weight.NOTICE,
    )
