"""Pictures that go with single steps: parts on the mat, a closer look."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from arrange import Place, fallen, heap, heap_up, middle, put_all, rule, stand_all
from batches import FIRST_FROST, HAZEL_SQUARE, ROPEWALK_PLACE, SLOE_LANE, WREN_NOTE
from camera import lying
from covers import FRONT
from develop import Exposure, Focus
from fruit import hazelnut, sloe
from makes import Batch, Bench, Shape
from picture import Picture
from pieces import TABLE, Outline, Piece, put, rectangle
from scene import Scene

MAT: Final = (430.0, 290.0)


def _mat(picture: Picture, x: float = 0, y: float = 0, turn: float = 0) -> None:
    put(picture, Piece(heap((x, y, turn), MAT).moved(0, 0, 0.5), rectangle(*MAT), "mat", thick=0.9))


def _heaps(picture: Picture, batch: Batch, seed: int, places: list[tuple[int, Place, int]]) -> None:
    """Heaps of a batch's parts; a place names the layer's number, where, and how many."""
    bench = Bench(seed)
    for number, place, count in places:
        layer = batch.layers[number]
        size = (layer.width, layer.height)
        heap_up(picture, bench.stack(size, layer.papers[:1], heap(place, size), count))


def sloe_cut(picture: Picture) -> None:
    _mat(picture)
    bench = Bench(111)
    size = (SLOE_LANE.width, SLOE_LANE.height)
    heap_up(picture, bench.stack(size, (SLOE_LANE.base,), heap((-118, -50, -3), size), 12))
    _heaps(picture, SLOE_LANE, 112, [
        (0, (0, -54, 2), 13), (1, (106, -74, -4), 13), (2, (106, 0, 3), 14), (3, (92, 34, -6), 12),
    ])  # fmt: skip
    rule(picture, (-26, 76, -3))


def sloe_label(picture: Picture) -> None:
    bench = Bench(121)
    for number, (x, y, turn, lift) in enumerate([(-112, -74, -9, 0.0), (96, -96, 8, 0.0), (8, -22, -4, 3.0)]):
        put_all(picture, bench.folded(SLOE_LANE, middle(SLOE_LANE, (x, y, turn), lift), number))
    for fruit in fallen(((-62, 28), (-74, 36), (82, 22)), 6.4):
        sloe(picture, fruit)


def wren_cut(picture: Picture) -> None:
    _mat(picture)
    bench = Bench(211)
    size = (WREN_NOTE.width, WREN_NOTE.height)
    heap_up(picture, bench.stack(size, (WREN_NOTE.base,), heap((-120, -14, -4), size), 12))
    strip = WREN_NOTE.layers[0]
    for place, paper in zip([(-50, -56, 3), (8, -52, -5), (66, -58, 4)], strip.papers, strict=True):
        size = (strip.width, strip.height)
        heap_up(picture, bench.stack(size, (paper,), heap(place, size), 8))
    _heaps(picture, WREN_NOTE, 212, [(1, (110, -66, 9), 12), (1, (112, -44, -5), 9)])
    rule(picture, (78, 24, -3), 280)


def frost_clip(picture: Picture) -> None:
    at = middle(FIRST_FROST, (-28, -10, -7))
    tags = []
    for i in range(10):
        place = at.moved(0.4 * (i % 3), -0.5 * (i % 2), 0.45 * (i + 1)).turned(0.5 * (i % 3 - 1))
        below = at.moved(0, 0, 0.45 * i) if i else TABLE
        tags.append(Piece(place, FIRST_FROST.outline, FIRST_FROST.base, below, (31.0 * i, 7.0 * i)))
    heap_up(picture, tags)
    corner = Outline(((0, 0), (FIRST_FROST.clip, 0), (0, FIRST_FROST.clip)))
    places = [
        (30, -30, 20),
        (46, -20, 130),
        (36, -8, 260),
        (62, -34, 75),
        (58, -2, 310),
        (76, -16, 170),
        (24, 12, 45),
    ]
    for x, y, turn in places:
        put(picture, Piece(lying(x, y, turn, 0.6 + 0.02 * x), corner, FIRST_FROST.base))
    bench = Bench(311)
    panel, dot = FIRST_FROST.layers
    size = (panel.width, panel.height)
    heap_up(picture, bench.stack(size, panel.papers, heap((-98, 4, 8), size), 11))
    for x, y in ((22, 40), (44, 33), (33, 58), (65, 46), (56, 68)):
        put_all(picture, bench.flat(_only(FIRST_FROST, dot.shape), lying(x, y, 0, 0.6), 0)[1:])


def _only(batch: Batch, shape: Shape) -> Batch:
    """A batch with nothing but its parts of one shape, laid at the zero point."""
    return replace(batch, layers=tuple(replace(la, x=0, y=0) for la in batch.layers if la.shape is shape))


def ropewalk_fold(picture: Picture) -> None:
    bench = Bench(411)
    blank = (ROPEWALK_PLACE.width, 2 * ROPEWALK_PLACE.height)
    heap_up(picture, bench.stack(blank, (ROPEWALK_PLACE.base,), heap((-92, -26, -10), blank), 9))
    makes = [bench.tent(ROPEWALK_PLACE, at, turn, 0) for at, turn in (((62, -96), -14), ((40, -2), 6))]
    stand_all(picture, makes)
    strip = ROPEWALK_PLACE.layers[0]
    size = (strip.width, strip.height)
    heap_up(picture, bench.stack(size, strip.papers, heap((-52, 62, 5), size), 9))


def hazel_stand(picture: Picture) -> None:
    bench = Bench(521)
    places = [((-150, -120), 7.0, 40.0, 1), ((22, -104), -9.0, 44.0, 0), ((-70, 20), 4.0, 38.0, 0)]
    stand_all(picture, [bench.stood(HAZEL_SQUARE, *place) for place in places])
    for fruit in fallen(((88, 34), (104, 24), (96, 46)), 8.4):
        hazelnut(picture, fruit)


CLOSE: Final = Exposure(focus=Focus(0.58, 0.2, 6))
BENCH: Final = Exposure(focus=Focus(0.5, 0.34, 4))

STEPS: Final = (
    Scene(SLOE_LANE, "01-cut.jpg", "oak", sloe_cut, 340, 38, (-6, -20), 700, -8, exposure=BENCH),
    Scene(SLOE_LANE, "03-label.jpg", "oak", sloe_label, 200, 44, (6, -4), 460, -8, exposure=CLOSE),
    Scene(WREN_NOTE, "01-cut.jpg", "oak", wren_cut, 304, 38, (-12, -24), 700, -8, exposure=BENCH),
    Scene(FIRST_FROST, "01-clip.jpg", "plaster", frost_clip, 232, 38, (-16, 4), 600, exposure=BENCH),
    Scene(ROPEWALK_PLACE, "01-fold.jpg", "linen", ropewalk_fold, 250, 50, (-20, -14), 560, 12, FRONT,
          exposure=CLOSE),
    Scene(HAZEL_SQUARE, "03-stand.jpg", "felt", hazel_stand, 392, 62, (-6, -100), 640, 0, FRONT,
          Exposure(focus=Focus(0.6, 0.3, 4))),
)  # fmt: skip
