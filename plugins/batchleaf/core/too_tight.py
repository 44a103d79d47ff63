"""Lids, sleeves and slipcases whose room their own card takes.

Scored and folded, a panel is inside a thickness of its card narrower than from score to score, and
outside as much wider: half of it on either side at each of its two folds (common practice). So a lid
loses its own thickness and that of the box, a sleeve its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import floor

from batchleaf.core.thickness import caliper
from batchleaf.facts import Fold, Part, Problem, Project, Supply, Weight
from batchleaf.measure.display import show_length
from batchleaf.measure.lengths import Unit

Supplies = Mapping[str, Supply]


def too_tight(project: Project, supplies: Supplies) -> Iterator[Problem]:
    """A notice for each that is too tight; where no thickness is measured, nobody can say."""
    bases = [part for part in project.parts if not part.below]
    for part in bases:
        if part.room is None or part.fold is Fold.COVER:
            continue
        folded = bases if part.fold is Fold.BOX else [part]
        cards = [_card(one, supplies) for one in folded]
        taken = sum((card for card in cards if card is not None), Fraction(0))
        if None not in cards and part.room <= taken:
            yield _notice(part, taken, project)


def _card(part: Part, supplies: Supplies) -> Fraction | None:
    """The thickest card that it may be of, in mm; ``None`` where that is not measured."""
    known = [caliper(supplies[slug]) for slug in part.papers]
    measured = [one[0] for one in known if one is not None and not one[1]]
    return max(measured) if measured and len(measured) == len(known) else None


def _notice(part: Part, taken: Fraction, project: Project) -> Problem:
    unit, room = project.unit, part.room or Fraction(0)
    step = unit.in_mm / 16 if unit is Unit.INCH else Fraction(1, 2)
    enough = (floor(taken / step) + 2) * step
    return Problem(
        part.place,
        f"{part.letter}, {part.name}, has {show_length(room, unit)} {unit.value} of room, and the folds of"
        f" the card take {show_length(taken, unit)} {unit.value};"
        f" write for example room {show_length(enough, unit)} {unit.value}",
        Weight.NOTICE,
    )
