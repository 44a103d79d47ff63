"""What is on the pictures: sizes, places and papers of each batch, in mm."""

from __future__ import annotations

from typing import Final

from makes import Batch, Layer, Shape

INCH: Final = 25.4
PLUM: Final = "#43304a"
BARK: Final = "#4a3b30"

SLOE_LANE: Final = Batch(
    slug="sloe-lane-cards",
    width=4.25 * INCH,
    height=5.5 * INCH,
    base="oat-card",
    layers=(
        Layer(3.75 * INCH, 5 * INCH, 0.25 * INCH, 0.25 * INCH, ("moss-card",)),
        Layer(3.5 * INCH, 3 * INCH, 0.375 * INCH, 0.375 * INCH, ("bramble",)),
        Layer(3.5 * INCH, 0.75 * INCH, 0.375 * INCH, 3.5 * INCH, ("ember-card",)),
        Layer(2 * INCH, 0.75 * INCH, 1.125 * INCH, 4.375 * INCH, ("oat-card",), "sloe sprig", PLUM, 1.3),
    ),
)

WREN_NOTE: Final = Batch(
    slug="wren-note-bookmarks",
    width=50,
    height=180,
    base="chalk-card",
    layers=(
        Layer(44, 70, 3, 104, ("ripple-green", "dusk-rose", "night-blue")),
        Layer(30, 12, 10, 133, ("chalk-card",), "wren", BARK, 1.1),
    ),
    hole=(25, 9, 2.5),
)

FIRST_FROST: Final = Batch(
    slug="first-frost-tags",
    width=60,
    height=100,
    base="slate-card",
    layers=(
        Layer(50, 60, 5, 33, ("frost",)),
        Layer(18, 18, 30, 40, ("white-card",), lift=0.9, shape=Shape.DISC),
    ),
    clip=15,
    hole=(30, 12, 2.5),
)

ROPEWALK_PLACE: Final = Batch(
    slug="ropewalk-place-cards",
    width=3.5 * INCH,
    height=2 * INCH,
    base="oat-card",
    layers=(Layer(3.5 * INCH, 0.5 * INCH, 0, 1.375 * INCH, ("bramble",)),),
)

HAZEL_SQUARE: Final = Batch(
    slug="hazel-square-cards",
    width=135,
    height=135,
    base="chalk-card",
    layers=(
        Layer(125, 125, 5, 5, ("hazel-kraft",)),
        Layer(50, 50, 13, 13, ("catkin", "nutshell")),
        Layer(50, 50, 72, 13, ("nutshell", "catkin")),
        Layer(50, 50, 13, 72, ("nutshell", "catkin")),
        Layer(50, 50, 72, 72, ("catkin", "nutshell")),
    ),
)
