"""The five covers. Subjects stay near the middle: pages crop to 4 : 5, 3 : 2 and 2 : 1."""

from __future__ import annotations

from typing import Final

from arrange import JUTE, THREAD, fallen, middle, put_all, stand_all, tie
from batches import FIRST_FROST, HAZEL_SQUARE, ROPEWALK_PLACE, SLOE_LANE, WREN_NOTE
from camera import lying
from develop import Exposure, Focus
from fruit import hazelnut, sloe
from makes import Bench
from picture import Picture, Sun
from scene import COVER, Scene

FRONT: Final = Sun((-0.55, 0.3, 0.74), 0.1)
"""For things that stand: the light comes over the left shoulder."""


def sloe_lane(picture: Picture) -> None:
    bench = Bench(101)
    places = [
        (-206, -86, -11, 0), (14, -152, 4, 0), (218, -92, 9, 0), (-150, 100, 7, 0.5), (182, 112, -6, 0.5),
        (-96, -28, -8, 3.0), (112, -20, 6, 3.0), (6, 22, -2, 6.0),
    ]  # fmt: skip
    for number, (x, y, turn, lift) in enumerate(places):
        put_all(picture, bench.folded(SLOE_LANE, middle(SLOE_LANE, (x, y, turn), lift), number))
    for fruit in fallen(((-68, 101), (-82, 112), (-60, 116), (77, 96), (84, 110), (112, 88)), 6.4):
        sloe(picture, fruit)


def wren_note(picture: Picture) -> None:
    """Fanned out like a hand of cards."""
    bench = Bench(201)
    for number, spoke in enumerate((20.5, 13.5, 7, 0, -7, -13.8, -20.5)):
        frame = lying(0, -430, spoke, 0.8 + 0.9 * number).moved(-WREN_NOTE.width / 2, 350 - 9 * (number % 2))
        put_all(picture, bench.flat(WREN_NOTE, frame, number))
        tie(picture, frame, WREN_NOTE, 203 + number, JUTE)


def first_frost(picture: Picture) -> None:
    bench = Bench(301)
    places = [
        (-158, -44, -19, 0.8), (-84, -64, 7, 0.8), (-8, -46, -5, 0.8), (66, -62, 13, 0.8),
        (146, -40, -9, 0.8),
        (-126, 70, 13, 1.6), (-50, 56, -10, 2.4), (28, 66, 4, 3.2), (104, 54, -14, 2.4), (176, 78, 8, 1.6),
    ]  # fmt: skip
    for number, (x, y, turn, lift) in enumerate(places):
        frame = middle(FIRST_FROST, (x, y, turn), lift)
        put_all(picture, bench.flat(FIRST_FROST, frame, number))
        tie(picture, frame, FIRST_FROST, 311 + number, THREAD)


def ropewalk_place(picture: Picture) -> None:
    bench = Bench(401)
    places = [
        ((-176, -150), 9), ((-44, -172), -5), ((100, -158), -12),
        ((-104, -54), -8), ((74, -62), 11),
        ((-156, 54), 12), ((-8, 38), -6), ((142, 46), -12),
    ]  # fmt: skip
    stand_all(picture, [bench.tent(ROPEWALK_PLACE, at, turn, n) for n, (at, turn) in enumerate(places)])
    for fruit in fallen(((66, 60), (78, 68), (-66, 76)), 6.0):
        sloe(picture, fruit)


def hazel_square(picture: Picture) -> None:
    bench = Bench(501)
    places = [
        (-196, -80, 6, 0), (176, -108, -5, 0), (-128, 96, -9, 0), (166, 88, 7, 1.5),
        (-34, -66, -4, 3.0), (54, 52, 5, 6.0),
    ]  # fmt: skip
    for number, (x, y, turn, lift) in enumerate(places):
        put_all(picture, bench.folded(HAZEL_SQUARE, middle(HAZEL_SQUARE, (x, y, turn), lift), number))
    for fruit in fallen(((69, -66), (88, -52), (66, -46), (-40, 78)), 8.4):
        hazelnut(picture, fruit)


COVERS: Final = (
    Scene(SLOE_LANE, COVER, "oak", sloe_lane, 348, 18, (6, 6), table_turn=-8),
    Scene(WREN_NOTE, COVER, "slate", wren_note, 376, 8, (0, -14)),
    Scene(FIRST_FROST, COVER, "plaster", first_frost, 356, 8, (4, -2)),
    Scene(ROPEWALK_PLACE, COVER, "linen", ropewalk_place, 340, 56, (0, -38), 640, 12, FRONT,
          Exposure(focus=Focus(0.6, 0.24, 5))),
    Scene(HAZEL_SQUARE, COVER, "felt", hazel_square, 356, 13, (46, 12)),
)  # fmt: skip
