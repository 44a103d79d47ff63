"""Ribbon round a thing that lies: one turn over its face, a knot, and two ends."""

from __future__ import annotations

import numpy as np
from arrange import in_room
from camera import Frame
from cord import Cord, string
from drawing import arc
from outlines import rounded
from papers import Paper, Tooth
from picture import Picture
from pieces import Piece, put


def tied(
    picture: Picture,
    frame: Frame,
    span: tuple[float, float],
    knot: float,
    colour: str,
    width: float,
    seed: int,
) -> None:
    """Across a face along its x, from ``span[0]`` to ``span[1]``; ``frame``'s y runs through its middle."""
    dice = np.random.default_rng(seed)
    band = [(x, 0.0, 0.7) for x in np.linspace(span[0], span[1], 7)]
    string(picture, Cord(in_room(frame, band), width / 2, colour, 0), frame)
    for side in (-1, 1):
        way = 62 + side * 34 + float(dice.normal(0, 5))
        ends = arc((knot, 0.5), way, 30 + float(dice.uniform(0, 9)), side * float(dice.uniform(20, 44)), 6)
        tail = [(x, y, 1.6 + 1.2 * np.sin(i / 2)) for i, (x, y) in enumerate(ends)]
        string(picture, Cord(in_room(frame, tail), width / 2, colour, 0), frame)
    paper = Paper(colour, Tooth.LAID)
    place = frame.moved(knot, 0, 2.4).turned(8).moved(-width * 0.55, -width * 0.62)
    outline = rounded(width * 1.1, width * 1.24, width * 0.28, foot=width * 0.28)
    put(picture, Piece(place, outline, paper, frame.moved(0, 0, 1.0), thick=0.8))
