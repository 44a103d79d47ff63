"""What is in hand for a work: sheets before cutting, else pieces, in piles that are alike under a tool."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.cutting.plan import leaves_of
from batchleaf.core.dealing import Supplies
from batchleaf.facts import Moment, Part, Project, Work
from batchleaf.measure.lengths import Size
from batchleaf.measure.money import share


@dataclass(frozen=True, slots=True)
class Pile:
    """``count`` pieces of the part ``letter``, or sheets that hold it, of papers of one weight.

    ``grammage``: ``None`` where not known. ``each``: strokes for one of them.
    """

    letter: str
    papers: tuple[str, ...]
    grammage: Fraction | None
    size: Size
    count: int
    each: int
    sheets: bool = False


def piles_for(work: Work, project: Project, cutting: Cutting | None, supplies: Supplies) -> tuple[Pile, ...]:
    """What the work is done to, for all makes that were begun, and the extras."""
    parts = [part for part in project.parts if part.letter in work.letters]
    planned = _planned(cutting) if work.moment is Moment.BEFORE else frozenset()
    on_sheets = [part for part in parts if part.letter in planned]
    rest = [part for part in parts if part.letter not in planned]
    whole = _sheets(on_sheets, work, cutting, supplies) if cutting else ()
    return (*whole, *(pile for part in rest for pile in _pieces(part, work, project, supplies)))


def _planned(cutting: Cutting | None) -> frozenset[str]:
    """The letters of the parts that the plans give."""
    plans = cutting.plans if cutting else ()
    return frozenset(letter for plan in plans for letter in leaves_of(plan.tree))


def _sheets(parts: Sequence[Part], work: Work, cutting: Cutting, supplies: Supplies) -> Iterator[Pile]:
    """The sheets that hold any of the parts; one with several of them is worked on once."""
    counts = Counter[tuple[str, str, Size]]()
    for plan in cutting.plans:
        leaves = leaves_of(plan.tree)
        letter = next((part.letter for part in parts if leaves[part.letter]), "")
        cut = cutting.sheets[plan.stock]
        if letter:
            counts[letter, cut.supply, cut.scrap or supplies[cut.supply].sheet] += plan.times
    for (letter, slug, size), count in counts.items():
        yield Pile(letter, (slug,), supplies[slug].grammage, size, count, work.times or 1, sheets=True)


def _pieces(part: Part, work: Work, project: Project, supplies: Supplies) -> Iterator[Pile]:
    """Dealt evenly over the papers of the part, those of one weight together."""
    papers = part.papers
    dealt = share(part.each * project.begun + part.extra, [Fraction(1)] * max(len(papers), 1))
    together = Counter[Fraction | None]()
    for i, count in enumerate(dealt):
        together[supplies[papers[i]].grammage if papers else None] += count
    for grammage, count in together.items():
        mine = tuple(slug for slug in papers if supplies[slug].grammage == grammage)
        if count:
            yield Pile(part.letter, mine, grammage, part.cut_size, count, work.strokes_each(part))
