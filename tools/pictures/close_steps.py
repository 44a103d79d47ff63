"""Steps seen closely: a make that is nearly done."""

from __future__ import annotations

from arrange import fallen, heap, heap_up, middle, put_all, stand_all
from bench import Bench
from boxes import flat_lid
from camera import lying
from fruit import hazelnut, knob, sloe
from gates import band_round
from leaves import gate, put_leaves, zigzag
from makes import Batch, part_size
from outlines import rectangle
from picture import Picture
from pieces import TABLE, Piece, put


def sloe_label(picture: Picture, batch: Batch) -> None:
    """The label on its foam."""
    bench = Bench(batch, 121)
    for number, (x, y, turn, lift) in enumerate([(-112, -74, -9, 0.0), (96, -96, 8, 0.0), (8, -22, -4, 3.0)]):
        put_all(picture, bench.folded(middle(batch, (x, y, turn), lift), number))
    for fruit in fallen(((-62, 28), (-74, 36), (82, 22)), 6.4):
        sloe(picture, fruit)


def hazel_stand(picture: Picture, batch: Batch) -> None:
    """Three that stand."""
    bench = Bench(batch, 521)
    places = [((-150, -120), 7.0, 40.0, 1), ((22, -104), -9.0, 44.0, 0), ((-70, 20), 4.0, 38.0, 0)]
    stand_all(picture, [bench.stood(*place) for place in places])
    for fruit in fallen(((88, 34), (104, 24), (96, 46)), 8.4):
        hazelnut(picture, fruit)


def gate_message(picture: Picture, batch: Batch) -> None:
    """A gate laid open, the message stuck in; the others' messages on a heap."""
    bench = Bench(batch, 921)
    put_leaves(picture, [gate(bench, middle(batch, (-6, -6, -4), 0.4), 0, (158, 149))])
    size = part_size(batch.recorded.part("C"))
    heap_up(picture, bench.heap("C", heap((150, 20, 12), size), 7))


def gate_band(picture: Picture, batch: Batch) -> None:
    """A band lies under a closed card; one end is on its way round."""
    bench = Bench(batch, 931)
    part = batch.recorded.part("D")
    broad, long = (float(length) for length in (part.size.width, part.size.height))
    broad, long = min(broad, long), max(broad, long)
    frame = middle(batch, (10, -4, -7), 0.8)
    height = batch.size[1]
    flat = frame.moved(-4, (height - broad) / 2 - 1, -0.5).turned(0.6)
    put(picture, Piece(flat, rectangle(long * 0.62, broad), batch.paper("D")))
    put_leaves(picture, [gate(bench, frame, 0, (1.0, 1.0))])
    end = frame.moved(-1.0, (height - broad) / 2, 1.0).opened(34)
    put(picture, Piece(end, rectangle(long * 0.37, broad), batch.paper("D"), frame.moved(0, 0, 2)))
    back = middle(batch, (-152, -92, 9), 0.3)
    put_leaves(picture, [gate(bench, back, 1, (0.8, 0.8))])
    band_round(picture, bench, back.moved(0, 0, 2.4), 1)


def ice_on_slate(picture: Picture, batch: Batch) -> None:
    """A backing with its ice, the other ices, and a sheet of film."""
    bench = Bench(batch, 1021)
    size = part_size(batch.recorded.base)
    put(picture, bench.blank(heap((86, -18, 9), size).moved(0, 0, 0.5), 0))
    frame = middle(batch, (-30, 2, -6), 0.5)
    put_all(picture, bench.layers(frame, 0, panel=1))
    ice = part_size(batch.recorded.part("C"))
    heap_up(picture, bench.heap("C", heap((98, 26, -7), ice), 6))


def label_on_film(picture: Picture, batch: Batch) -> None:
    """The label on the front of the film."""
    bench = Bench(batch, 1031)
    put_all(picture, bench.folded(middle(batch, (-116, -66, -12)), 1))
    put_all(picture, bench.folded(middle(batch, (14, -18, 5)), 0))


def patch_and_label(picture: Picture, batch: Batch) -> None:
    """The middle of a band with its patch and label; labels beside it."""
    bench = Bench(batch, 831)
    long = float(batch.recorded.base.size.height)
    wide = part_size(batch.recorded.base)[0]
    for i, (x, turn) in enumerate(((-64, 3), (8, -2))):
        frame = lying(x, 4, turn, 0.7).moved(-wide / 2, -long / 2)
        put_all(picture, bench.flat(frame, i))
    size = part_size(batch.recorded.part("C"))
    heap_up(picture, bench.heap("C", heap((70, -26, -9), size), batch.count - 3))
    put(picture, bench.one("C", heap((66, 14, 14), size).moved(0, 0, 0.5), 1))


def lid_with_knob(picture: Picture, batch: Batch) -> None:
    """A lid's blank, flat, with its brad; one that is pierced and waits; and a few brads."""
    bench = Bench(batch, 1131)
    lid = batch.lid
    brad = batch.recorded.used("brads")
    if lid is None or brad is None:
        return
    size = float(lid.size.width), float(lid.size.height)
    flat_lid(picture, bench, lid, heap((-52, -66, -17), size))
    frame = heap((-8, 18, 12), size)
    flat_lid(picture, bench, lid, frame)
    knob(picture, frame.moved(size[0] / 2, size[1] / 2, 1.2), 4.0, brad.colour)
    for x, y in ((58, 22), (70, 36), (54, 42), (74, 8)):
        knob(picture, lying(x, y), 4.0, brad.colour)


def strip_folded(picture: Picture, batch: Batch) -> None:
    """Bare strips, folded to and fro; one nearly shut."""
    bench = Bench(batch, 1221)
    strips = [zigzag(bench, (-182, -112), 8, 32, 0), zigzag(bench, (-24, -8), 14, 71, 1)]
    put_leaves(picture, [[leaf.bare() for leaf in strip] for strip in strips])


def reeds(picture: Picture, batch: Batch) -> None:
    """Reeds with their feet behind the bank; two that wait."""
    bench = Bench(batch, 1231)
    put_leaves(picture, [zigzag(bench, (-150, -60), 2, 26, 0)])
    for place in ((-60, -2, 72), (-28, 10, 98)):
        size = part_size(batch.recorded.part("C"))
        put(picture, bench.one("C", heap((place[0], place[1], place[2]), size).moved(0, 0, 0.6)))


def sky_and_line(picture: Picture, batch: Batch) -> None:
    """A card with its sky and its line."""
    bench = Bench(batch, 741)
    for number, place in enumerate(((-84, 12, -9), (16, -2, 4))):
        frame = heap((place[0], place[1], place[2]), batch.size).moved(0, 0, 0.6)
        put(picture, bench.blank(frame, number))
        put_all(picture, bench.layers(frame, number, without="D"))
    size = part_size(batch.recorded.part("D"))
    for number, (x, y, turn) in enumerate(((96, -46, 12), (104, -20, -6), (94, 10, 4))):
        put(picture, bench.one("D", heap((x, y, turn), size).moved(0, 0, 0.5), number, TABLE))
