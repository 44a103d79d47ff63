"""What one make weighs: the true area of its parts × their grammage, and what is worked in besides.

An estimate: papers differ by some per cent from what their makers print, and a part that is
cut by a die counts with its whole rectangle where the record says no shape. What weighs nothing
that is known is named, and the weight is then at least the rest.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Origin, Part, Project, Purpose, Supply, Use
from batchleaf.measure.amounts import measure_of
from batchleaf.measure.mass import parse_mass

Supplies = Mapping[str, Supply]
_MM2_PER_M2: Final = 1_000_000


@dataclass(frozen=True, slots=True)
class Weighed:
    """In grams. ``without``: supplies, and ``parts``: letters, whose weight is not known.

    ``not_counted``: supplies used without a measure.
    """

    grams: Fraction
    without: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    not_counted: tuple[str, ...] = ()

    @property
    def complete(self) -> bool:
        """Whether all that has a measure is in it."""
        return not self.without and not self.parts

    def __add__(self, other: Weighed) -> Weighed:
        """Both together; what is named twice is named once."""
        return Weighed(
            self.grams + other.grams,
            tuple(dict.fromkeys((*self.without, *other.without))),
            tuple(dict.fromkeys((*self.parts, *other.parts))),
            tuple(dict.fromkeys((*self.not_counted, *other.not_counted))),
        )


NOTHING: Final = Weighed(Fraction(0))


def weigh(project: Project, supplies: Supplies) -> Weighed:
    """One make of a batch, without its packing: all copies of all parts, and what is worked in."""
    ready = {slug for part in project.parts if part.origin is Origin.READY for slug in part.papers}
    uses = (use for use in project.uses if use.purpose is not Purpose.PACKING and use.supply not in ready)
    whole = sum((weigh_part(part, supplies) for part in project.parts), NOTHING)
    return whole + sum((weigh_use(use, project, supplies) for use in uses), NOTHING)


def weigh_part(part: Part, supplies: Supplies) -> Weighed:
    """All copies of a part. Where it comes from several papers the heaviest counts."""
    of_each = {slug: _piece(part, supplies[slug]) for slug in part.papers}
    without = tuple(slug for slug, grams in of_each.items() if grams is None)
    if without or not of_each:
        return Weighed(Fraction(0), without, () if of_each else (part.letter,))
    return Weighed(part.each * max(grams for grams in of_each.values() if grams is not None))


def weigh_use(use: Use, project: Project, supplies: Supplies) -> Weighed:
    """One make's share of a supply; of what is said for the batch as a whole, an equal one."""
    if use.quantity is None:
        return Weighed(Fraction(0), not_counted=(use.supply,))
    of_one = grams_of_one(supplies[use.supply])
    makes = project.finished or project.begun
    amount = use.quantity / makes if use.per_make is None else use.per_make
    if of_one is None:
        return Weighed(Fraction(0), without=(use.supply,)) if amount else NOTHING
    return Weighed(of_one * amount)


def grams_of_one(supply: Supply) -> Fraction | None:
    """What one of its unit weighs, so far as it is known: as said, else of a sheet by its grammage."""
    if measure_of(supply.unit) == "mass":
        return parse_mass(f"1 {supply.unit}")
    if supply.weighs is not None:
        return supply.weighs
    if supply.size is not None and supply.grammage is not None:
        return supply.size.area * supply.grammage / _MM2_PER_M2
    return None


def grammage_of(supply: Supply) -> Fraction | None:
    """In g/m²: as said, else by what one sheet of it weighs."""
    if supply.grammage is not None:
        return supply.grammage
    if supply.weighs is not None and supply.size is not None:
        return supply.weighs * _MM2_PER_M2 / supply.size.area
    return None


def _piece(part: Part, supply: Supply) -> Fraction | None:
    """One copy of a part from one supply: a whole one where that is bought ready-made, else by its area."""
    if part.origin is Origin.READY and supply.weighs is not None:
        return supply.weighs
    grammage = grammage_of(supply)
    return None if grammage is None else part.area * grammage / _MM2_PER_M2
