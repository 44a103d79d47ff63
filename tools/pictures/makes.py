"""One make as pieces in their places: flat, a little open, or standing."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from math import cos, radians, sin

import numpy as np
from camera import Frame, standing, vector
from pieces import TABLE, Outline, Piece, Stamp, clipped, disc, rectangle
from stamps import stamped

SHEET = 0.45
"""How far a glued layer stands off, in mm: card, glue and a little air."""


class Shape(Enum):
    """The outline of a part."""

    RECTANGLE = "rectangle"
    TAG = "tag"
    DISC = "disc"


@dataclass(frozen=True, slots=True)
class Layer:
    """A part on the face, its upper left corner at (x, y); its papers are dealt round."""

    width: float
    height: float
    x: float
    y: float
    papers: tuple[str, ...]
    motif: str = ""
    ink: str = ""
    lift: float = SHEET
    shape: Shape = Shape.RECTANGLE

    @property
    def stamps(self) -> tuple[Stamp, ...]:
        """Its motif, in the middle."""
        if not self.motif:
            return ()
        return (stamped(self.motif, self.ink, self.width / 2, self.height / 2),)


@dataclass(frozen=True, slots=True)
class Batch:
    """A batch as its pictures need it, in mm: the face of the finished make and what is on it."""

    slug: str
    width: float
    height: float
    base: str
    layers: tuple[Layer, ...]
    clip: float = 0.0
    hole: tuple[float, float, float] | None = None

    @property
    def outline(self) -> Outline:
        """The face's edge."""
        if self.clip and self.hole:
            return clipped(self.width, self.height, self.clip, self.hole)
        plain = rectangle(self.width, self.height)
        return Outline(plain.corners, (self.hole,)) if self.hole else plain


class Bench:
    """Makes pieces with the small errors of a hand; the same seed, the same errors."""

    def __init__(self, seed: int) -> None:
        """One bench a picture."""
        self._dice = np.random.default_rng(seed)

    def flat(self, batch: Batch, frame: Frame, number: int, onto: Frame = TABLE) -> list[Piece]:
        """A face with its layers; ``number`` says whose turn it is among dealt papers."""
        base = Piece(frame, batch.outline, batch.base, onto, self._cut_from())
        return [base, *self.layers(batch, frame, number)]

    def folded(self, batch: Batch, frame: Frame, number: int, gape: float = 3.4) -> list[Piece]:
        """A side fold lying down; fresh from the fold it gapes by some degrees."""
        back = Piece(frame.moved(0, 0, 0.2), batch.outline, batch.base, TABLE, self._cut_from(), dim=0.9)
        cover = frame.moved(0, 0, 0.6).opened(gape * float(self._dice.uniform(0.6, 1.3)))
        return [back, *self.flat(batch, cover, number)]

    def stood(
        self, batch: Batch, at: tuple[float, float], turn: float, gape: float, number: int
    ) -> list[Piece]:
        """A side fold that stands; ``at`` is the foot of the fold, ``turn`` where its face looks."""
        leaf = standing(*at, batch.height, turn - gape)
        back = Piece(leaf, batch.outline, batch.base, TABLE, self._cut_from(), dim=0.74)
        return [back, *self.flat(batch, standing(*at, batch.height, turn), number)]

    def tent(
        self, batch: Batch, at: tuple[float, float], turn: float, number: int, lean: float = 24
    ) -> list[Piece]:
        """A top fold that stands over (x, y)."""
        back = Piece(
            _leaning(at, batch, turn, -lean), batch.outline, batch.base, TABLE, self._cut_from(), dim=0.6
        )
        return [back, *self.flat(batch, _leaning(at, batch, turn, lean), number)]

    def stack(
        self, size: tuple[float, float], papers: tuple[str, ...], frame: Frame, count: int
    ) -> list[Piece]:
        """Cut parts on a heap, never quite in line."""
        pieces = []
        for i in range(count):
            x, y = self._dice.normal(0, 0.2, 2)
            place = frame.moved(float(x), float(y), SHEET * (i + 0.5)).turned(
                float(self._dice.normal(0, 0.22))
            )
            below = frame.moved(0, 0, SHEET * i) if i else TABLE
            pieces.append(Piece(place, rectangle(*size), papers[i % len(papers)], below, self._cut_from()))
        return pieces

    def layers(self, batch: Batch, frame: Frame, number: int) -> list[Piece]:
        """The parts on a face, lowest first."""
        made, height = [], 0.0
        for layer in batch.layers:
            below = frame.moved(0, 0, height)
            height += layer.lift
            made.append(self._layer(layer, frame.moved(0, 0, height), below, number))
        return made

    def _layer(self, layer: Layer, face: Frame, below: Frame, number: int) -> Piece:
        error = self._dice.normal(0, 0.22, 2)
        corner = face.moved(layer.x + float(error[0]), layer.y + float(error[1]))
        corner = corner.turned(float(self._dice.normal(0, 0.22)))
        outline = rectangle(layer.width, layer.height)
        if layer.shape is Shape.DISC:
            outline = disc(layer.width / 2)
            corner = corner.moved(layer.width / 2, layer.height / 2)
        paper = layer.papers[number % len(layer.papers)]
        return Piece(corner, outline, paper, below, self._cut_from(), layer.stamps)

    def _cut_from(self) -> tuple[float, float]:
        """Where on its sheet a piece was, in mm."""
        x, y = self._dice.uniform(0, 70, 2)
        return float(x), float(y)


def _leaning(at: tuple[float, float], batch: Batch, turn: float, lean: float) -> Frame:
    t, s = radians(turn), radians(lean)
    along, out = vector(cos(t), sin(t)), vector(-sin(t), cos(t))
    ridge = vector(*at, batch.height * cos(s)) - along * (batch.width / 2)
    return Frame(ridge, along, out * sin(s) - vector(0, 0, cos(s)))
