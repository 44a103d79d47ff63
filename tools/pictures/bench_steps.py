"""Steps at the bench: parts on the mat or the table, cut, scored, in heaps."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from arrange import Place, heap, heap_up, mat, put_all, rule, stand_all
from bench import Bench
from camera import lying
from makes import Batch, part_size
from outlines import Outline, rectangle
from picture import Picture
from pieces import TABLE, Piece, put
from stamps import scores, slits

INCH: Final = 25.4

Heaps = list[tuple[str, Place, int]]
"""The letter of a part, the middle of its heap, and how many."""


def _heaps(picture: Picture, bench: Bench, places: Heaps, number: int = 0) -> None:
    for letter, place, count in places:
        size = part_size(bench.batch.recorded.part(letter))
        heap_up(picture, bench.heap(letter, heap(place, size), count, number))


def sloe_cut(picture: Picture, batch: Batch) -> None:
    """All parts in heaps over a steel rule."""
    mat(picture)
    _heaps(picture, Bench(batch, 111), [
        ("A", (-118, -50, -3), 12), ("B", (0, -54, 2), 13), ("C", (106, -74, -4), 13),
        ("D", (106, 0, 3), 14), ("E", (92, 34, -6), 12),
    ])  # fmt: skip
    rule(picture, (-26, 76, -3))


def wren_cut(picture: Picture, batch: Batch) -> None:
    """Bookmarks without their holes, the strips in their papers, labels."""
    mat(picture)
    bench = Bench(batch, 211)
    bookmark = heap((-120, -14, -4), batch.size)
    heap_up(picture, bench.stack(batch.outline().pierced(), batch.paper("A"), bookmark, 12))
    places: list[Place] = [(-50, -56, 3), (8, -52, -5), (66, -58, 4)]
    for number, place in enumerate(places):
        _heaps(picture, bench, [("B", place, 8)], number)
    _heaps(picture, bench, [("C", (110, -66, 9), 12), ("C", (112, -44, -5), 9)])
    rule(picture, (78, 24, -3), 280)


CLIPPED: Final = 14.0
CORNERS: Final = (
    (30, -30, 20), (46, -20, 130), (36, -8, 260), (62, -34, 75), (58, -2, 310), (76, -16, 170), (24, 12, 45),
)  # fmt: skip


def frost_clip(picture: Picture, batch: Batch) -> None:
    """Tags with their corners clipped, and the corners; no hole yet."""
    bench = Bench(batch, 311)
    frame = heap((-28, -10, -7), batch.size)
    heap_up(picture, bench.stack(batch.outline().pierced(), batch.paper("A"), frame, 10))
    corner = Outline(((0, 0), (CLIPPED, 0), (0, CLIPPED)))
    for x, y, turn in CORNERS:
        put(picture, Piece(lying(x, y, turn, 0.6 + 0.02 * x), corner, batch.paper("A")))
    _heaps(picture, bench, [("B", (-98, 4, 8), 11)])
    for x, y in ((22, 40), (44, 33), (33, 58), (65, 46), (56, 68)):
        put(picture, bench.one("C", lying(x, y, 0, 0.6)))


def ropewalk_fold(picture: Picture, batch: Batch) -> None:
    """Blanks, two that are folded, and the bands."""
    bench = Bench(batch, 411)
    blank = batch.recorded.base.size
    heap_up(picture, bench.blanks(heap((-92, -26, -10), (float(blank.width), float(blank.height))), 9))
    places = (((62.0, -96.0), -14), ((40.0, -2.0), 6))
    stand_all(picture, [bench.tent(at, turn, 0) for at, turn in places])
    _heaps(picture, bench, [("B", (-52, 62, 5), 9)])


def bands_cut(picture: Picture, batch: Batch) -> None:
    """Bands side by side, patches and labels above them."""
    mat(picture)
    bench = Bench(batch, 821)
    size = part_size(batch.recorded.base)
    for i in range(4):
        place = heap((-6 + 5 * (i % 2), -66 + 55 * i, 90 + (0.8, -0.6, 0.3, -0.9)[i]), size)
        put(picture, bench.blank(place.moved(0, 0, 0.9), i))
    _heaps(picture, bench, [("B", (-124, -122, -6), 12), ("C", (-68, -120, 7), 12)])
    rule(picture, (86, -118, -2), 210)


def box_score(picture: Picture, batch: Batch) -> None:
    """The blanks of a bottom and a lid, scored and cut at the corners, and more of them beneath."""
    mat(picture)
    bench = Bench(batch, 1121)
    lid = batch.lid
    for part, place, count in ((batch.recorded.base, (-62, -8, -4), 6), (lid, (76, -20, 5), 5)):
        if part is None:
            continue
        width, height = float(part.size.width), float(part.size.height)
        frame = heap((place[0], place[1], place[2]), (width, height))
        pieces = bench.stack(rectangle(width, height), batch.paper("A"), frame, count)
        top = pieces[-1]
        heap_up(
            picture,
            [*pieces[:-1], replace(top, stamps=(scores(part), slits(part)))],
        )
    rule(picture, (16, 84, -2), 300)


SLIPS: Final = ((-5.25, -2.0, 0.4), (-1.6, -2.0, -0.3), (2.05, -2.0, 0.5))
"""Three upright, so far from each other as the knife left them; in inches and degrees."""


def slips_cut(picture: Picture, batch: Batch) -> None:
    """The four cards of one sheet, as they lay on it."""
    mat(picture, (0, 0, 90), (470, 400))
    bench = Bench(batch, 721)
    height = part_size(batch.recorded.base)[1]
    for i, (x, y, turn) in enumerate(SLIPS):
        put(picture, bench.blank(lying(x * INCH, (y - 3.9) * INCH, turn, 0.9), i))
    across = lying(-5.2 * INCH, (height / INCH - 5.7 + 3.75) * INCH, -90.6, 0.9)
    put(picture, bench.blank(across, 3))
    rule(picture, (168, -24, 88), 320)


def slips_and_skies(picture: Picture, batch: Batch) -> None:
    """Bare slips fanned a little, squares of the paper for their sky beside them."""
    bench = Bench(batch, 731)
    for i in range(6):
        frame = heap((-92 + 15 * i, 6 + 3 * (i % 2), -9 + 3.1 * i), part_size(batch.recorded.base))
        put(picture, bench.blank(frame.moved(0, 0, 0.7 + 0.6 * i), i))
    _heaps(picture, bench, [("B", (92, -52, 7), 8), ("B", (104, 44, -8), 4)])
    _heaps(picture, bench, [("C", (92, 110, 4), 7)])


def squares_laid_out(picture: Picture, batch: Batch) -> None:
    """Four squares two and two on a panel, not stuck yet; the others in heaps by their papers."""
    bench = Bench(batch, 621)
    panel = part_size(batch.recorded.part("B"))
    put(picture, bench.one("B", heap((-34, -4, -5), panel).moved(0, 0, 0.6)))
    frame = heap((-34, -4, -5), batch.size).moved(0, 0, 0.6)
    squares = bench.layers(frame, 1, without="B")
    loose = ((1.5, -1, 1.4), (-0.5, 1.2, -2.0), (1.0, 0.6, 1.0), (7.5, 5.5, 6.5))
    for piece, (x, y, turn) in zip(squares, loose, strict=True):
        put(
            picture,
            Piece(piece.frame.moved(x, y).turned(turn), piece.outline, piece.paper, frame, piece.shift),
        )
    square = batch.recorded.part("C")
    first = {batch.recorded.papers_of(square, n)[0]: n for n in reversed(range(batch.count))}
    places: list[Place] = [(84, -66, 8), (92, -4, -4), (82, 60, 11)]
    for place, paper in zip(places, square.papers, strict=True):
        _heaps(picture, bench, [("C", place, 5)], first[paper])
    put_all(picture, [bench.one("B", heap((-168, -40, 10), panel).moved(0, 0, 0.6), onto=TABLE)])
