"""A thousand random designs, folded with Shapely: the same places, overlaps, areas and bare rooms.

The blank is folded there by mirroring polygons at its scores; it shares nothing with the house's
own folding but where a part is said to lie on its face.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from itertools import combinations
from typing import Any, Final

import pytest

from batchleaf.core.geometry.folded import fold_up
from batchleaf.core.geometry.lying import Lying, MadeUp, put_together
from batchleaf.core.geometry.room import room_to_stamp, room_to_write
from batchleaf.facts import Fold, Part
from batchleaf.facts.spots import START, Face, Spot
from batchleaf.measure.rects import Rect
from geometry.makes import base, layer, make

DESIGNS: Final = 1000
FACES: Final = {
    Fold.NONE: [Face.FRONT, Face.BACK],
    Fold.SIDE: [Face.FRONT, Face.BACK, Face.INSIDE_LEFT, Face.INSIDE_RIGHT],
    Fold.TOP: [Face.FRONT, Face.BACK, Face.INSIDE_TOP, Face.INSIDE_BOTTOM],
    Fold.GATE: [Face.LEFT_DOOR, Face.RIGHT_DOOR, Face.BACK, Face.INSIDE, Face.INSIDE_LEFT_DOOR,
                Face.INSIDE_RIGHT_DOOR],
    Fold.ACCORDION: [Face.PANEL, Face.BACK_OF_PANEL],
}  # fmt: skip
MIRROR_X: Final = {"xfact": -1, "yfact": 1}
MIRROR_Y: Final = {"xfact": 1, "yfact": -1}


@pytest.fixture(scope="module")
def shapely() -> Any:
    """The other geometry."""
    pytest.importorskip("shapely.affinity", reason="Shapely is not installed")
    return pytest.importorskip("shapely")


def design(seed: int) -> MadeUp:
    """A base of any fold with up to eight parts, on its faces or one another, on quarters of a millimetre."""
    dice = random.Random(seed)
    fold = dice.choice(list(FACES))
    panels = dice.randint(2, 5) if fold is Fold.ACCORDION else 0
    parts = [base(dice.randint(10, 60) * 4 * max(panels, 1), dice.randint(10, 60) * 4, fold, panels=panels)]
    for letter in "BCDEFGHI"[: dice.randint(1, 8)]:
        on = dice.choice(parts).letter
        face = dice.choice(FACES[fold]) if on == "A" else None
        number = dice.randint(1, panels) if face in (Face.PANEL, Face.BACK_OF_PANEL) else 0
        right, lower = (Fraction(dice.randint(-8, 120), 4) for _ in range(2))
        spot = Spot(START, START, right, lower, dice.randint(0, 3), face, number)
        parts.append(replace(layer(letter, dice.randint(2, 40), dice.randint(2, 40), on=on), spots=(spot,)))
    made = put_together(make(*parts))
    assert made is not None
    assert made.lost == ()
    return made


def box(shapely: Any, rect: Rect) -> Any:
    """As a polygon."""
    return shapely.box(*map(float, (rect.x, rect.y, rect.right, rect.bottom)))


def bounds(polygon: Any) -> tuple[float, ...]:
    """Left, top, right, foot to a millionth."""
    return tuple(round(side, 6) + 0.0 for side in polygon.bounds)


# --- folding ------------------------------------------------------------------------


class Folding:
    """A blank seen from outside, cut up at its scores and mirrored leaf by leaf."""

    def __init__(self, shapely: Any, part: Part) -> None:
        self._affinity = shapely.affinity
        self.width, self.height = float(part.size.width), float(part.size.height)
        self.fold = part.fold
        self.level = bool(part.scores) and not part.scores[0].runs_down
        self.scores = sorted(float(score.at) for score in part.scores)

    def on_blank(self, polygon: Any, one: Lying) -> Any:
        """From its face to the blank, which lies with its outside up."""
        x, y = self._start(one)
        if self.level and one.panel.face is Face.BACK:
            # Seen with the fold on top it stands on its head on the blank.
            polygon = self._affinity.rotate(polygon, 180, origin=(self.width / 2, self.height / 4))
        moved = self._affinity.translate(polygon, x, y)
        if one.panel.outer:
            return moved
        mirror = MIRROR_Y if self.level else MIRROR_X
        return self._affinity.scale(moved, **mirror, origin=(self.width / 2, self.height / 2))

    def _start(self, one: Lying) -> tuple[float, float]:
        """Where a face begins on the side of the blank that it is on, seen from that side."""
        edges = [0.0, *self.scores]
        match one.panel.face:
            case Face.FRONT if self.fold is not Fold.NONE:
                return (0.0, edges[1]) if self.level else (edges[1], 0.0)
            case Face.INSIDE_RIGHT | Face.INSIDE:
                return edges[1], 0.0
            case Face.INSIDE_BOTTOM:
                return 0.0, edges[1]
            case Face.LEFT_DOOR | Face.INSIDE_RIGHT_DOOR:
                return edges[2], 0.0
            case Face.BACK if self.fold is Fold.GATE:
                return edges[1], 0.0
            case Face.PANEL:
                return edges[one.panel.number - 1], 0.0
            case Face.BACK_OF_PANEL:
                ends = [*self.scores, self.width]
                return self.width - ends[one.panel.number - 1], 0.0
        return 0.0, 0.0

    def leaves(self) -> list[int]:
        """One for each panel of the blank, from the left or the top."""
        return list(range(len(self.scores) + 1))

    def leaf_of(self, one: Lying) -> int:
        """Which panel of the blank a face is a side of, from the left or the top as seen from outside."""
        last = len(self.scores)
        match one.panel.face:
            case Face.FRONT | Face.INSIDE_LEFT | Face.INSIDE_TOP | Face.LEFT_DOOR | Face.INSIDE_LEFT_DOOR:
                return last
            case Face.PANEL | Face.BACK_OF_PANEL:
                return one.panel.number - 1
            case Face.BACK | Face.INSIDE if self.fold is Fold.GATE:
                return 1
        return 0

    def folded(self, polygon: Any, leaf: int) -> Any:
        """Something of one leaf once all is folded, seen from the front."""
        match self.fold:
            case Fold.SIDE | Fold.TOP:
                (at,) = self.scores
                there = polygon if leaf else self._mirrored(polygon, at)
                return self._affinity.translate(there, *((0.0, -at) if self.level else (-at, 0.0)))
            case Fold.GATE:
                there = polygon if leaf == 1 else self._mirrored(polygon, self.scores[min(leaf, 1)])
                # Folded from behind; it is looked at with its doors up.
                left, right = self.scores
                seen = self._mirrored(there, (left + right) / 2)
                return self._affinity.translate(seen, -left, 0.0)
            case Fold.ACCORDION:
                for score in reversed(self.scores[:leaf]):
                    polygon = self._mirrored(polygon, score)
        return polygon

    def _mirrored(self, polygon: Any, at: float) -> Any:
        mirror = MIRROR_Y if self.level else MIRROR_X
        return self._affinity.scale(polygon, **mirror, origin=(at, at))


def folded_by_shapely(shapely: Any, made: MadeUp) -> Iterator[tuple[str, Any]]:
    """Letter and polygon of each leaf of the base, then of each part, none of which goes round."""
    part = made.bases[0]
    folding = Folding(shapely, part)
    edges = [0.0, *folding.scores, folding.height if folding.level else folding.width]
    for leaf in folding.leaves():
        a, b = edges[leaf], edges[leaf + 1]
        panel = shapely.box(0, a, folding.width, b) if folding.level else shapely.box(a, 0, b, folding.height)
        yield part.letter, folding.folded(panel, leaf)
    for one in made.lying:
        on_blank = folding.on_blank(box(shapely, one.rect), one)
        yield one.part.letter, folding.folded(on_blank, folding.leaf_of(one))


@pytest.mark.slow
def test_folded_alike(shapely: Any) -> None:
    """Every leaf and every part lies where it lies there; areas of overlaps are the same."""
    compared = overlaps = 0
    for seed in range(DESIGNS):
        made = design(seed)
        folded = fold_up(made, made.bases[0])
        theirs = list(folded_by_shapely(shapely, made))
        if len(folded.layers) != len(theirs):
            # Something overhangs both edges, and its ends were folded over: a case of its own.
            assert len(folded.layers) > len(theirs), seed
            continue
        face = folded.face
        ours = [(one.part.letter, box(shapely, one.rect.moved(-face.x, -face.y))) for one in folded.layers]
        assert [(one, bounds(rect)) for one, rect in ours] == [(one, bounds(rect)) for one, rect in theirs], (
            seed
        )
        compared += 1
        for (a, (_, other_a)), (b, (_, other_b)) in combinations(zip(folded.layers, theirs, strict=True), 2):
            common, area = a.rect.common(b.rect), other_a.intersection(other_b).area
            assert float(common.area if common else 0) == pytest.approx(area, abs=1e-6), seed
            overlaps += area > 0 and "A" not in (a.part.letter, b.part.letter)
    assert compared > DESIGNS * 0.8
    assert overlaps > DESIGNS


@pytest.mark.slow
def test_what_stays_bare_alike(shapely: Any) -> None:
    """Rooms lie where nothing covers them there, and there is none just where nothing is left."""
    rooms = 0
    for seed in range(DESIGNS):
        made = design(seed)
        for one in made.lying:
            order = made.on(one.panel)
            later = [box(shapely, other.rect) for other in order[order.index(one) + 1 :]]
            bare = box(shapely, one.rect).difference(shapely.union_all(later))
            room = room_to_stamp(made, one)
            assert (room is None) == (bare.area < 1e-9), seed
            if room is not None:
                assert bare.buffer(1e-6).covers(box(shapely, room.rect)), seed
                assert float(room.rect.area) <= bare.area + 1e-6, seed
                rooms += room.rect != one.rect
        write = room_to_write(made, "A")
        if write is not None:
            over = shapely.union_all([box(shapely, other.rect) for other in made.on(write.panel)])
            assert box(shapely, write.rect).intersection(over).area < 1e-6, seed
    assert rooms > DESIGNS / 2
