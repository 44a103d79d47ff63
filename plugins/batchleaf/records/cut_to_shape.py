"""What a part is cut or punched to: ``circle`` · ``clipped 14 top, hole 5 top, down 10`` · ``rounded 6``.

Features stand one after the other with commas between; what follows a hole and says a place, or
how far from there, belongs to it. The place of a hole is read as that of a part: ``hole 5 top,
down 10`` leaves ten from the edge to the hole.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations
from typing import Final, TypeVar

from batchleaf.facts import Fold
from batchleaf.facts.shapes import (
    HOLE,
    RECTANGLE,
    WORDS,
    Corner,
    CornerCut,
    CornerKind,
    Edge,
    EdgeCut,
    EdgeKind,
    Hole,
    Shape,
    Whole,
)
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_length
from batchleaf.measure.outlines import Outline, Point, clearance
from batchleaf.measure.spelling import spell_length, spell_number
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.spots import POSITIONS, read_spots

MOST_FEATURES: Final = 24
"""More holes and corners than these nobody writes in one line."""
MOST_SCALLOPS: Final = 200
"""Along one edge."""
FOLDED_AT: Final = {
    Fold.SIDE: frozenset({Edge.LEFT}),
    Fold.TOP: frozenset({Edge.TOP}),
    Fold.TENT: frozenset({Edge.TOP}),
    Fold.ACCORDION: frozenset({Edge.LEFT, Edge.RIGHT}),
}
"""The edges of a finished piece that are folds; a gate fold and a box are given no shape."""
_COMMA: Final = re.compile(r"\s*(?:(?<![0-9]),|,(?![0-9]))\s*")
"""A comma between two figures is a decimal comma, which the reader of lengths tells of."""
_PLACED: Final = re.compile(r"(?:up|down|left|right)\s.*|" + "|".join(POSITIONS), re.IGNORECASE)
_CORNERS: Final = {
    "": tuple(Corner),
    **{edge.value: edge.ends for edge in Edge},
    **{corner.value: (corner,) for corner in Corner},
}
_EDGES: Final = {"": (), "all round": tuple(Edge), **{edge.value: (edge,) for edge in Edge}}
_ONE_EDGE: Final = {name: edges for name, edges in _EDGES.items() if len(edges) < len(Edge)}
_WHERE: Final = tuple(sorted({*_CORNERS, *_EDGES, *POSITIONS} - {""}, key=len, reverse=True))
_MEASURED: Final = re.compile(rf"(?P<by>.*?)\s*(?:\b(?P<where>{'|'.join(_WHERE)}))?", re.IGNORECASE)
_OTHERWISE: Final = {
    "round": "circle", "ellipse": "oval", "elliptical": "oval", "swallowtail": "notched 10 bottom",
    "pennant": "pointed 10 bottom", "punched": "hole 5 top, down 10", "eyelet": "hole 5 top, down 10",
    "tag": "clipped 14 top", "scallop": "scalloped 8 bottom", "point": "pointed 10 bottom",
    "notch": "notched 10 bottom", "clip": "clipped 14 top",
}  # fmt: skip
"""What else is said for it, and what is read."""

T = TypeVar("T")
Cut = Whole | CornerCut | EdgeCut | Hole


@dataclass(frozen=True, slots=True)
class Feature:
    """One thing that is cut or punched, and how that was written."""

    words: str
    cut: Cut


def begins_shape(piece: str) -> bool:
    """Whether a piece between commas says a shape."""
    return bool(piece) and piece.split()[0].lower() in WORDS


def is_meant_so(piece: str) -> bool:
    """Whether a piece with a measure says a shape, perhaps in words that are not read."""
    return begins_shape(piece) or bool(
        piece and piece.split()[0].lower() in _OTHERWISE and re.search("[0-9]", piece)
    )


def belongs_to_hole(piece: str) -> bool:
    """Whether a piece between commas says where a hole is, that stands before it."""
    return bool(_PLACED.fullmatch(piece))


def read_features(text: str, unit: Unit) -> tuple[Feature, ...]:
    """What is cut, in the order written. Raises :class:`MeasureError` with a sentence."""
    said = list(_pieces(text))
    if len(said) > MOST_FEATURES:
        raise MeasureError(f"{len(said)} are more than a shape has; at most {MOST_FEATURES} are read")
    return tuple(Feature(", ".join(pieces), _cut(pieces, unit)) for pieces in said)


def _pieces(text: str) -> Iterator[list[str]]:
    """Those of each feature: of a hole also where it is."""
    found: list[list[str]] = []
    for piece in (" ".join(piece.split()) for piece in _COMMA.split(text)):
        if begins_shape(piece):
            found.append([piece])
        elif found and found[-1][0].lower().startswith(HOLE) and belongs_to_hole(piece):
            found[-1].append(piece)
        else:
            raise MeasureError(_why_not(piece, text))
    return iter(found)


def _why_not(piece: str, text: str) -> str:
    if not piece:
        return f"“{text}” has a comma with nothing behind it; leave it out"
    if belongs_to_hole(piece):
        return f"“{piece}” says where a hole is, and none stands before it; write for example hole 5, {piece}"
    first = piece.split()[0].lower()
    hint = did_you_mean(first, WORDS)
    if first in _OTHERWISE and not hint.endswith("d”?"):
        return f"“{piece}” is no shape; write for example {_OTHERWISE[first]}"
    return f"“{piece}” is no shape{hint or '; write for example circle, rounded 6 or clipped 14 top'}"


def _cut(pieces: Sequence[str], unit: Unit) -> Cut:
    word, _, rest = pieces[0].partition(" ")
    word = word.lower()
    if word in tuple(Whole):
        if rest:
            raise MeasureError(f"“{pieces[0]}” says too much; {_a(word)} fills the size, so write {word}")
        return Whole(word)
    found = _MEASURED.fullmatch(rest)
    by, where = (found["by"], (found["where"] or "").lower()) if found else (rest, "")
    if not by:
        place = f" {where}" if where else ""
        raise MeasureError(f"“{pieces[0]}” does not say by how much; write for example {word} 6{place}")
    if word == HOLE:
        return _hole(pieces, parse_length(by, unit), where, unit)
    by_mm = parse_length(by, unit)
    if word in tuple(CornerKind):
        return CornerCut(CornerKind(word), by_mm, _where(pieces[0], where, _CORNERS, "corner"))
    return EdgeCut(EdgeKind(word), by_mm, _edges(pieces[0], EdgeKind(word), where))


def _a(word: str) -> str:
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def _where(piece: str, where: str, known: Mapping[str, tuple[T, ...]], noun: str) -> tuple[T, ...]:
    if where not in known:
        first, *others = filter(None, known)
        example = piece[: len(piece) - len(where)].strip()
        raise MeasureError(
            f"“{piece}” names no {noun}; write {example} {first}, or in its place"
            f" {', '.join(others[:-1])} or {others[-1]}"
        )
    return known[where]


def _edges(piece: str, kind: EdgeKind, where: str) -> tuple[Edge, ...]:
    if where or kind is not EdgeKind.SCALLOPED:
        found = _where(piece, where, _EDGES if kind is EdgeKind.SCALLOPED else _ONE_EDGE, "edge")
        if found:
            return found
        raise MeasureError(f"“{piece}” does not say at which edge; write for example {piece} bottom")
    return tuple(Edge)


def _hole(pieces: Sequence[str], diameter: Fraction, where: str, unit: Unit) -> Hole:
    places = ", ".join(filter(None, [where, *pieces[1:]]))
    spots = read_spots(places, unit) if places else ()
    if not spots:
        return Hole(diameter, Fraction(1, 2), Fraction(1, 2))
    spot = spots[0]
    return Hole(diameter, spot.across, spot.down, spot.right, spot.lower)


# --- whether it fits -------------------------------------------------------------


def fitted(features: Sequence[Feature], size: Size, fold: Fold, unit: Unit) -> Shape:
    """The shape of a piece of this finished size.

    Raises :class:`MeasureError` with a sentence for what does not fit on it.
    """
    if not features:
        return RECTANGLE
    _check_fold(features, fold)
    whole = _only_whole(features)
    if whole is not None and whole.cut is Whole.CIRCLE and size.width != size.height:
        raise MeasureError(
            f"“circle” needs a size as wide as high, and this is {_sized(size, unit)};"
            " write oval, or an equal width and height"
        )
    _check_corners(features)
    shape = _put_together(features)
    _check_scallops(features, shape, size, unit)
    _check_edges(features, shape, size, unit)
    _check_holes(features, shape, size, unit)
    return shape


def _put_together(features: Sequence[Feature]) -> Shape:
    cuts = [one.cut for one in features]
    return Shape(
        next((cut for cut in cuts if isinstance(cut, Whole)), None),
        tuple(cut for cut in cuts if isinstance(cut, CornerCut)),
        tuple(cut for cut in cuts if isinstance(cut, EdgeCut)),
        tuple(cut for cut in cuts if isinstance(cut, Hole)),
    )


def _check_fold(features: Sequence[Feature], fold: Fold) -> None:
    if fold is Fold.GATE or fold is Fold.BOX or fold.goes_round:
        raise MeasureError(
            f"“{features[0].words}” would cut into folds; a {fold.value} is not given a shape, leave it out"
        )
    folds = FOLDED_AT.get(fold, frozenset())
    for one in features if folds else ():
        if isinstance(one.cut, Whole):
            raise MeasureError(
                f"“{one.words}” would cut the {_at_fold(folds)}; leave it out, or write a flat base"
            )
        if not isinstance(one.cut, Hole) and not _free_of(one.cut, folds):
            hint = _freed(one, folds)
            raise MeasureError(f"“{one.words}” would cut the {_at_fold(folds)}{hint}")


def _at_fold(folds: Collection[Edge]) -> str:
    names = [edge.value for edge in Edge if edge in folds]
    sides = {"left": "at the left", "right": "at the right", "top": "on top"}
    if len(names) > 1:
        return "folds at both sides, which stay straight"
    return f"fold {sides[names[0]]}, which stays straight"


def _free_of(cut: CornerCut | EdgeCut, folds: Collection[Edge]) -> bool:
    if isinstance(cut, EdgeCut):
        return not any(edge in folds for edge in cut.edges)
    at_folds = {corner for edge in folds for corner in edge.ends}
    return at_folds.isdisjoint(cut.corners)


def _freed(one: Feature, folds: Collection[Edge]) -> str:
    """What to write instead: the edge across from the fold, where there is one."""
    free = [edge for edge in Edge if not any(set(edge.ends) & set(fold.ends) for fold in folds)]
    if len(free) != 1 or isinstance(one.cut, Whole | Hole):
        return "; leave it out"
    word, measure = one.words.split()[0], _MEASURED.fullmatch(one.words.partition(" ")[2])
    return f"; write {word} {measure['by'] if measure else '6'} {free[0].value}"


def _only_whole(features: Sequence[Feature]) -> Feature | None:
    wholes = [one for one in features if isinstance(one.cut, Whole)]
    others = [one for one in features if isinstance(one.cut, CornerCut | EdgeCut)]
    if wholes and len([*wholes, *others]) > 1:
        one, other = sorted([*wholes, *others], key=features.index)[:2]
        raise MeasureError(f"“{one.words}” and “{other.words}” are two outlines; leave one out")
    return wholes[0] if wholes else None


def _claimed(cut: Cut) -> tuple[Corner, ...]:
    """The corners that a feature gives their look."""
    if isinstance(cut, CornerCut):
        return cut.corners
    if isinstance(cut, EdgeCut):
        return tuple(dict.fromkeys(corner for edge in cut.edges for corner in edge.ends))
    return ()


def _check_corners(features: Sequence[Feature]) -> None:
    """No corner is cut twice; where rows of scallops meet, they share it."""
    for one, other in combinations(features, 2):
        both = [corner for corner in _claimed(one.cut) if corner in _claimed(other.cut)]
        if both and not _share(one.cut, other.cut):
            raise MeasureError(
                f"“{one.words}” and “{other.words}” both cut the {both[0].value} corner;"
                " leave one out, or say which corners or edges each has"
            )


def _share(one: Cut, other: Cut) -> bool:
    return (
        isinstance(one, EdgeCut)
        and isinstance(other, EdgeCut)
        and one.kind is other.kind is EdgeKind.SCALLOPED
        and not set(one.edges) & set(other.edges)
    )


def _check_scallops(features: Sequence[Feature], shape: Shape, size: Size, unit: Unit) -> None:
    for one in features:
        if isinstance(one.cut, EdgeCut) and one.cut.kind is EdgeKind.SCALLOPED:
            for edge in one.cut.edges:
                length = size.width if edge.is_level else size.height
                count = shape.scallops(edge, size)
                if not count:
                    raise MeasureError(
                        f"“{one.words}” has no room on an edge of {_long(length, unit)};"
                        " write narrower scallops"
                    )
                if count > MOST_SCALLOPS:
                    raise MeasureError(
                        f"“{one.words}” would be {count} scallops on an edge of {_long(length, unit)};"
                        f" at most {MOST_SCALLOPS} are drawn, write wider ones"
                    )


def _check_edges(features: Sequence[Feature], shape: Shape, size: Size, unit: Unit) -> None:
    """What is cut at one end of an edge and at the other has room between."""
    for edge in Edge:
        length = size.width if edge.is_level else size.height
        ends = [_taken(features, shape, edge, corner) for corner in edge.ends]
        (one, first), (other, second) = ends
        taken = [said for said in (one, other) if said is not None]
        notched = any(isinstance(said.cut, EdgeCut) and said.cut.kind is EdgeKind.NOTCHED for said in taken)
        if not taken or first + second < length or (first + second == length and not notched):
            continue
        if len(taken) == 1:
            sentence = f"“{taken[0].words}” does not fit on an edge of {_long(length, unit)}"
        elif one is other:
            sentence = (
                f"“{taken[0].words}” takes {_long(first, unit)} at both ends of an edge of"
                f" {_long(length, unit)}; at most {_long(length / 2, unit)} fits at each"
            )
        else:
            sentence = (
                f"“{taken[0].words}” and “{taken[1].words}” meet on an edge of {_long(length, unit)};"
                " make one of them smaller"
            )
        raise MeasureError(sentence)


def _taken(
    features: Sequence[Feature], shape: Shape, edge: Edge, corner: Corner
) -> tuple[Feature | None, Fraction]:
    """What takes from an edge at one of its ends, and how much; not what is along the edge itself."""
    for one in features:
        if isinstance(one.cut, CornerCut) and corner in one.cut.corners:
            return one, one.cut.by
        if isinstance(one.cut, EdgeCut):
            for across in one.cut.edges:
                if across is not edge and corner in across.ends:
                    depth = one.cut.by if one.cut.kind is EdgeKind.NOTCHED else shape.inset(across)
                    return one, depth
    return None, Fraction(0)


def _check_holes(features: Sequence[Feature], shape: Shape, size: Size, unit: Unit) -> None:
    """Each leaves paper all round it."""
    outline, before = Outline(shape.outline(size).edge), list[tuple[Feature, Hole]]()
    for one in features:
        if not isinstance(one.cut, Hole):
            continue
        centre, radius = _centre(one.cut, size), one.cut.diameter / 2
        room = clearance(centre, outline.edge)
        if room is None or room <= radius**2:
            off = "off" if room is None else "over the edge of"
            raise MeasureError(
                f"“{one.words}” lies {off} a part of {_sized(size, unit)};"
                f" write how far from its edge, like hole {_number(one.cut.diameter, unit)} top, down 10"
            )
        for said, other in before:
            there = _centre(other, size)
            if (there[0] - centre[0]) ** 2 + (there[1] - centre[1]) ** 2 <= (
                radius + other.diameter / 2
            ) ** 2:
                raise MeasureError(f"“{said.words}” and “{one.words}” run into one another; move one")
        before.append((one, one.cut))


def _centre(hole: Hole, size: Size) -> Point:
    square = hole.on(size)
    return square.x + square.width / 2, square.y + square.height / 2


def _long(length: Fraction, unit: Unit) -> str:
    return f"{_number(length, unit)} {unit.value}"


def _number(length: Fraction, unit: Unit) -> str:
    return spell_number(length / unit.in_mm, unit) or f"{float(length / unit.in_mm):.2f}"


def _sized(size: Size, unit: Unit) -> str:
    return f"{_number(size.width, unit)} x {_long(size.height, unit)}"


# --- in full ---------------------------------------------------------------------


def spell_shape(shape: Shape, unit: Unit) -> str:
    """A shape in full, as :func:`read_features` reads it; nothing for a rectangle."""
    return ", ".join(
        [
            *([shape.whole.value] if shape.whole else []),
            *(piece for cut in shape.corners for piece in _spell(cut, unit)),
            *(piece for cut in shape.edges for piece in _spell(cut, unit)),
            *(_spell_hole(hole, unit) for hole in shape.holes),
        ]
    )


def _spell(cut: CornerCut | EdgeCut, unit: Unit) -> Iterator[str]:
    start = f"{cut.kind.value} {spell_length(cut.by, unit)}"
    if isinstance(cut, CornerCut):
        where = next(name for name, corners in _CORNERS.items() if corners == cut.corners)
        yield f"{start} {where}".strip()
    elif set(cut.edges) == set(Edge):
        yield f"{start} all round"
    else:
        yield from (f"{start} {edge.value}" for edge in cut.edges)


def _spell_hole(hole: Hole, unit: Unit) -> str:
    position = next(name for name, at in POSITIONS.items() if at == (hole.across, hole.down))
    pieces = [f"{HOLE} {spell_length(hole.diameter, unit)} {position}"]
    if hole.right:
        pieces.append(f"{'right' if hole.right > 0 else 'left'} {spell_length(abs(hole.right), unit)}")
    if hole.lower:
        pieces.append(f"{'down' if hole.lower > 0 else 'up'} {spell_length(abs(hole.lower), unit)}")
    return ", ".join(pieces)
