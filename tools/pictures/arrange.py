"""Ways of laying things on the table, which every composition uses."""

from __future__ import annotations

from dataclasses import replace
from typing import TypeAlias

import numpy as np
from camera import Frame, lying
from cord import Cord, string
from drawing import arc
from fruit import Fruit
from makes import Batch
from outlines import rectangle, triangle
from papers import MAT, STEEL, Paper
from picture import Picture
from pieces import TABLE, Piece, paint, put, shadow_of
from stamps import ticks

Place: TypeAlias = tuple[float, float, float]
"""x, y of a middle in mm, and a turn in degrees; or a point of the room."""


def put_all(picture: Picture, pieces: list[Piece]) -> None:
    """One after the other, lowest first."""
    for piece in pieces:
        put(picture, piece)


def stand_all(picture: Picture, makes: list[list[Piece]]) -> None:
    """Standing makes, farthest first: their shadows lie on the table before any of them stands there."""
    pieces = [piece for make in makes for piece in make]
    for piece in pieces:
        if piece.onto is TABLE:
            shadow_of(picture, piece)
    for piece in pieces:
        (paint if piece.onto is TABLE else put)(picture, piece)


def middle(batch: Batch, place: Place, lift: float = 0.0) -> Frame:
    """The frame of a face whose middle is at a place."""
    return heap(place, batch.size).moved(0, 0, lift)


def heap_up(picture: Picture, pieces: list[Piece]) -> None:
    """A heap of equal parts: one shadow for the whole of it, thin lines between the sheets."""
    top = pieces[-1]
    picture.cast(top.frame.points(top.outline.corners), TABLE)
    for piece in pieces:
        put(picture, replace(piece, shadow=0.3 if piece.onto is not TABLE else 0))


def heap(place: Place, size: tuple[float, float]) -> Frame:
    """The frame of a heap of parts whose middle is at a place."""
    x, y, turn = place
    return lying(x, y, turn).moved(-size[0] / 2, -size[1] / 2)


def rule(picture: Picture, place: Place, length: float = 330.0) -> None:
    """A steel rule, 30 mm wide, its marks along the upper edge."""
    x, y, turn = place
    frame = lying(x, y, turn, 1.0).moved(-length / 2, -15)
    put(picture, Piece(frame, rectangle(length, 30), STEEL, stamps=(ticks(length),), thick=0.7))


def mat(picture: Picture, place: Place = (0, 0, 0), size: tuple[float, float] = (430, 290)) -> None:
    """A cutting mat on the table."""
    put(picture, Piece(heap(place, size).moved(0, 0, 0.5), rectangle(*size), MAT, thick=0.9))


def envelope(picture: Picture, frame: Frame, size: tuple[float, float], paper: Paper) -> None:
    """An envelope seen from behind, its flap closed, the long side across."""
    width, height = size
    put(picture, Piece(frame.moved(0, 0, 0.5), rectangle(width, height), paper, shadow=1.0))
    flap = triangle(width - 1.2, height * 0.56)
    put(picture, Piece(frame.moved(0.6, 0.3, 0.95), flap, paper, frame.moved(0, 0, 0.6), (11, 5), shadow=0.7))


def tie(picture: Picture, frame: Frame, batch: Batch, seed: int) -> None:
    """What the batch hangs on: two ends through the hole and over the edge, a knot, and side by side down."""
    supply = batch.recorded.used("cord and thread")
    (x, y, _), dice = batch.outline().holes[0], np.random.default_rng(seed)
    if supply is None:
        return
    radius, twist = (0.5, 1.3) if "thread" in supply.slug else (1.0, 2.6)
    fall = float(dice.uniform(20, 70) * dice.choice((-1, 1)))
    for side in (-1.0, 1.0):
        knots = [(x + side * 0.6, y + 0.6, 0.9), (x + side * 1.7, y - 6, 1.9), (x + side * 0.7, -4, 1.6)]
        knots += [(x - side * 0.9, -8, 2.2), (x + side * 0.8, -10.5, 2.6)]
        ends = arc((x, -11.0), -90 + side * 8, 46 * float(dice.uniform(0.8, 1.1)), fall + side * 26, 5)
        knots += [(ex + float(dice.normal(0, 0.7)), ey, 1.2 + (side > 0)) for ex, ey in ends[1:]]
        string(picture, Cord(in_room(frame, knots), radius, supply.colour, twist), frame)


def in_room(frame: Frame, knots: list[Place]) -> tuple[Place, ...]:
    """Points (x, y, height) over a plane as points of the room."""
    points = (frame.point(x, y) + z * frame.normal for x, y, z in knots)
    return tuple((float(p[0]), float(p[1]), float(p[2])) for p in points)


def fallen(places: tuple[tuple[float, float], ...], radius: float) -> list[Fruit]:
    """Fruit as it came to lie, each a little other in size."""
    return [
        Fruit(x, y, radius * (1 + 0.07 * ((i * 7) % 5 - 2)), 40.0 + 137.5 * i)
        for i, (x, y) in enumerate(places)
    ]
