"""Faces that are joined along folds: gates, zigzags. Each shows the side that is turned to the eye."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import pairwise
from math import cos, radians, sin

import numpy as np
from bench import Bench, Foot
from camera import Frame, Vector, standing
from picture import Picture
from pieces import TABLE, Piece, paint, put, shade_upon


@dataclass(frozen=True, slots=True)
class Leaf:
    """One face: the bare ``blank`` seen from its front, what is stuck on it, and on its other side."""

    blank: Piece
    front: tuple[Piece, ...] = ()
    width: float = 0.0
    back: tuple[Piece, ...] = field(default=())
    back_dim: float = 0.86

    def middle(self) -> Vector:
        """The middle of its corners."""
        corners = self.blank.frame.points(self.blank.outline.corners)
        return np.asarray(corners.mean(axis=0), dtype=np.float64)

    def bare(self) -> Leaf:
        """With nothing stuck on it."""
        return replace(self, front=(), back=())

    def behind(self, others: list[Leaf], eye: Vector) -> bool:
        """Whether all others are on the eye's side of its plane."""
        frame = self.blank.frame
        side = 1 if float((eye - frame.origin) @ frame.normal) > 0 else -1
        reach = [side * float((other.middle() - frame.origin) @ frame.normal) for other in others]
        return all(distance > -0.01 for distance in reach)

    def seen(self, picture: Picture) -> list[Piece]:
        """The blank and the pieces of the side that the eye sees."""
        frame = self.blank.frame
        if float((picture.camera.eye - frame.origin) @ frame.normal) > 0:
            return [self.blank, *self.front]
        mirrored = tuple((self.width - x, y) for x, y in reversed(self.blank.outline.corners))
        other = Piece(
            frame.flipped(self.width),
            type(self.blank.outline)(mirrored),
            self.blank.paper,
            self.blank.onto,
            self.blank.shift,
            dim=self.back_dim,
        )
        return [other, *self.back]


def put_leaves(picture: Picture, makes: list[list[Leaf]]) -> None:
    """Makes of joined faces, farthest first: all shadows on the table, then each make."""
    for leaf in (leaf for make in makes for leaf in make):
        strength = 1 - 0.72 * leaf.blank.paper.clear
        picture.cast(leaf.blank.frame.points(leaf.blank.outline.corners), TABLE, strength)
    for make in makes:
        _put_make(picture, make)


def _put_make(picture: Picture, leaves: list[Leaf]) -> None:
    eye = picture.camera.eye
    waiting = sorted(
        leaves,
        key=lambda leaf: (not leaf.behind(leaves, eye), -float(np.linalg.norm(eye - leaf.middle()))),
    )
    for i, leaf in enumerate(waiting):
        blank, *stuck = leaf.seen(picture)
        paint(picture, blank)
        for piece in stuck:
            put(picture, piece)
        for other in waiting[i + 1 :]:
            corners = other.blank.frame.points(other.blank.outline.corners)
            above = (corners - blank.frame.origin) @ blank.frame.normal
            if float(above.mean()) > 1:
                shade_upon(picture, corners, blank, 0.75)


def gate(bench: Bench, frame: Frame, number: int, open_by: tuple[float, float]) -> list[Leaf]:
    """A gate fold on a plane; its doors are open by so many degrees, left and right."""
    middle = Leaf(
        bench.blank(frame, number, panel=1),
        tuple(bench.layers(frame, number, panel=1)),
        bench.batch.panels[1][0],
    )
    (left, _), (whole, _), (right, _) = bench.batch.panels
    hinge = frame.moved(0, 0, 0.7)
    first = hinge.opened(open_by[0])
    c, s = cos(radians(open_by[1])), sin(radians(open_by[1]))
    way = -c * hinge.along + s * hinge.normal
    second = Frame(hinge.point(whole, 0) + right * way, -way, hinge.down)
    doors = [
        Leaf(bench.blank(place, number, panel=panel), tuple(bench.layers(place, number, panel)), width)
        for place, panel, width in ((first, 0, left), (second, 2, right))
    ]
    return [middle, *doors]


def zigzag(bench: Bench, at: Foot, turn: float, angle: float, number: int) -> list[Leaf]:
    """A standing strip of panels folded to and fro, from its left foot; ``angle`` off its run, in degrees."""
    panels = bench.batch.panels
    height = panels[0][1]
    leaves, (x, y) = [], at
    for i, (width, _) in enumerate(panels):
        heading = turn + (angle if i % 2 else -angle)
        frame = standing(x, y, height, heading)
        pieces = tuple(bench.layers(frame, number, panel=i))
        leaves.append(Leaf(bench.blank(frame, number, panel=i), pieces, width, back_dim=0.8))
        x, y = x + width * cos(radians(heading)), y + width * sin(radians(heading))
    return leaves


def folded_up(bench: Bench, frame: Frame, number: int) -> list[Piece]:
    """The same lying folded: every panel on the next, the first one on top."""
    panels = bench.batch.panels
    pieces: list[Piece] = []
    heights = [0.4 + 1.1 * i for i in range(len(panels))]
    for height, _ in pairwise([*heights, 0]):
        pieces.append(bench.blank(frame.moved(0.5 * (len(pieces) % 2), 0, height), number))
    top = frame.moved(0, 0, heights[-1])
    return [*pieces, *bench.layers(top, number, panel=0)]
