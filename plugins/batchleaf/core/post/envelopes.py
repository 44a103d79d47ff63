"""Which envelope takes a make.

An envelope must be wider and higher than the make by the clearance; or, where that is more, by
half of the clearance and what its paper needs to close round the make. That is the thickness
of the rim, and for what stands higher by h at a distance of d from the edge no more than
h²/2d: half the way round is the rim and √(d² + h²) − d longer than the make is wide.

So a card of 4 1/4 x 5 1/2 in whose rim is up to 1/16 in thick goes into its A2 envelope, which
has 1/8 in of room (common practice, from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.stacked import RIM
from batchleaf.core.thickness import BULK, Thickness
from batchleaf.facts import Supply
from batchleaf.facts.envelopes import Envelope
from batchleaf.measure.lengths import Size

PAPER: Final = Fraction(120)
"""Of an envelope of which nothing else is known, in g/m²: a heavy one, from memory."""
BLANK: Final = Fraction(5, 2)
"""How many times its own area an envelope has in paper, with flaps and seams: front, back and half, from
memory."""
LAYERS: Final = 4
"""How many layers of paper lie over one another where it is thickest: front, back, seam and flap."""


@dataclass(frozen=True, slots=True)
class Enclosed:
    """What a make is in: an envelope, or nothing (``envelope`` None).

    ``takes``: whether it has the room for it. ``grams`` and ``thickness`` (mm) are those of the
    empty envelope; ``estimated``: not all of it is known.
    """

    envelope: Envelope | None
    takes: bool = True
    grams: Fraction = Fraction(0)
    thickness: Fraction = Fraction(0)
    estimated: bool = False


NOT_ENCLOSED: Final = Enclosed(None)


def room_needed(make: Thickness, clearance: Fraction) -> Fraction:
    """By how much an envelope has to be wider and higher than what goes into it, in mm."""
    higher = make.most - make.rim
    return max(clearance, clearance / 2 + make.rim + higher**2 / (2 * RIM))


def takes(envelope: Size, make: Thickness, clearance: Fraction) -> bool:
    """Whether an envelope takes a make, either way round; just so much room is enough."""
    return _holds(envelope, make.size, room_needed(make, clearance))


def smallest(envelopes: Iterable[Envelope], make: Thickness, clearance: Fraction) -> Envelope | None:
    """The one with the least area that takes it; of equals the maker's own."""
    room = room_needed(make, clearance)
    fitting = [one for one in envelopes if _holds(one.size, make.size, room)]
    return min(fitting, key=lambda one: (one.size.area, not one.supply, one.name), default=None)


def _holds(envelope: Size, make: Size, room: Fraction) -> bool:
    outer, inner = envelope.upright, make.upright
    return outer.width >= inner.width + room and outer.height >= inner.height + room


def own(supply: Supply) -> Envelope | None:
    """The envelope that a supply of the drawer is, if it is one; without a name where readers get none."""
    if supply.envelope is None:
        return None
    return Envelope(supply.name if supply.named else "", supply.envelope, supply.length_unit, supply.slug)


def empty_grams(envelope: Size) -> Fraction:
    """What an envelope is estimated to weigh, so that it errs heavy."""
    return envelope.area * BLANK * PAPER / 1_000_000


def empty_thickness() -> Fraction:
    """How thick an envelope is estimated to be, in mm, so that it errs thick."""
    return LAYERS * PAPER * BULK / 1000


def enclosed(envelope: Envelope, supply: Supply | None, *, fits: bool) -> Enclosed:
    """A make in an envelope, which may be a supply of the drawer with a weight and a thickness of its own."""
    grams = supply.weighs if supply else None
    thickness = supply.thickness if supply else None
    return Enclosed(
        envelope,
        fits,
        empty_grams(envelope.size) if grams is None else grams,
        empty_thickness() if thickness is None else thickness,
        estimated=grams is None or thickness is None,
    )
