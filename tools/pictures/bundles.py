"""A bundle of letters with a band round it, tied with ribbon."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from arrange import put_all
from bench import Bench
from boxes import Tray, cast_tray, faces_eye
from camera import Frame
from outlines import rectangle
from papers import Paper
from picture import Picture
from pieces import Piece, paint, put
from ribbon import tied
from stamps import edges

C6: Final = (162.0, 114.0)
LETTERS: Final = 10
THICK: Final = 1.1
"""A letter in its envelope, in mm."""


def bundle(picture: Picture, bench: Bench, frame: Frame, number: int, paper: Paper) -> None:
    """Letters with the long side across, in their band and ribbon; ``frame`` is the lowest one's."""
    width, height = C6
    top = LETTERS * THICK
    block = Tray(frame, width, height, top, paper)
    cast_tray(picture, block)
    for wall in block.walls():
        long = wall.outline.corners[1][0]
        if faces_eye(picture, wall):
            paint(picture, replace(wall, stamps=(edges(long, top, LETTERS),)))
    lids = bench.stack(rectangle(width, height), paper, frame.moved(0, 0, top - 1.2), 3)
    put_all(picture, [replace(letter, onto=frame, shadow=0.3 if i else 0) for i, letter in enumerate(lids)])
    _band(picture, bench, frame.moved(0, 0, top), number, top)
    _ribbon(picture, bench, frame.moved(0, 0, top), number)


def _band(picture: Picture, bench: Bench, face: Frame, number: int, top: float) -> None:
    """Over the face and down the edge that is turned to the eye."""
    band = float(bench.batch.recorded.base.size.width)
    x = (C6[0] - band) / 2
    paper = bench.batch.paper("A", number)
    over = Piece(face.moved(x, -0.4, 0.4), rectangle(band, C6[1] + 0.8), paper, face, (17, 5), shadow=0.6)
    put(picture, over)
    edge = Frame(face.point(x, C6[1] + 0.5) + 0.4 * face.normal, face.along, -face.normal)
    paint(picture, Piece(edge, rectangle(band, top), paper, shift=(17, C6[1]), dim=0.94))
    middle = float(bench.batch.recorded.base.size.height) / 2
    on_band = face.moved(x, C6[1] / 2 - middle, 0.4)
    put_all(picture, bench.layers(on_band, number))


def _ribbon(picture: Picture, bench: Bench, face: Frame, number: int) -> None:
    supply = bench.batch.recorded.used("ribbon")
    if supply is not None:
        place = face.moved(0, C6[1] / 2 + 14.5, 1.4)
        tied(picture, place, (-0.6, C6[0] + 0.6), C6[0] / 2 - 6, supply.colour, 8.0, 811 + number)
