"""Parts so small beside their sheets that no plan of them could be followed, cut by cut."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.core.dealing import Supplies, may_come_from
from batchleaf.facts import Part, Problem, Project, Weight
from batchleaf.measure.display import show_size
from batchleaf.measure.lengths import Size

MOST_IN_ROWS: Final = 300
"""So many at most lie beside and below one another; each is a cut inside of the one before it."""


def beyond_a_plan(project: Project, supplies: Supplies) -> Iterator[Problem]:
    """Each part of which a sheet or scrap holds too many; a batch with such a part gets no plan."""
    unit = project.unit
    for part in project.cut_parts:
        for slug, noun, size in _pieces(project, part, supplies):
            if size.width + size.height > MOST_IN_ROWS * min(part.size.width, part.size.height):
                yield Problem(
                    part.place,
                    f"{part.letter} is {show_size(part.size, unit)} {unit.value}, and so many of it lie"
                    f" on one {noun} of {supplies[slug].name}, {show_size(size, unit)} {unit.value},"
                    " that no cutting plan is made; check both sizes",
                    Weight.NOTICE,
                )
                break


def _pieces(project: Project, part: Part, supplies: Supplies) -> Iterator[tuple[str, str, Size]]:
    """What the part may be cut from: the supply, what one piece of it is called, its size."""
    for slug in part.papers:
        yield slug, supplies[slug].unit, supplies[slug].sheet
    for cut in project.cut:
        if cut.scrap and may_come_from(part, cut.supply, supplies):
            yield cut.supply, "scrap", cut.scrap
