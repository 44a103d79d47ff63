"""Boxes: a bottom with four walls, and a lid that is one upside down."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import cos, radians, sin
from typing import Final

import numpy as np
from bench import Bench
from camera import Frame
from fruit import knob
from makes import part_size
from outlines import rectangle
from papers import Paper
from picture import Picture
from pieces import TABLE, Piece, paint, put, shade_upon
from stamps import scores, slits

from batchleaf.facts import Part

PIERCED: Final = 2.5
"""The radius of the hole that the punch makes, in mm."""


@dataclass(frozen=True, slots=True)
class Tray:
    """A floor and four walls; ``frame`` is the floor's plane, its normal the way in. In mm."""

    frame: Frame
    length: float
    width: float
    height: float
    paper: Paper
    shift: tuple[float, float] = (0.0, 0.0)

    def walls(self) -> list[Piece]:
        """Seen from outside."""
        f, up = self.frame, self.height * self.frame.normal
        length, width = self.length, self.width
        frames = [
            (Frame(f.point(0, width) + up, f.along, -f.normal), length),
            (Frame(f.point(length, 0) + up, -f.along, -f.normal), length),
            (Frame(f.point(length, width) + up, -f.down, -f.normal), width),
            (Frame(f.point(0, 0) + up, f.down, -f.normal), width),
        ]
        return [
            Piece(
                frame, rectangle(long, self.height), self.paper, shift=(self.shift[0] + 31 * i, 9), thick=0.5
            )
            for i, (frame, long) in enumerate(frames)
        ]

    def floor(self) -> Piece:
        """Seen from inside."""
        return Piece(self.frame, rectangle(self.length, self.width), self.paper, dim=0.82, shift=self.shift)

    def top(self) -> Piece:
        """The plane over the walls, as a lid has it."""
        outline = rectangle(self.length, self.width)
        return Piece(self.frame.moved(0, 0, self.height), outline, self.paper, shift=self.shift, thick=0.5)


def cast_tray(picture: Picture, tray: Tray) -> None:
    """Its shadow on the table, as that of a whole block."""
    block = np.vstack([piece.frame.points(piece.outline.corners) for piece in (tray.floor(), tray.top())])
    picture.cast_block(block, TABLE)


def open_tray(picture: Picture, tray: Tray, lining: list[Piece]) -> None:
    """Looked into: floor, lining, the far walls from inside, the near ones from outside."""
    floor = tray.floor()
    paint(picture, floor)
    for piece in lining:
        put(picture, piece)
    walls = tray.walls()
    for wall in walls:
        shade_upon(picture, wall.frame.points(wall.outline.corners), floor, 0.5)
    for wall in walls:
        if not faces_eye(picture, wall):
            paint(picture, _inside(wall))
    for wall in walls:
        if faces_eye(picture, wall):
            paint(picture, wall)


def closed_tray(picture: Picture, tray: Tray, on_top: list[Piece]) -> None:
    """From outside, its top towards the eye."""
    for wall in tray.walls():
        if faces_eye(picture, wall):
            paint(picture, wall)
    top = tray.top()
    if faces_eye(picture, top):
        paint(picture, top)
        for piece in on_top:
            put(picture, piece)


def faces_eye(picture: Picture, piece: Piece) -> bool:
    """Whether its face is seen."""
    return float((picture.camera.eye - piece.frame.origin) @ piece.frame.normal) > 0


def _inside(wall: Piece) -> Piece:
    length = wall.outline.corners[1][0]
    frame = wall.frame.flipped(length)
    return Piece(frame, wall.outline, wall.paper, shift=wall.shift, dim=0.9, thick=0.5)


def trays(bench: Bench, frame: Frame) -> tuple[Tray, Tray]:
    """The bottom of a box whose floor lies on a plane, and its lid on top of it."""
    base, lid = bench.batch.recorded.base, bench.batch.lid
    if base.walls is None or lid is None or lid.walls is None:
        raise ValueError(f"{bench.batch.recorded.project.slug} is no box with a lid")
    (length, width), (over, across) = part_size(base), part_size(lid)
    height, deep = float(base.walls), float(lid.walls)
    paper = bench.batch.paper("A")
    bottom = Tray(frame.moved(0, 0, 0.3), length, width, height, paper, (3, 8))
    corner = frame.moved((length - over) / 2, (width - across) / 2, height + 0.6 - deep)
    return bottom, Tray(corner, over, across, deep, paper, (37, 21))


def closed_box(picture: Picture, bench: Bench, frame: Frame, number: int) -> None:
    """On the table, its lid on."""
    bottom, lid = trays(bench, frame)
    cast_tray(picture, bottom)
    closed_tray(picture, bottom, [])
    rim = lid.frame.points(rectangle(lid.length, lid.width).corners)
    for wall in bottom.walls():
        shade_upon(picture, rim, wall, 0.8)
    lidded(picture, bench, lid, number)


def open_box(picture: Picture, bench: Bench, frame: Frame, number: int) -> None:
    """On the table, its lining seen."""
    bottom, _ = trays(bench, frame)
    cast_tray(picture, bottom)
    open_tray(picture, bottom, bench.layers(bottom.frame, number, panel=1))


def leaning_lid(picture: Picture, bench: Bench, box: Frame, number: int, lean: float = 38) -> None:
    """The lid of an open box, leaning on the rim of its right wall; ``box`` is the plane of its floor."""
    bottom, lid = trays(bench, box)
    s, c = sin(radians(lean)), cos(radians(lean))
    foot = bottom.height * c / s
    raised = box.moved(bottom.length + foot - lid.width * c + 0.8, bottom.width + 4, lid.width * s)
    turned = raised.turned(-90).tilted(lean)
    leaning = Tray(turned, lid.length, lid.width, lid.height, lid.paper, lid.shift)
    cast_tray(picture, leaning)
    lidded(picture, bench, leaning, number)


def flat_lid(picture: Picture, bench: Bench, lid: Part, frame: Frame) -> None:
    """A lid's blank before its walls go up: scored, cut, papered, and pierced in the middle for its brad."""
    if lid.walls is None:
        raise ValueError(f"{lid.letter} has no walls")
    wall, (width, height) = float(lid.walls), (float(lid.size.width), float(lid.size.height))
    blank = rectangle(width, height).pierced((width / 2, height / 2, PIERCED))
    marks = scores(lid), slits(lid)
    put(picture, Piece(frame.moved(0, 0, 0.3), blank, bench.batch.paper("A"), shift=(37, 21), stamps=marks))
    for piece in bench.layers(frame.moved(wall, wall, 0.3), 0):
        (x, y) = piece.outline.corners[2]
        put(picture, replace(piece, outline=piece.outline.pierced((x / 2, y / 2, PIERCED))))


def lidded(picture: Picture, bench: Bench, lid: Tray, number: int) -> None:
    """A lid with what is on it."""
    top = lid.frame.moved(0, 0, lid.height)
    closed_tray(picture, lid, bench.layers(top, number))
    brad = bench.batch.recorded.used("brads")
    if brad is not None:
        knob(picture, top.moved(lid.length / 2, lid.width / 2, 0.6), 4.0, brad.colour)
