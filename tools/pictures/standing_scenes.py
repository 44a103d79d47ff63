"""Covers of makes that stand, or have a height: the light comes over the left shoulder."""

from __future__ import annotations

from arrange import fallen, heap, middle, put_all, stand_all
from bench import Bench
from boxes import closed_box, leaning_lid, open_box
from camera import lying, standing
from fruit import sloe
from gates import closed_gate
from leaves import folded_up, gate, put_leaves, zigzag
from makes import Batch
from picture import Picture
from ribbon import tied


def ropewalk_place(picture: Picture, batch: Batch) -> None:
    """In three rows, as on their way to a table."""
    bench = Bench(batch, 401)
    places = [
        ((-176, -150), 9), ((-44, -172), -5), ((100, -158), -12),
        ((-104, -54), -8), ((74, -62), 11),
        ((-156, 54), 12), ((-8, 38), -6), ((142, 46), -12),
    ]  # fmt: skip
    stand_all(picture, [bench.tent(at, turn, n) for n, (at, turn) in enumerate(places[: batch.count])])
    for fruit in fallen(((66, 60), (78, 68), (-66, 76)), 6.0):
        sloe(picture, fruit)


def ivy_gate(picture: Picture, batch: Batch) -> None:
    """One stands with its doors open, one a little open, one lies closed in its band."""
    bench = Bench(batch, 901)
    height = batch.size[1]
    back = gate(bench, standing(104, -104, height, -11), 1, (34, 27))
    front = gate(bench, standing(-72, -130, height, 5), 0, (120, 118))
    put_leaves(picture, [back, front])
    closed_gate(picture, bench, heap((20, 18, -12), batch.size), 2)


def puddle_ice(picture: Picture, batch: Batch) -> None:
    """One stands half open, two lie on the boards."""
    bench = Bench(batch, 1001)
    stand_all(picture, [bench.stood((-124, 26), 9, 40, 0)])
    put_all(picture, bench.folded(middle(batch, (56, -70, 9)), 1))
    put_all(picture, bench.folded(middle(batch, (98, 56, -10), 3.2), 2))


def hawthorn_boxes(picture: Picture, batch: Batch) -> None:
    """Two closed, and one open whose lid leans on it."""
    bench = Bench(batch, 1101)
    closed_box(picture, bench, lying(-118, -92, -14), 1)
    closed_box(picture, bench, lying(34, -118, 18), 2)
    place = lying(-62, -10, 7)
    open_box(picture, bench, place, 0)
    leaning_lid(picture, bench, place, 0)


def towpath(picture: Picture, batch: Batch) -> None:
    """One stands to and fro, one lies folded and tied."""
    bench = Bench(batch, 1201)
    put_leaves(picture, [zigzag(bench, (-186, -140), 9, 29, 0)])
    frame = heap((-24, 16, -13), batch.panels[0])
    put_all(picture, folded_up(bench, frame, 1))
    ribbon = batch.recorded.used("ribbon")
    if ribbon is not None:
        width, height = batch.panels[0]
        place = frame.moved(0, height * 0.5, 4.6)
        tied(picture, place, (-0.6, width + 0.6), width * 0.44, ribbon.colour, 8.0, 1211)
