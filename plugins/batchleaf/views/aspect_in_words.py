"""A drawing of one make in words, for those who cannot see it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from batchleaf.core.geometry.aspects import Aspect, AspectKind
from batchleaf.core.geometry.lying import Lying, MadeUp
from batchleaf.facts import Fold, Origin, Part, Project, Supply
from batchleaf.measure.display import NBSP
from batchleaf.measure.lengths import Unit
from batchleaf.views.drawing.apart import Layer
from batchleaf.views.drawing.aspect import Shown
from batchleaf.views.links import together
from batchleaf.views.lying_in_words import where_it_lies
from batchleaf.views.shape_in_words import size_and_shape
from batchleaf.views.words import capitalised, listed

_FOLD_AT: Final = {
    (Fold.SIDE, AspectKind.FRONT): ", folded at the left",
    (Fold.SIDE, AspectKind.BACK): ", folded at the right",
    (Fold.SIDE, AspectKind.INSIDE): ", folded down the middle",
    (Fold.TOP, AspectKind.FRONT): ", folded on top",
    (Fold.TOP, AspectKind.BACK): ", folded on top",
    (Fold.TOP, AspectKind.INSIDE): ", folded across the middle",
    (Fold.SLEEVE, AspectKind.FRONT): ", open above and below",
    (Fold.SLIPCASE, AspectKind.FRONT): ", its spine at the left, open at the right",
    (Fold.COVER, AspectKind.FRONT): ", its spine at the left",
    (Fold.COVER, AspectKind.INSIDE): ", its spine in the middle",
    (Fold.GATE, AspectKind.FRONT): ", its two doors closed",
    (Fold.GATE, AspectKind.INSIDE): ", its two doors open",
}
_FRONTS: Final = {Fold.GATE: "Front, closed", Fold.ACCORDION: "Front, pulled out"}
_THROUGH: Final = ", seen through the base"
_REVERSE: Final = ", its back seen through the base"


def caption_of(aspect: Aspect, made: MadeUp) -> str:
    """What one looks at: ``Front``, ``Inside, open``, ``From above, closed``."""
    first = made.bases[0]
    match aspect.kind:
        case AspectKind.FRONT if first.fold is Fold.BOX:
            return "From above, closed" if len(made.bases) > 1 else "From above"
        case AspectKind.FRONT:
            return _FRONTS.get(first.fold, "Front")
        case AspectKind.INSIDE if first.fold is Fold.BOX:
            return "Without its lid"
        case AspectKind.INSIDE:
            return "Inside, open"
        case AspectKind.CLOSED:
            return "Closed"
        case AspectKind.BACK if first.fold is Fold.BOX:
            return "From underneath"
        case AspectKind.BACK:
            return "Back, pulled out" if first.fold is Fold.ACCORDION else "Back"
        case AspectKind.LID_INSIDE:
            return "Inside the lid"
        case AspectKind.WALL:
            panel = aspect.nearest.leaves[0].panel
            of = "" if panel.base == first.letter else " of the lid"
            return f"{capitalised(panel.face.value)}{of}"


def aspect_in_words(shown: Shown, made: MadeUp, project: Project, supplies: Mapping[str, Supply]) -> str:
    """The base with its size and paper, then each part on it: its paper and size, where, on what."""
    base = next(one.part for one in reversed(shown.seen) if one.index is None)
    size = size_and_shape(base, shown.aspect.size, project.unit)
    fold = Fold.TOP if base.fold is Fold.TENT else base.fold
    where = _FOLD_AT.get((fold, shown.aspect.kind), "")
    start = f"{capitalised(_named(base, made))}{_of_paper(base, supplies)}, {size}{where}."
    parts = tuple(_parts(shown, made, project.unit, supplies)) or ("Nothing lies there.",)
    return " ".join((start, *parts))


def _named(base: Part, made: MadeUp) -> str:
    return f"the {base.name}" if len(made.bases) > 1 else base.name


def _parts(shown: Shown, made: MadeUp, unit: Unit, supplies: Mapping[str, Supply]) -> Iterator[str]:
    """What lies on top, then what is seen through the base, its front or its back."""
    ways: dict[str, dict[str, list[Lying]]] = {"": {}, _THROUGH: {}, _REVERSE: {}}
    faces = {leaf.panel.key for leaf in (*shown.aspect.nearest.leaves, *shown.aspect.round)}
    for one in shown.seen:
        if one.index is not None:
            lying = made.lying[one.index]
            way = _REVERSE if one.reverse else "" if lying.panel.key in faces else _THROUGH
            ways[way].setdefault(one.part.letter, []).append(lying)
    for words, copies in ways.items():
        for there in copies.values():
            yield f"{_part(there, unit, supplies, made)}{words}."


def _part(lying: list[Lying], unit: Unit, supplies: Mapping[str, Supply], made: MadeUp) -> str:
    part = lying[0].part
    size = size_and_shape(part, part.size, unit)
    return (
        f"{times(len(lying))}{part.letter}, {part.name}{_of_paper(part, supplies)}, {size},"
        f" {where_it_lies(made, lying, unit)}"
    )


def _of_paper(part: Part, supplies: Mapping[str, Supply]) -> str:
    """Nothing of what is bought as it is: its name says it."""
    if part.origin is Origin.READY and part.below:
        return ""
    last = "and" if len(part.papers) == part.each else "or"
    papers = together((supplies[slug] for slug in dict.fromkeys(part.papers)), last)
    names = [paper.name for paper in papers]
    return f" of {listed(names, last=last)}" if names else ""


def layers_in_words(layers: Sequence[Layer], supplies: Mapping[str, Supply]) -> str:
    """``From the base up: A, base of oat card; B, mat of moss card; …``"""
    said = [
        f"{times(len(layer.pieces) if layer.rests else 1)}{layer.letter}, {layer.pieces[0].part.name}"
        f"{_of_paper(layer.pieces[0].part, supplies)}"
        for layer in layers
    ]
    return f"From the base up: {'; '.join(said)}. Each lies above its place."


def times(count: int) -> str:
    """``2 × `` before what there are several of."""
    return f"{count}{NBSP}× " if count > 1 else ""


def has_parts(aspect: Aspect, made: MadeUp) -> bool:
    """Whether anything lies on what is nearest there; what is closed is looked at for what goes round it."""
    leaves = aspect.round if aspect.kind is AspectKind.CLOSED else aspect.nearest.leaves
    faces = {leaf.panel.key for leaf in leaves}
    return any(one.panel.key in faces for one in made.lying)
