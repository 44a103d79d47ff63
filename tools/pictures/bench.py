"""Makes and parts as pieces in their places: flat, a little open, or standing."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin

import numpy as np
from camera import Frame, standing, vector
from makes import SHEET, Batch, Layer
from outlines import Outline, rectangle
from papers import Paper
from pieces import TABLE, Piece

Foot = tuple[float, float]
"""A point on the table, in mm."""


class Bench:
    """Puts the pieces of one batch with the small errors of a hand; the same seed, the same errors."""

    def __init__(self, batch: Batch, seed: int) -> None:
        """One bench a picture."""
        self.batch = batch
        self._dice = np.random.default_rng(seed)

    def flat(self, frame: Frame, number: int, onto: Frame = TABLE, panel: int = 0) -> list[Piece]:
        """A face with its layers; ``number`` says whose turn it is among dealt papers."""
        return [self.blank(frame, number, onto, panel), *self.layers(frame, number, panel)]

    def folded(self, frame: Frame, number: int, gape: float = 3.4) -> list[Piece]:
        """A side fold lying down; fresh from the fold it gapes by some degrees."""
        inside = frame.moved(0, 0, 0.2)
        back = self.blank(inside, number, dim=0.9)
        cover = frame.moved(0, 0, 1.6).opened(gape * float(self._dice.uniform(0.6, 1.3)))
        return [back, *self.layers(inside, number, panel=1), *self.flat(cover, number)]

    def stood(self, at: Foot, turn: float, gape: float, number: int) -> list[Piece]:
        """A side fold that stands; ``at`` is the foot of the fold, ``turn`` where its face looks."""
        height = self.batch.size[1]
        inside = standing(*at, height, turn - gape)
        dim = 0.74 + 0.24 * self.batch.paper("A").clear
        back = [self.blank(inside, number, dim=dim), *dimmed(self.layers(inside, number, panel=1), 0.94)]
        return [*back, *self.flat(standing(*at, height, turn), number)]

    def tent(self, at: Foot, turn: float, number: int, lean: float = 24) -> list[Piece]:
        """A top fold that stands over a point."""
        back = self.blank(self._leaning(at, turn, -lean), number, dim=0.6)
        return [back, *self.flat(self._leaning(at, turn, lean), number)]

    def stack(self, layer: Layer | Outline, paper: Paper, frame: Frame, count: int) -> list[Piece]:
        """Cut parts on a heap, never quite in line."""
        outline = layer.outline if isinstance(layer, Layer) else layer
        pieces = []
        for i in range(count):
            x, y = self._dice.normal(0, 0.2, 2)
            place = frame.moved(float(x), float(y), SHEET * (i + 0.5))
            place = place.turned(float(self._dice.normal(0, 0.22)))
            below = frame.moved(0, 0, SHEET * i) if i else TABLE
            pieces.append(Piece(place, outline, paper, below, self._cut_from()))
        return pieces

    def heap(self, letter: str, frame: Frame, count: int, number: int = 0) -> list[Piece]:
        """Parts of one letter on a heap; those of the make with this number."""
        layer = self.batch.loose(letter, number)
        return self.stack(layer, layer.paper, frame, count)

    def blanks(self, frame: Frame, count: int) -> list[Piece]:
        """Bases before they are folded, on a heap."""
        size = self.batch.recorded.base.size
        outline = rectangle(float(size.width), float(size.height))
        return self.stack(outline, self.batch.paper("A"), frame, count)

    def one(self, letter: str, frame: Frame, number: int = 0, onto: Frame = TABLE) -> Piece:
        """A single loose part, stamped as it will be."""
        layer = self.batch.loose(letter, number)
        return Piece(frame, layer.outline, layer.paper, onto, self._cut_from(), layer.stamps)

    def layers(self, frame: Frame, number: int, panel: int = 0, without: str = "") -> list[Piece]:
        """The parts on a face, lowest first."""
        return [
            self._layer(layer, frame)
            for layer in self.batch.layers(number)
            if layer.area.panel == panel and layer.letter not in without
        ]

    def blank(
        self, frame: Frame, number: int, onto: Frame = TABLE, panel: int = 0, dim: float = 1.0
    ) -> Piece:
        paper = self.batch.paper("A", number)
        return Piece(frame, self.batch.outline(panel), paper, onto, self._cut_from(), dim=dim)

    def _layer(self, layer: Layer, face: Frame) -> Piece:
        error = self._dice.normal(0, 0.2, 2)
        area = layer.area
        corner = face.moved(area.x + float(error[0]), area.y + float(error[1]), layer.lift)
        corner = corner.turned(float(self._dice.normal(0, 0.2)))
        below = face.moved(0, 0, layer.under)
        return Piece(corner, layer.outline, layer.paper, below, self._cut_from(), layer.stamps)

    def _cut_from(self) -> tuple[float, float]:
        """Where on its sheet a piece was, in mm."""
        x, y = self._dice.uniform(0, 70, 2)
        return float(x), float(y)

    def _leaning(self, at: Foot, turn: float, lean: float) -> Frame:
        width, height = self.batch.size
        t, s = radians(turn), radians(lean)
        along, out = vector(cos(t), sin(t)), vector(-sin(t), cos(t))
        ridge = vector(*at, height * cos(s)) - along * (width / 2)
        return Frame(ridge, along, out * sin(s) - vector(0, 0, cos(s)))


def dimmed(pieces: list[Piece], dim: float) -> list[Piece]:
    """The same in less light."""
    return [replace(piece, dim=piece.dim * dim) for piece in pieces]
