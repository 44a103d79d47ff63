"""A closed gate fold with a band round it."""

from __future__ import annotations

from bench import Bench
from camera import Frame
from leaves import gate, put_leaves
from outlines import rectangle
from picture import Picture
from pieces import Piece, put


def closed_gate(picture: Picture, bench: Bench, frame: Frame, number: int) -> None:
    """Lying, both doors shut; the band at half its height holds them."""
    put_leaves(picture, [gate(bench, frame.moved(0, 0, 0.3), number, (0.8, 0.8))])
    band_round(picture, bench, frame.moved(0, 0, 1.7), number)


def band_round(picture: Picture, bench: Bench, face: Frame, number: int) -> None:
    """The band D over a face, as broad as the record says and as long as the face is wide."""
    width, height = bench.batch.size
    broad = float(bench.batch.recorded.part("D").size.width)
    place = face.moved(-0.3, (height - broad) / 2, 0.3)
    band = Piece(
        place, rectangle(width + 0.6, broad), bench.batch.paper("D", number), face, (9, 40), shadow=1.0
    )
    put(picture, band)
