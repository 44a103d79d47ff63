"""How many parts of each paper there are to be collated: what the cutting plan gives.

A record says which sheets were cut, not how many parts came from each. Where no plan gives all that
were begun, or there is none, the parts are taken to come evenly from their papers.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from batchleaf.core.batch_cutting import Cutting, alike_in
from batchleaf.core.collate.question import Paper
from batchleaf.core.cutting.plan import leaves_of
from batchleaf.core.dealing import Lot, Supplies, Wanted, lots_of, papers_of, shares
from batchleaf.facts import Origin, Part, Project

PartsCut = Mapping[str, Mapping[Paper, int]]
"""Letter → paper, in the order of the record → how many parts."""


def parts_cut(project: Project, cutting: Cutting | None, supplies: Supplies) -> PartsCut:
    """The parts of each letter that comes from a paper."""
    alike, turns = alike_in(project), Counter[tuple[Paper, ...]]()
    found: dict[str, Mapping[Paper, int]] = {}
    for part in (part for part in project.parts if part.papers):
        count = part.each * project.begun
        wanted = Wanted(part, count + part.extra, alike=part.letter in alike)
        planned = _planned(wanted, project, cutting, supplies)
        papers = tuple(planned) or _papers(part)
        if sum(planned.values()) < count:
            planned = dict(zip(papers, shares(wanted, len(papers), turns[papers]), strict=True))
        turns[papers] += 0 if wanted.alike else wanted.count
        found[part.letter] = planned
    return found


def _papers(part: Part) -> tuple[Paper, ...]:
    """The papers of a part by its record alone."""
    if part.any_of > 1:
        return tuple(Paper(part.papers[0], nth) for nth in range(1, part.any_of + 1))
    return tuple(Paper(slug) for slug in part.papers)


def _planned(
    wanted: Wanted, project: Project, cutting: Cutting | None, supplies: Supplies
) -> dict[Paper, int]:
    """How many of one part the plans give, paper by paper; nothing where they do not tell."""
    part = wanted.part
    if cutting is None or part.origin is not Origin.CUT:
        return {}
    of_line = Counter[str]()
    for plan in cutting.plans:
        of_line[plan.stock] += plan.times * leaves_of(plan.tree)[part.letter]
    lots = lots_of(cutting.sheets, project.cut_parts, supplies, counted=bool(project.cut))
    stocks = papers_of(part, lots, supplies)
    papers = {id_: _paper(name, part, lots, supplies) for name, ids in stocks.items() for id_ in ids}
    found = dict.fromkeys(papers.values(), 0)
    for line, count in of_line.items():
        mine = [papers[lot.stock.id] for lot in lots if lot.line == line and lot.stock.id in papers]
        for paper, here in zip(mine, shares(Wanted(part, count, wanted.alike), len(mine)), strict=True):
            found[paper] += here
    return found


def _paper(name: str, part: Part, lots: Sequence[Lot], supplies: Supplies) -> Paper:
    """The paper of a lot; one without a name has that of the part where both know equally many."""
    supply = next(lot.supply for lot in lots if lot.paper == name)
    if name == supply:
        return Paper(supply)
    nth = int(name.removeprefix(supply))
    unnamed = {lot.paper for lot in lots if lot.supply == supply}
    numbered = [slug for slug in part.papers if supplies[slug].pad == supply]
    return Paper(numbered[nth - 1]) if len(numbered) == len(unnamed) else Paper(supply, nth)
