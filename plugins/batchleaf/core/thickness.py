"""How thick one make is at its thickest spot, folded flat, with foam and embellishments.

A spot is as thick as all that lies over one another there: each panel of the folded base, each
part with what it is stuck with, which is taken to lie under the whole of it. What nobody says
the place of, a brad or a cord, lies on the thickest spot, and at the rim; what is kept by length goes
round, and counts twice. A part counts with its whole rectangle, whatever shape is cut from it:
so the make is never thicker than is told.

Where the drawer does not say how thick a paper is, it is estimated from its weight at
:data:`BULK`, so that it errs thick.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.cost_kinds import ADHESIVE
from batchleaf.core.geometry.folded import Layer, fold_up
from batchleaf.core.geometry.lying import MadeUp, put_together
from batchleaf.core.geometry.panels import Panel
from batchleaf.core.geometry.stacked import Stacked, stack
from batchleaf.core.weight import grammage_of
from batchleaf.facts import Fold, Origin, Part, Project, Purpose, Supply
from batchleaf.facts.spots import Face
from batchleaf.measure.amounts import measure_of
from batchleaf.measure.lengths import Size

Supplies = Mapping[str, Supply]
BULK: Final = Fraction(8, 5)
"""1.6 cm³/g, so that 100 g/m² are 0.16 mm: at least as thick as each published caliper of a paper guide
(65 lb cover 8 pt, 80 lb 9.5, 100 lb 11, 110 lb index 9, 20 lb bond 3.8, which lie at 1.03 to 1.28) and as
uncoated card, 13 pt for 80 lb cover, from memory. Coated papers may have half of it."""
THINNER: Final = 2
"""What is estimated may be so many times thinner."""
UNEVEN: Final = Fraction(1)
"""In mm: a make is uneven where its thickest spot is more than that above half of its face. The house's own,
since no rule says how much."""
COUNTED_BY_ONE: Final = ("piece", "sheet")
"""What is counted so has a thickness, known or not; a bottle or a jar holds what has none."""


@dataclass(frozen=True, slots=True)
class Thickness:
    """In mm. ``most``: at the thickest spot; ``usual``: half of the face is no thicker; ``rim``: at its rim.

    ``size``: from edge to edge, folded, with what sticks out. ``estimated``: supplies whose
    thickness follows from their weight. ``without``: supplies, and ``parts``: letters, whose
    thickness is not known.
    """

    most: Fraction
    usual: Fraction
    rim: Fraction
    size: Size
    estimated: tuple[str, ...] = ()
    without: tuple[str, ...] = ()
    parts: tuple[str, ...] = ()
    is_box: bool = False

    @property
    def complete(self) -> bool:
        """Whether all that has a thickness is in it."""
        return not self.without and not self.parts

    @property
    def least(self) -> Fraction:
        """How thick half of it is at least, should estimates be too thick."""
        return self.usual / THINNER if self.estimated else self.usual

    @property
    def uneven(self) -> bool:
        """Whether its thickest spot stands out; what is just as far above is even."""
        return not self.is_box and self.most - self.usual > UNEVEN


def thickness_of(project: Project, supplies: Supplies) -> Thickness | None:
    """One make; ``None`` where its record names no base."""
    made = put_together(project)
    if made is None:
        return None
    gauge = _Gauge(supplies)
    base = project.parts[0]
    loose = sum(_loose(project, made, gauge), Fraction(0))
    if base.fold in (Fold.BOX, Fold.SLIPCASE) or project.height is not None:
        return _box(project, made, gauge, loose)
    folded = fold_up(made, base)
    stacked = stack([(layer.rect, gauge.layer(layer)) for layer in folded.layers], folded.face)
    most, rim = stacked.most + loose, stacked.rim + loose
    return gauge.found(Stacked(most, stacked.usual, rim), folded.size)


def caliper(supply: Supply) -> tuple[Fraction, bool] | None:
    """How thick one sheet or piece is, in mm, and whether that is an estimate; ``None``: nobody knows."""
    if supply.thickness is not None:
        return supply.thickness, False
    grammage = grammage_of(supply) if supply.grammage is not None or supply.unit == "sheet" else None
    return None if grammage is None else (grammage * BULK / 1000, True)


class _Gauge:
    """Adds up thicknesses, and keeps what was estimated and what is not known."""

    def __init__(self, supplies: Supplies) -> None:
        self._supplies = supplies
        self._estimated: dict[str, None] = {}
        self._without: dict[str, None] = {}
        self._parts: dict[str, None] = {}

    def found(self, stacked: Stacked, size: Size, *, is_box: bool = False) -> Thickness:
        """What came of it."""
        return Thickness(
            most=stacked.most,
            usual=stacked.usual,
            rim=stacked.rim,
            size=size,
            estimated=tuple(self._estimated),
            without=tuple(self._without),
            parts=tuple(self._parts),
            is_box=is_box,
        )

    def layer(self, layer: Layer) -> Fraction:
        """A panel of the base, or a part with what it is stuck with."""
        return self.part(layer.part) + (self.stuck(layer.part) if layer.carried else 0)

    def part(self, part: Part) -> Fraction:
        """One thickness of a part; where it comes from several papers, of the thickest."""
        if not part.papers:
            self._parts[part.letter] = None
        return max((self.of(self._supplies[slug]) for slug in part.papers), default=Fraction(0))

    def stuck(self, part: Part) -> Fraction:
        """What a part is stuck with. Glue, which has no thickness of its own, adds none."""
        if part.stuck is None:
            return Fraction(0)
        supply = self._supplies[part.stuck.supply]
        measured = measure_of(supply.unit)
        counted = not measured and (supply.unit in COUNTED_BY_ONE or part.stuck.amount is not None)
        is_solid = counted or measured == "length" or supply.thickness is not None
        return self.of(supply) if is_solid else Fraction(0)

    def of(self, supply: Supply) -> Fraction:
        """One sheet, or one piece."""
        known = caliper(supply)
        if known is None:
            self._without[supply.slug] = None
            return Fraction(0)
        if known[1]:
            self._estimated[supply.slug] = None
        return known[0]

    def loose(self, slug: str) -> Fraction:
        """What is worked in somewhere: one thickness of it, two of what goes round."""
        supply = self._supplies[slug]
        measured = measure_of(supply.unit)
        if supply.thickness is None and measured != "length" and supply.unit not in COUNTED_BY_ONE:
            return Fraction(0)
        goes_round = measured == "length" and supply.kind != ADHESIVE
        return self.of(supply) * (2 if goes_round else 1)


def _loose(project: Project, made: MadeUp, gauge: _Gauge) -> Iterator[Fraction]:
    """Supplies whose place nobody says, and parts whose place is not there."""
    supplies = dict.fromkeys(
        use.supply for use in project.uses if use.purpose is Purpose.WORKED_IN and use.quantity
    )
    ready = {slug for part in project.parts if part.origin is Origin.READY for slug in part.papers}
    for slug in supplies:
        if slug not in ready:
            yield gauge.loose(slug)
    for part, _ in made.lost:
        yield gauge.part(part) + gauge.stuck(part)


def _box(project: Project, made: MadeUp, gauge: _Gauge, loose: Fraction) -> Thickness | None:
    """A closed box, or a sleeve round what it is for: its height, its card, and what lies on it and below."""
    if project.finished_size is None or project.height is None:
        return None
    bases = [part for part in project.parts if not part.below]
    card = sum((gauge.part(part) for part in bases), Fraction(0))
    outside = sum((_outside(made, panel, gauge) for panel in made.panels), Fraction(0))
    most = project.height + card + outside + loose
    return gauge.found(Stacked(most, most, most), project.finished_size, is_box=True)


def _outside(made: MadeUp, panel: Panel, gauge: _Gauge) -> Fraction:
    """What lies on top or below; what goes round lies on both."""
    times = {Face.FRONT: 1, Face.ROUND: 2}.get(panel.face, 0)
    if not times:
        return Fraction(0)
    lying = [(one.rect, gauge.layer(Layer(one.part, one.rect, carried=True))) for one in made.on(panel)]
    return times * stack(lying, lying[0][0]).most if lying else Fraction(0)
