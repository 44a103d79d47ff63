"""How the parts of each batch lie: what its record does not hold yet. In mm, from what a part lies on."""

from __future__ import annotations

from functools import partial
from typing import Final

from makes import Lies, Spot
from outlines import rectangle

INCH: Final = 25.4
SQUARES: Final = {
    "C": (Spot(left=8, top=8), Spot(right=8, top=8), Spot(right=8, foot=8), Spot(left=8, foot=8)),
}
"""Two and two, dealt clockwise."""
SLIM: Final = Lies(
    spots={
        "B": (Spot(left=0.25 * INCH, top=0.25 * INCH),),
        "C": (Spot(left=0.25 * INCH, top=3.375 * INCH, on="A"),),
        "D": (Spot(foot=0.25 * INCH, on="B"),),
    },
    foam="D",
)

HOW_THEY_LIE: Final = {
    "sloe-lane-cards": Lies(
        spots={
            "C": (Spot(top=0.125 * INCH),),
            "D": (Spot(top=3.25 * INCH, on="B"),),
            "E": (Spot(top=4.125 * INCH, on="B"),),
        },
        foam="E",
    ),
    "wren-note-bookmarks": Lies(
        spots={"B": (Spot(foot=6),), "C": (Spot(top=29),)},
        shapes={"A": partial(rectangle, holes=((25, 9, 2.5),))},
    ),
    "first-frost-tags": Lies(
        spots={"B": (Spot(foot=7),), "C": (Spot(right=8, top=8),)},
    ),
    "ropewalk-place-cards": Lies(spots={"B": (Spot(foot=0.125 * INCH),)}),
    "hazel-square-cards": Lies(spots=SQUARES),
    "orchard-square-cards": Lies(spots=SQUARES),
    "swift-slim-cards": SLIM,
    "fieldfare-slim-cards": SLIM,
    "ivy-gate-cards": Lies(
        spots={
            "B": (Spot(panel=0), Spot(panel=2)),
            "C": (Spot(panel=1, on="A"),),
            "D": (),  # it goes round the closed card
        },
    ),
    "puddle-ice-cards": Lies(
        spots={"B": (Spot(panel=1),), "C": (Spot(top=15),), "D": (Spot(foot=20, on="A", panel=0),)},
    ),
    "letter-bundle-bands": Lies(),
    "hawthorn-boxes": Lies(spots={"C": (Spot(panel=1),)}),
    "towpath-accordions": Lies(
        spots={
            "B": tuple(Spot(foot=0, on="A", panel=i) for i in range(4)),
            "C": tuple(Spot(left=1.0 * INCH, top=1.0 * INCH, on="A", panel=i) for i in (0, 2)),
        },
        first="C",
    ),
}
