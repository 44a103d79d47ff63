"""Where a part sits: ``bottom, up 6`` · ``top left, right 1/4, down 1/4`` · ``inside right, top``.

Several places stand behind one another with a semicolon: ``left door; right door``.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import partial
from typing import Final

from batchleaf.facts.spots import END, MIDDLE, START, Face, Spot
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit, parse_length
from batchleaf.measure.spelling import spell_length
from batchleaf.records.shape_problems import did_you_mean

MOST_SPOTS: Final = 48
POSITIONS: Final = {
    "top left": (START, START),
    "top": (MIDDLE, START),
    "top right": (END, START),
    "left": (START, MIDDLE),
    "centre": (MIDDLE, MIDDLE),
    "center": (MIDDLE, MIDDLE),
    "middle": (MIDDLE, MIDDLE),
    "right": (END, MIDDLE),
    "bottom left": (START, END),
    "bottom": (MIDDLE, END),
    "bottom right": (END, END),
}
"""What lies on what: across and down."""
_MOVES: Final = {"up": (0, -1), "down": (0, 1), "left": (-1, 0), "right": (1, 0)}
_TURNS: Final = {
    "turned": 1, "turned 90": 1, "turned right": 1, "turned 180": 2, "upside down": 2,
    "turned 270": 3, "turned left": 3,
}  # fmt: skip
_FACES: Final = {face.value: face for face in Face if face not in (Face.PANEL, Face.BACK_OF_PANEL)}
_MOVED: Final = re.compile(r"(?P<way>up|down|left|right)\s+(?P<by>\S.*)")
_PANEL: Final = re.compile(r"(?P<back>back of )?panel\s+(?P<number>[0-9]{1,2})")
_BEHIND: Final = re.compile(r"behind\s+(?P<letter>[A-Za-z])")
_COMMA: Final = re.compile(r"(?<![0-9]),|,(?![0-9])")
"""A comma between two figures is a decimal comma, which the reader of lengths tells of."""


@dataclass
class _Said:
    """One place as its pieces are read; ``kinds``: what was said already, and how."""

    spot: Spot = field(default_factory=Spot)
    kinds: dict[str, str] = field(default_factory=dict)

    def once(self, kind: str, piece: str) -> None:
        if kind in self.kinds:
            raise MeasureError(f"“{self.kinds[kind]}” and “{piece}” say one thing twice; leave one out")
        self.kinds[kind] = piece


def read_spots(text: str, unit: Unit) -> tuple[Spot, ...]:
    """Every place that ``text`` names. Raises :class:`MeasureError` with a sentence."""
    places = [place.strip() for place in text.split(";")]
    if not all(places):
        raise MeasureError(f"“{text}” has a semicolon with no place beside it; leave it out")
    if len(places) > MOST_SPOTS:
        raise MeasureError(f"{len(places)} places are more than one part has; at most {MOST_SPOTS} are read")
    return tuple(_read_spot(place, unit) for place in places)


def _read_spot(text: str, unit: Unit) -> Spot:
    said = _Said()
    for piece in (" ".join(piece.split()) for piece in _COMMA.split(text)):
        if not piece:
            raise MeasureError(f"“{text}” has a comma with nothing behind it; leave it out")
        if not any(reader(piece, said, unit) for reader in _READERS):
            raise MeasureError(_why_not(piece))
    return said.spot


def _position(piece: str, said: _Said, unit: Unit) -> bool:
    if piece.lower() not in POSITIONS:
        return False
    said.once("position", piece)
    across, down = POSITIONS[piece.lower()]
    said.spot = replace(said.spot, across=across, down=down)
    return True


def _move(piece: str, said: _Said, unit: Unit) -> bool:
    found = _MOVED.fullmatch(piece.lower())
    if found is None:
        return False
    right, lower = _MOVES[found["way"]]
    said.once("sideways" if right else "up or down", piece)
    by = parse_length(found["by"], unit)
    spot = said.spot
    said.spot = replace(spot, right=spot.right + right * by, lower=spot.lower + lower * by)
    return True


def _turn(piece: str, said: _Said, unit: Unit) -> bool:
    turned = piece.lower().removesuffix("°")
    if turned not in _TURNS:
        return False
    said.once("turn", piece)
    said.spot = replace(said.spot, quarter_turns=_TURNS[turned])
    return True


def _face(piece: str, said: _Said, unit: Unit) -> bool:
    if found := _PANEL.fullmatch(piece.lower()):
        said.once("face", piece)
        face = Face.BACK_OF_PANEL if found["back"] else Face.PANEL
        said.spot = replace(said.spot, face=face, panel=int(found["number"]))
        return True
    if piece.lower() not in _FACES:
        return False
    said.once("face", piece)
    said.spot = replace(said.spot, face=_FACES[piece.lower()])
    return True


def _tucked(piece: str, said: _Said, unit: Unit) -> bool:
    found = _BEHIND.fullmatch(piece)
    if found is None:
        return False
    said.once("behind", piece)
    said.spot = replace(said.spot, behind=found["letter"].upper())
    return True


_READERS: Final[tuple[Callable[[str, _Said, Unit], bool], ...]] = (_position, _face, _move, _turn, _tucked)


def _why_not(piece: str) -> str:
    known = [*POSITIONS, *_FACES, *_MOVES, "turned", "upside down", "behind"]
    if re.fullmatch(r"turned\s+\S+", piece.lower()):
        return f"“{piece}” is no quarter turn; write turned 90, turned 180 or turned 270"
    if piece.lower() in _MOVES:
        return f"“{piece}” does not say how far; write for example {piece} 6"
    hint = did_you_mean(piece.lower(), known)
    if hint:
        return f"“{piece}” is no place{hint}"
    return f"“{piece}” is no place; write for example bottom, up 6, or top left, right 5, down 5"


def spell_spots(spots: Sequence[Spot], unit: Unit) -> str:
    """Places in full, as :func:`read_spots` reads them; nothing where there are none."""
    return "; ".join(_spell_spot(spot, partial(spell_length, unit=unit)) for spot in spots)


def _spell_spot(spot: Spot, spell: Callable[[Fraction], str]) -> str:
    position = next(name for name, at in POSITIONS.items() if at == (spot.across, spot.down))
    pieces = [_spell_face(spot), position]
    if spot.right:
        pieces.append(f"{'right' if spot.right > 0 else 'left'} {spell(abs(spot.right))}")
    if spot.lower:
        pieces.append(f"{'down' if spot.lower > 0 else 'up'} {spell(abs(spot.lower))}")
    if spot.quarter_turns:
        pieces.append(f"turned {90 * spot.quarter_turns}")
    if spot.behind:
        pieces.append(f"behind {spot.behind}")
    return ", ".join(filter(None, pieces))


def _spell_face(spot: Spot) -> str:
    if spot.face is None:
        return ""
    return f"{spot.face.value} {spot.panel}" if spot.panel else spot.face.value
