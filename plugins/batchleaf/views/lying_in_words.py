"""Where parts lie, in words: on what, how far from its edges, tucked behind what."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.geometry.lying import Lying, MadeUp
from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import END, START, Face, Spot
from batchleaf.measure.display import NBSP, show_length
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.words import listed

ON_FACE: Final = {
    Face.FRONT: "on the front",
    Face.BACK: "on the back",
    Face.INSIDE_LEFT: "inside on the left",
    Face.INSIDE_RIGHT: "inside on the right",
    Face.INSIDE_TOP: "inside above the fold",
    Face.INSIDE_BOTTOM: "inside below the fold",
    Face.INSIDE: "inside in the middle",
    Face.LEFT_DOOR: "on the left door",
    Face.RIGHT_DOOR: "on the right door",
    Face.INSIDE_LEFT_DOOR: "inside the left door",
    Face.INSIDE_RIGHT_DOOR: "inside the right door",
    Face.FRONT_WALL: "on the front wall",
    Face.BACK_WALL: "on the back wall",
    Face.LEFT_WALL: "on the left wall",
    Face.RIGHT_WALL: "on the right wall",
    Face.SPINE: "on the spine",
    Face.ROUND: "round the whole",
}
"""Every face but the numbered ones."""
_OF_A_BOX: Final = {Face.INSIDE: "on the bottom inside", Face.FRONT: "underneath"}
_OF_A_LID: Final = {Face.FRONT: "on the lid", Face.INSIDE: "inside the lid"}
MIDDLE_OF_ALL: Final = Spot()
_PANELS: Final = {Face.PANEL: "on panel", Face.BACK_OF_PANEL: "on the back of panel"}


def where_it_lies(made: MadeUp, copies: Sequence[Lying], unit: Unit) -> str:
    """``on the mat, 1/8 in from the top and both sides``; copies that lie alike are said together."""
    alike: dict[str, list[Lying]] = {}
    for one in copies:
        alike.setdefault(_how(made, one, unit), []).append(one)
    spots = [(_carriers(made, ones), how) for how, ones in alike.items()]
    if len(spots) > 1 and len({carrier for carrier, _ in spots}) == 1:
        return f"{spots[0][0]}: {'; '.join(how for _, how in spots)}"
    return "; ".join(f"{carrier}, {how}" for carrier, how in spots)


def _how(made: MadeUp, one: Lying, unit: Unit) -> str:
    if one.panel.face is Face.ROUND and one.on is None:
        return _at_what_height(one, unit)
    inner = one.rect
    outer = made.lying[one.on].rect if one.on is not None else _face_of(one)
    turned = {1: ", turned to the right", 2: ", upside down", 3: ", turned to the left"}
    behind = f", tucked behind the {made.lying[one.behind].part.name}" if one.behind is not None else ""
    return f"{in_from_edges(inner, outer, unit, one.spot)}{turned.get(one.spot.quarter_turns, '')}{behind}"


def _face_of(one: Lying) -> Rect:
    size = one.panel.size
    return Rect(Fraction(0), Fraction(0), size.width, size.height)


def _at_what_height(one: Lying, unit: Unit) -> str:
    """Of a band: how far its long edges are from those of what it goes round."""
    face = _face_of(one)
    spot = one.spot
    if one.rect.width >= face.width:
        edges = (one.rect.y, "the top"), (face.bottom - one.rect.bottom, "the foot")
        return _from(*_edge(*edges, "the top and the foot", spot.down), unit)
    edges = (one.rect.x, "the left"), (face.right - one.rect.right, "the right")
    return _from(*_edge(*edges, "both sides", spot.across), unit)


def _carriers(made: MadeUp, copies: Sequence[Lying]) -> str:
    """``on the left door and the right door``, ``on panels 1 and 3``, ``on the mat``."""
    first = copies[0]
    if first.on is not None:
        return f"on the {made.lying[first.on].part.name}"
    word = _PANELS.get(first.panel.face)
    numbers = [str(one.panel.number) for one in copies]
    if word:
        return f"{word}{'s' if len(numbers) > 1 else ''} {listed(numbers)}"
    faces = list(dict.fromkeys(_on_face(made, one) for one in copies))
    started = faces[0].split(" ")[0]
    return listed([faces[0], *(face.removeprefix(f"{started} ") for face in faces[1:])])


def _on_face(made: MadeUp, one: Lying) -> str:
    base = next(part for part in made.bases if part.letter == one.panel.base)
    if base.fold is Fold.BOX:
        special = _OF_A_LID if _is_lid(made, base) else _OF_A_BOX
        return special.get(one.panel.face, ON_FACE[one.panel.face])
    return ON_FACE[one.panel.face]


def _is_lid(made: MadeUp, base: Part) -> bool:
    return base.letter != made.bases[0].letter


def in_from_edges(inner: Rect, outer: Rect, unit: Unit, spot: Spot = MIDDLE_OF_ALL) -> str:
    """How far a part is from the edges of what it lies on: those that its place names, else the nearer ones.

    Edges that are equally far are said together.
    """
    left, right = inner.x - outer.x, outer.right - inner.right
    top, foot = inner.y - outer.y, outer.bottom - inner.bottom
    if left == right == top == foot:
        return f"{_far(left, unit)} from every edge" if left > 0 else _covering(left, unit)
    down = _edge((top, "the top"), (foot, "the foot"), "the top and the foot", spot.down)
    across = _edge((left, "the left"), (right, "the right"), "both sides", spot.across)
    if down[0] == across[0] and down[1] != "the top and the foot":
        return _from(down[0], f"{down[1]} and {across[1]}", unit)
    return f"{_from(*down, unit)}, {_from(*across, unit)}"


_Edge = tuple[Fraction, str]


def _edge(near: _Edge, far: _Edge, both: str, named: Fraction) -> _Edge:
    """The one that a place names, which is 0 for the near and 1 for the far one, else the nearer one."""
    if near[0] == far[0]:
        return near[0], both
    return near if named == START else far if named == END else min(near, far)


def _covering(beyond: Fraction, unit: Unit) -> str:
    return "edge to edge" if not beyond else f"reaching {_far(-beyond, unit)} over every edge"


def _from(distance: Fraction, edge: str, unit: Unit) -> str:
    if distance > 0:
        return f"{_far(distance, unit)} from {edge}"
    return f"level with {edge}" if not distance else f"{_far(-distance, unit)} over {edge}"


def _far(length: Fraction, unit: Unit) -> str:
    return f"{show_length(length, unit)}{NBSP}{unit.word}"
