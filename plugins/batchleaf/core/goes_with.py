"""Which supplies go with one by their colours.

Of its collection first; then those that are nearest by CIEDE2000; a few lighter and darker ones of the
same hue; and one of the opposite hue. Of several colours the nearest two count, and the
first of each for what is lighter, darker or opposite. No supply is named twice.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache
from itertools import product, zip_longest
from math import remainder
from typing import Final

from batchleaf.facts import Supply
from batchleaf.measure.colour_difference import DECIMALS, Lab, ciede2000, lab_of
from batchleaf.measure.colour_families import Family, family_of
from batchleaf.measure.colours import Colour

NEAR: Final = 10.0
"""The largest difference of what is called near (the house's own)."""
STEP: Final = 8.0
"""The least difference in lightness of what is called lighter or darker (the house's own)."""
SAME_HUE: Final = 20
"""So many degrees apart hues are the same, and off half a turn opposite (the house's own)."""
MOST_OF_COLLECTION, MOST_NEAR, MOST_OF_HUE, MOST_OPPOSITE = 6, 4, 2, 1
_LIGHTER: Final = NEAR * 1.75
"""Whatever is further off in lightness is not near: the divisor S_L of CIEDE2000 is 1.747 at most."""


@dataclass(frozen=True, slots=True)
class Match:
    """A supply, and how far the nearest of its colours is, by CIEDE2000 to four decimals."""

    supply: Supply
    difference: float
    to: int
    """Which colour of the other supply it is nearest to, from 0."""
    colour: str
    """Its own."""


Matches = tuple[Match, ...]
"""Nearest first; those that are as near by name, so that the order depends on no machine."""


@dataclass(frozen=True, slots=True)
class GoesWith:
    """What goes with one supply. ``near``: in the order of its colours, each of which is served in turn."""

    collection: Matches
    near: Matches
    lighter: Matches
    darker: Matches
    opposite: Matches


def goes_with(supply: Supply, supplies: Iterable[Supply]) -> GoesWith:
    """What of ``supplies`` goes with one that has a colour; a pad counts, its papers do not."""
    mine = swatch_of(supply)
    rest = {one.slug: one for one in supplies if one.colours and not one.pad and one.slug != supply.slug}

    def without(matches: Matches) -> Matches:
        for match in matches:
            del rest[match.supply.slug]
        return matches

    def fitting(fits: Callable[[Swatch], bool], most: int) -> Matches:
        found = [one for one in rest.values() if fits(swatch_of(one))]
        return without(_nearest(mine.labs, found)[:most])

    collection = _nearest(mine.labs, _of_its_collection(supply, rest.values()))
    return GoesWith(
        collection=without(collection[:MOST_OF_COLLECTION]),
        near=without(_near(mine, rest.values())),
        lighter=fitting(lambda its: _is_lighter(its, mine), MOST_OF_HUE),
        darker=fitting(lambda its: _is_lighter(mine, its), MOST_OF_HUE),
        opposite=fitting(lambda its: _is_opposite(mine, its), MOST_OPPOSITE),
    )


def _of_its_collection(supply: Supply, others: Iterable[Supply]) -> list[Supply]:
    name = supply.collection.casefold()
    return [one for one in others if name and one.collection.casefold() == name]


def _near(mine: Swatch, others: Iterable[Supply]) -> Matches:
    """The nearest to each colour by turns, until there are enough."""
    found = _nearest(mine.labs, (one for one in others if _is_near(mine, swatch_of(one))))
    by_colour = ([match for match in found if match.to == colour] for colour in range(len(mine.labs)))
    turns = [match for turn in zip_longest(*by_colour) for match in turn if match]
    return tuple(sorted(turns[:MOST_NEAR], key=lambda match: (match.to, _order(match))))


def _nearest(labs: tuple[Lab, ...], others: Iterable[Supply]) -> Matches:
    return tuple(sorted((_match(labs, one) for one in others), key=_order))


def _order(match: Match) -> tuple[float, str, str]:
    return match.difference, match.supply.name.casefold(), match.supply.slug


def _match(labs: tuple[Lab, ...], other: Supply) -> Match:
    """By the nearest two colours; of pairs that are as near the first."""
    pairs = product(enumerate(labs), enumerate(swatch_of(other).labs))
    difference, to, its = min((_told(mine, its), to, at) for (to, mine), (at, its) in pairs)
    return Match(other, difference, to, other.colours[its])


# --- colours of supplies -----------------------------------------------------------


@dataclass(frozen=True, slots=True)
class Swatch:
    """The colours of a supply in CIELAB, the main one first, and the family of that one."""

    labs: tuple[Lab, ...]
    family: Family

    @property
    def main(self) -> Lab:
        """What it is sorted by."""
        return self.labs[0]


def swatch_of(supply: Supply) -> Swatch:
    """Of a supply that has a colour."""
    return _read(supply.colours)


@lru_cache(maxsize=8192)
def _read(colours: tuple[str, ...]) -> Swatch:
    read = tuple(map(Colour.of, colours))
    return Swatch(tuple(map(lab_of, read)), family_of(read[0]))


# --- how they go with one another --------------------------------------------------


def _told(one: Lab, other: Lab) -> float:
    return round(ciede2000(one, other), DECIMALS)


def _is_near(one: Swatch, other: Swatch) -> bool:
    pairs = product(one.labs, other.labs)
    # Most colours are told apart by their lightness alone, which takes a tenth of the time.
    return any(abs(a.lightness - b.lightness) <= _LIGHTER and _told(a, b) <= NEAR for a, b in pairs)


def _is_lighter(one: Swatch, other: Swatch) -> bool:
    """Whether ``one`` is lighter, and else the same: of one hue, or neither of any."""
    step = round(one.main.lightness - other.main.lightness, DECIMALS)
    return step >= STEP and _has_its_hue(one, other)


def _has_its_hue(one: Swatch, other: Swatch) -> bool:
    if one.family.has_hue and other.family.has_hue:
        return _turn(one, other) <= SAME_HUE
    return not (one.family.has_hue or other.family.has_hue)


def _is_opposite(one: Swatch, other: Swatch) -> bool:
    return one.family.has_hue and other.family.has_hue and _turn(one, other) >= 180 - SAME_HUE


def _turn(one: Swatch, other: Swatch) -> float:
    """Degrees from hue to hue, the shorter way round."""
    return round(abs(remainder(one.main.hue - other.main.hue, 360)), DECIMALS)
