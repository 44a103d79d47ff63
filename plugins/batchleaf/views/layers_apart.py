"""Which layers a make has: on its front, inside, on its back, each from the base up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from batchleaf.core.geometry.aspects import Aspect, AspectKind
from batchleaf.core.geometry.aspects_of_folds import aspects_of
from batchleaf.core.geometry.lying import MadeUp
from batchleaf.core.geometry.seen import Seen, seen_in
from batchleaf.facts import Fold, Part
from batchleaf.views.aspect_in_words import has_parts
from batchleaf.views.drawing.apart import Layer, Point3

_AJAR: Final = 0.08
"""How far the back of a card stands off at its open edge, as a share of its width."""
_BEHIND_DOORS: Final = 3.0
"""How far the back of a gate fold lies below its doors, in mm."""
_STACKS: Final = (AspectKind.FRONT, AspectKind.INSIDE, AspectKind.CLOSED, AspectKind.BACK)
_WORDS: Final = dict(zip(_STACKS, ("front", "inside", "closed", "back"), strict=True))


@dataclass(frozen=True, slots=True)
class Stack:
    """Layers over one another; ``face`` in a word, where a make has several stacks."""

    face: str
    layers: tuple[Layer, ...]


def stacks_of(made: MadeUp) -> tuple[Stack, ...]:
    """One for each side that has parts; of a box one, its lid above it."""
    if made.bases[0].fold is Fold.BOX:
        return (Stack("", tuple(_box(made))),)
    found = [
        Stack(_WORDS[aspect.kind], tuple(layers))
        for aspect in aspects_of(made)
        if aspect.kind in _STACKS and _is_stack(aspect, made) and len(layers := _layers(made, aspect)) > 1
    ]
    return tuple(found) if len(found) > 1 else tuple(Stack("", one.layers) for one in found)


def _is_stack(aspect: Aspect, made: MadeUp) -> bool:
    """A band that goes round the whole stands with the front alone."""
    return aspect.kind is AspectKind.FRONT or has_parts(aspect, made)


def _layers(made: MadeUp, aspect: Aspect) -> list[Layer]:
    seen = seen_in(aspect, made)
    base = [one for one in seen if one.index is None]
    first = made.bases[0]
    lowest = Layer(
        first.letter, first.name, tuple(base), creases=aspect.creases, hinge=tuple(_hinge(aspect, first))
    )
    return [lowest, *_parts(made, seen, 0, first.letter)]


def _parts(
    made: MadeUp, seen: Sequence[Seen], base_number: int, base: str, before: int = 0
) -> Iterator[Layer]:
    """A layer for each letter, the lowest first, with what it rests on."""
    of_index = {one.index: one for one in seen if one.index is not None}
    in_order = [of_index[index] for index in made.order if index in of_index]
    number_of = {base: base_number}
    for letter in dict.fromkeys(one.part.letter for one in in_order):
        pieces = tuple(one for one in in_order if one.part.letter == letter)
        rests = tuple(number_of.get(_carrier(made, one), base_number) for one in pieces)
        number_of[letter] = before + len(number_of)
        yield Layer(letter, pieces[0].part.name, pieces, rests)


def _carrier(made: MadeUp, piece: Seen) -> str:
    on = made.lying[piece.index].on if piece.index is not None else None
    return made.lying[on].part.letter if on is not None else ""


def _hinge(aspect: Aspect, base: Part) -> Iterator[tuple[Point3, ...]]:
    """The rest of a closed card, below what is seen of it."""
    if aspect.kind is AspectKind.INSIDE:
        return
    width, height = float(aspect.size.width), float(aspect.size.height)
    match base.fold:
        case Fold.SIDE:
            left, right = (0.0, -_AJAR * width) if aspect.kind is AspectKind.FRONT else (-_AJAR * width, 0.0)
            yield (0.0, 0.0, left), (width, 0.0, right), (width, height, right), (0.0, height, left)
        case Fold.TOP | Fold.TENT:
            low = -_AJAR * width
            yield (0.0, 0.0, 0.0), (width, 0.0, 0.0), (width, height, low), (0.0, height, low)
        case Fold.GATE | Fold.SLEEVE | Fold.SLIPCASE | Fold.COVER:
            low = -max(_BEHIND_DOORS, float(base.depth))
            yield (0.0, 0.0, low), (width, 0.0, low), (width, height, low), (0.0, height, low)


def _box(made: MadeUp) -> Iterator[Layer]:
    """The bottom with its walls and what lies in it, then the lid and what lies on that."""
    aspects = aspects_of(made)
    bottom, *lids = made.bases
    front = next(one for one in aspects if one.kind is AspectKind.FRONT)
    opened = next((one for one in aspects if one.kind is AspectKind.INSIDE), front)
    seen = seen_in(opened, made)
    size = front.size
    shift = (float(size.width - opened.size.width) / 2, float(size.height - opened.size.height) / 2)
    floor = tuple(one for one in seen if one.index is None)
    walls = float(bottom.walls or 0)
    below = [
        Layer(bottom.letter, bottom.name, floor, walls=walls, shift=shift),
        *(_shifted(layer, shift) for layer in _parts(made, seen, 0, bottom.letter)),
    ]
    yield from below
    for lid in lids:
        seen = seen_in(front, made)
        top = tuple(one for one in seen if one.index is None)
        number = len(below)
        yield Layer(lid.letter, lid.name, top, rests=(0,), walls=-float(lid.walls or 0))
        yield from _parts(made, seen, number, lid.letter, before=number)


def _shifted(layer: Layer, shift: tuple[float, float]) -> Layer:
    return Layer(layer.letter, layer.name, layer.pieces, layer.rests, shift=shift)
