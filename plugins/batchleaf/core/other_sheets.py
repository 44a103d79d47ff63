"""A batch cut from other sheets: those that are sold where a reader lives.

Every paper of the batch is taken to come in that size, whole and untrimmed, as many sheets as it
takes; the parts stay as they are.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from batchleaf.core.batch_cutting import Cutting, Planner, cutting_of
from batchleaf.facts import Grain, OtherSheet, Part, Project, Status, Supply, Trim

Supplies = Mapping[str, Supply]


@dataclass(frozen=True, slots=True)
class OnOther:
    """The makes begun from one other size of sheet.

    ``project`` and ``papers``: the batch as it would be, and its papers in that size. ``too_large``:
    the first part that does not fit; there is no ``cutting`` then, nor where none was found.
    """

    sheet: OtherSheet
    project: Project
    papers: Supplies
    cutting: Cutting | None
    too_large: Part | None = None

    def needed(self, slug: str) -> int:
        """How many sheets of a paper it takes."""
        cuts = self.cutting.sheets.values() if self.cutting else ()
        return sum(cut.count for cut in cuts if cut.supply == slug)


def on_other_sheets(
    project: Project, supplies: Supplies, sheets: tuple[OtherSheet, ...], planner: Planner
) -> Iterator[OnOther]:
    """One for each size; none of a size that all its papers have, nor of a batch without a plan."""
    parts = project.cut_parts
    slugs = dict.fromkeys(slug for part in parts for slug in part.papers)
    if not parts or not slugs or not project.begun:
        return
    own = {supplies[slug].usable.upright for slug in slugs}
    planned = replace(project, status=Status.PLANNED, cut=())
    for sheet in sheets:
        if own != {sheet.size.upright}:
            yield _on(sheet, planned, supplies, slugs, planner)


def _on(
    sheet: OtherSheet, planned: Project, supplies: Supplies, slugs: Mapping[str, None], planner: Planner
) -> OnOther:
    resized = {slug: _resized(supplies[slug], sheet) for slug in (*slugs, *_pads(slugs, supplies))}
    papers = {**supplies, **resized}
    too_large = next((part for part in planned.cut_parts if not _fits(part, sheet)), None)
    if too_large:
        return OnOther(sheet, planned, papers, None, too_large)
    return OnOther(sheet, planned, papers, cutting_of(planned, papers, planner))


def _pads(slugs: Mapping[str, None], supplies: Supplies) -> dict[str, None]:
    return dict.fromkeys(supplies[slug].pad for slug in slugs if supplies[slug].pad in supplies)


def _resized(paper: Supply, sheet: OtherSheet) -> Supply:
    """Which way the fibres of another sheet run nobody knows."""
    return replace(paper, size=sheet.size, trim=Trim(), grain=Grain.UNKNOWN, scraps=())


def _fits(part: Part, sheet: OtherSheet) -> bool:
    ways = (part.cut_size, part.cut_size.turned) if part.turns else (part.cut_size,)
    return any(way.width <= sheet.size.width and way.height <= sheet.size.height for way in ways)
