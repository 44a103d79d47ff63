"""Parts that reach over an edge or a fold of the face that they lie on, and bands that are too short."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.lying import Lying, MadeUp
from batchleaf.core.geometry.panels import Panel
from batchleaf.facts import NOWHERE, Fold, Part, Place, Problem, Weight
from batchleaf.facts.spots import Face, Spot
from batchleaf.measure.display import show_length, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect

_WALLS: Final = (Face.FRONT_WALL, Face.BACK_WALL, Face.LEFT_WALL, Face.RIGHT_WALL)


@dataclass(frozen=True, slots=True)
class Over:
    """By how much something reaches over one edge of a face; ``fold``: the face is folded there."""

    edge: str
    by: Fraction
    fold: bool


def off_their_face(made: MadeUp, unit: Unit) -> Iterator[Problem]:
    """Parts that reach over an edge of their face; not those that only follow what carries them."""
    for one in made.lying:
        over = _over(one.rect, one.panel, made)
        if not over or (one.on is not None and _over(made.lying[one.on].rect, one.panel, made)):
            continue
        place, letter = place_of(one.spot, one.part), one.part.letter
        if one.panel.face is Face.ROUND:
            yield from _band(one, over, unit, place)
            continue
        yield notice(place, f"{letter}{_how_far(one, over, unit)}")
    for one in made.lying:
        if one.panel.face is Face.ROUND and not _over(one.rect, one.panel, made):
            yield _too_short(one, unit)


def _how_far(one: Lying, over: Sequence[Over], unit: Unit) -> str:
    face = _named(one.panel)
    if len(over) > 2:
        mine, its = (show_size(size, unit) for size in (one.rect.size, one.panel.size))
        return f", {mine} {unit.value}, is larger than {face} that it lies on, {its} {unit.value}"
    edges = [f"{_far(edge.by, unit)} over the {'fold' if edge.fold else 'edge'} {edge.edge}" for edge in over]
    why = "; what is stuck across a fold pulls it open" if any(edge.fold for edge in over) else ""
    if _is_long_enough(one.rect, one.panel):
        why = "; what goes round the whole is at: round"
    return f" reaches {' and '.join(edges)} of {face}{why}"


def _is_long_enough(rect: Rect, panel: Panel) -> bool:
    """To go once round what is as large as the face."""
    return rect.width >= 2 * panel.size.width or rect.height >= 2 * panel.size.height


def _named(panel: Panel) -> str:
    """A face as it is said: ``the front``, ``inside left``, ``panel 3``."""
    return panel.name if panel.number or panel.name.startswith("inside ") else f"the {panel.name}"


def _over(rect: Rect, panel: Panel, made: MadeUp) -> tuple[Over, ...]:
    folds = _folds(panel, made)
    size = panel.size
    reach = {
        "at the left": -rect.x,
        "at the right": rect.right - size.width,
        "on top": -rect.y,
        "at the foot": rect.bottom - size.height,
    }
    return tuple(Over(edge, by, edge in folds) for edge, by in reach.items() if by > 0)


def _folds(panel: Panel, made: MadeUp) -> set[str]:
    """The edges of a face at which the blank goes on; those of a wall are not told apart."""
    base = next(part for part in made.bases if part.letter == panel.base)
    if panel.face is Face.ROUND or panel.face in _WALLS:
        return set()
    blank, size = panel.blank, base.size
    goes_on = {
        "at the left": blank.x > 0,
        "at the right": blank.right < size.width,
        "on top": blank.y > 0,
        "at the foot": blank.bottom < size.height,
    }
    if base.fold in (Fold.TOP, Fold.TENT) and panel.face is Face.BACK:
        # Seen as it stands, with the fold on top.
        return {"on top"}
    return {edge for edge, goes in goes_on.items() if goes}


def _band(one: Lying, over: Sequence[Over], unit: Unit, place: Place) -> Iterator[Problem]:
    """What goes round has to be long enough one way, and to stay on the other."""
    sideways = any(edge.edge in ("at the left", "at the right") for edge in over)
    if sideways and any(edge.edge in ("on top", "at the foot") for edge in over):
        yield notice(
            place,
            f"{one.part.letter} reaches over all that it goes round, both ways; a band is narrower than that",
        )
        return
    length = one.rect.width if sideways else one.rect.height
    needed = 2 * (one.panel.size.width if sideways else one.panel.size.height)
    if length < needed:
        yield notice(place, _not_round(one, length, needed, unit))


def _too_short(one: Lying, unit: Unit) -> Problem:
    length = max(one.rect.width, one.rect.height)
    size = one.panel.size
    needed = 2 * (size.width if one.rect.width >= one.rect.height else size.height)
    return notice(place_of(one.spot, one.part), _not_round(one, length, needed, unit))


def _not_round(one: Lying, length: Fraction, needed: Fraction, unit: Unit) -> str:
    return (
        f"{one.part.letter} is {_far(length, unit)} long, and once round is {_far(needed, unit)};"
        " it does not meet behind"
    )


def _far(length: Fraction, unit: Unit) -> str:
    return f"{show_length(length, unit)} {unit.value}"


def place_of(spot: Spot, part: Part) -> Place:
    """Where the record says where a part sits, or names the part."""
    return spot.place if spot.place != NOWHERE else part.place


def notice(place: Place, sentence: str) -> Problem:
    """A sentence that the maker may want to know."""
    return Problem(place, sentence, Weight.NOTICE)
