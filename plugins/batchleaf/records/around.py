"""What goes round something else: ``sleeve for 60 x 90 x 8, room 1, flap 12``, a slipcase, a cover.

The measures are those of what is inside, seen from its front: width, height, thickness. Its blank
follows from these and a little room.

- A sleeve is a tube, open above and below: front, side, back, side and a flap that is glued inside.
- A slipcase is open at the right: back, spine and front in one piece, with flaps above and below;
  those of the front are glued over those of the back.
- A cover goes round front, spine and back, and its edges are turned in.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Fold
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import MM_PER_INCH, Size, Unit, parse_length, parse_lengths, unit_named
from batchleaf.records.folds import Blank, across_at, down_at

_ROOM: Final = {Unit.MM: Fraction(3, 2), Unit.CM: Fraction(3, 2), Unit.INCH: MM_PER_INCH / 16}
"""How much wider and deeper it is than what goes in, in mm: common practice, as for a lid."""
_SQUARE: Final = {Unit.MM: Fraction(3), Unit.CM: Fraction(3), Unit.INCH: MM_PER_INCH / 8}
"""How far a cover stands out above, below and at the right, in mm: common practice of bookbinders."""
_FLAP: Final = {Unit.MM: Fraction(12), Unit.CM: Fraction(12), Unit.INCH: MM_PER_INCH / 2}
"""How wide the flap of a sleeve is, in mm: common practice."""
_TURN_IN: Final = {Unit.MM: Fraction(15), Unit.CM: Fraction(15), Unit.INCH: MM_PER_INCH * 5 / 8}
"""How much of a cover is turned in, in mm: common practice of bookbinders."""
_KINDS: Final = {"sleeve": Fold.SLEEVE, "slipcase": Fold.SLIPCASE, "cover": Fold.COVER}
EDGE: Final = {Fold.SLEEVE: "flap", Fold.COVER: "turn-in"}
"""What the edge of each is called that is glued or folded inside."""
_FOR: Final = re.compile(
    r"(?P<thing>(?:\S.*\s)?(?P<kind>sleeve|slipcase|cover))\s+for\s+(?P<inside>\S.*)", re.IGNORECASE
)
_WORD: Final = re.compile(r"(?P<word>room|flap|turn-in)\s+(?P<length>\S.*)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Around:
    """``inside``: what goes in, as seen from its front; ``depth``: how thick it is, in mm, or 0.

    ``room``: of a sleeve in width and depth, of a slipcase in height and depth; of a cover how far
    it stands out. ``edge``: its flap, or what is turned in; 0 for a slipcase.
    """

    thing: str
    fold: Fold
    inside: Size
    depth: Fraction
    room: Fraction
    edge: Fraction

    @property
    def blank(self) -> Blank:
        """The flat piece that it is folded from, with its scores."""
        match self.fold:
            case Fold.SLEEVE:
                return _sleeve(self)
            case Fold.SLIPCASE:
                return _slipcase(self)
        return _cover(self)

    @property
    def height(self) -> Fraction | None:
        """How thick it stands, in mm, without its own card; ``None`` where it lies flat."""
        if not self.depth:
            return None
        return self.depth if self.fold is Fold.COVER else self.depth + self.room


def read_around(what: str, rest: Sequence[str], unit: Unit) -> Around | None:
    """What ``base`` says before its first comma, and what after it; ``None`` where that is something else.

    Raises :class:`MeasureError` with a sentence.
    """
    said = _FOR.fullmatch(what)
    if said is None:
        return None
    fold = _KINDS[said["kind"].lower()]
    unit = unit_named(said["inside"]) or unit
    width, height, depth = _inside(said["inside"], fold, unit)
    words = _words(rest, fold, unit)
    return Around(
        thing=said["thing"],
        fold=fold,
        inside=Size(width, height),
        depth=depth,
        room=words.get("room", (_SQUARE if fold is Fold.COVER else _ROOM)[unit]),
        edge=words.get(EDGE.get(fold, ""), _EDGES.get(fold, _NONE)[unit]),
    )


_NONE: Final = dict.fromkeys(Unit, Fraction(0))
_EDGES: Final = {Fold.SLEEVE: _FLAP, Fold.COVER: _TURN_IN}


def _inside(text: str, fold: Fold, unit: Unit) -> tuple[Fraction, Fraction, Fraction]:
    match parse_lengths(text, unit):
        case (width, height, depth):
            return width, height, depth
        case (width, height) if fold is not Fold.SLIPCASE:
            return width, height, Fraction(0)
    number = "three" if fold is Fold.SLIPCASE else "two or three"
    raise MeasureError(
        f"“{text}” does not say what goes in; write {number} measures, its width, its height and how thick"
        f" it is, like {fold.value} for 60 x 90 x 8"
    )


def _words(pieces: Sequence[str], fold: Fold, unit: Unit) -> dict[str, Fraction]:
    """``room 1`` and ``flap 12``, each by its word."""
    known = ["room", *filter(None, [EDGE.get(fold)])]
    found: dict[str, Fraction] = {}
    for piece in filter(None, pieces):
        said = _WORD.fullmatch(piece)
        word = said["word"].lower() if said else ""
        if said is None or word not in known:
            raise MeasureError(
                f"“{piece}” is not for a {fold.value}; write {' or '.join(f'{one} 2' for one in known)}"
            )
        if word in found:
            raise MeasureError(f"“{piece}” says {word} a second time; leave one out")
        found[word] = parse_length(said["length"], unit)
    return found


def _sleeve(one: Around) -> Blank:
    """Front, side, back, side, flap, from the left; without depth it has no sides."""
    width = one.inside.width + one.room
    depth = one.height or Fraction(0)
    ends = [width, width + depth, 2 * width + depth, 2 * (width + depth)]
    size = Size(ends[-1] + one.edge, one.inside.height)
    return Blank(size, tuple(down_at(at) for at in dict.fromkeys(ends)))


def _slipcase(one: Around) -> Blank:
    """Back, spine, front, from the left; the flaps are as deep as the spine."""
    width, depth = one.inside.width, one.depth + one.room
    height = one.inside.height + one.room
    size = Size(2 * width + depth, height + 2 * depth)
    across = (across_at(depth), across_at(depth + height))
    return Blank(size, (down_at(width), down_at(width + depth), *across))


def _cover(one: Around) -> Blank:
    """Back, spine, front, from the left, with what is turned in all round."""
    width, height = one.inside.width + one.room, one.inside.height + 2 * one.room
    size = Size(2 * (width + one.edge) + one.depth, height + 2 * one.edge)
    ends = [one.edge, one.edge + width, one.edge + width + one.depth, size.width - one.edge]
    across = (across_at(one.edge), across_at(size.height - one.edge))
    return Blank(size, (*(down_at(at) for at in dict.fromkeys(ends)), *across))
