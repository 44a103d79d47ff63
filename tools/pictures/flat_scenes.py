"""Covers of makes that lie: scattered, fanned, in rows, seen from straight above."""

from __future__ import annotations

from typing import Final

from arrange import Place, envelope, fallen, heap, middle, put_all, tie
from bench import Bench
from bundles import C6, bundle
from camera import lying
from fruit import hazelnut, sloe
from makes import Batch
from papers import paper_named
from picture import Picture


def sloe_lane(picture: Picture, batch: Batch) -> None:
    """Scattered, three on top in the middle."""
    bench = Bench(batch, 101)
    places = [
        (-206, -86, -11, 0), (14, -152, 4, 0), (218, -92, 9, 0), (-150, 100, 7, 0.5), (182, 112, -6, 0.5),
        (-96, -28, -8, 3.0), (112, -20, 6, 3.0), (6, 22, -2, 6.0),
    ]  # fmt: skip
    for number, (x, y, turn, lift) in enumerate(places[: batch.count]):
        put_all(picture, bench.folded(middle(batch, (x, y, turn), lift), number))
    for fruit in fallen(((-68, 101), (-82, 112), (-60, 116), (77, 96), (84, 110), (112, 88)), 6.4):
        sloe(picture, fruit)


def wren_note(picture: Picture, batch: Batch) -> None:
    """Fanned out like a hand of cards."""
    bench = Bench(batch, 201)
    for number, spoke in enumerate((20.5, 13.5, 7, 0, -7, -13.8, -20.5)[: batch.count]):
        frame = lying(0, -430, spoke, 0.8 + 0.9 * number).moved(-batch.size[0] / 2, 350 - 9 * (number % 2))
        put_all(picture, bench.flat(frame, number))
        tie(picture, frame, batch, 203 + number)


def first_frost(picture: Picture, batch: Batch) -> None:
    """Two loose rows."""
    bench = Bench(batch, 301)
    places = [
        (-158, -44, -19, 0.8), (-84, -64, 7, 0.8), (-8, -46, -5, 0.8), (66, -62, 13, 0.8),
        (146, -40, -9, 0.8),
        (-126, 70, 13, 1.6), (-50, 56, -10, 2.4), (28, 66, 4, 3.2), (104, 54, -14, 2.4), (176, 78, 8, 1.6),
    ]  # fmt: skip
    for number, (x, y, turn, lift) in enumerate(places[: batch.count]):
        frame = middle(batch, (x, y, turn), lift)
        put_all(picture, bench.flat(frame, number))
        tie(picture, frame, batch, 311 + number)


def hazel_square(picture: Picture, batch: Batch) -> None:
    """Scattered, with nuts."""
    bench = Bench(batch, 501)
    places = [
        (-196, -80, 6, 0), (176, -108, -5, 0), (-128, 96, -9, 0), (166, 88, 7, 1.5),
        (-34, -66, -4, 3.0), (54, 52, 5, 6.0),
    ]  # fmt: skip
    for number, (x, y, turn, lift) in enumerate(places[: batch.count]):
        put_all(picture, bench.folded(middle(batch, (x, y, turn), lift), number))
    for fruit in fallen(((69, -66), (88, -52), (66, -46), (-40, 78)), 8.4):
        hazelnut(picture, fruit)


GRID: Final = 152.0


def orchard_square(picture: Picture, batch: Batch) -> None:
    """All of them edge to edge in a grid, seen from straight above; no two alike."""
    bench = Bench(batch, 601)
    for number in range(batch.count):
        x, y = GRID * (number % 3 - 1), GRID * (number // 3 - 0.5)
        lean = (0.7, -0.5, 0.3, -0.9, 0.4, -3.4)[number % 6]
        put_all(picture, bench.folded(middle(batch, (x, y, lean)), number, gape=1.6))


def swift_slim(picture: Picture, batch: Batch) -> None:
    """A row that slides to the right, an envelope under its end."""
    bench = Bench(batch, 701)
    paper = paper_named("envelope-slim", batch.recorded.supplies)
    size = (8.875 * 25.4, 3.875 * 25.4)
    envelope(picture, heap((92, 36, 74), size), size, paper)
    places: list[Place] = [(-148, 6, -13), (-82, -6, -6), (-18, 2, 1), (46, -8, 7), (112, 6, 15)]
    for number, place in enumerate(places[: batch.count]):
        put_all(picture, bench.flat(middle(batch, place, 1.6 + 0.9 * number), number))


def letter_bundle(picture: Picture, batch: Batch) -> None:
    """Three bundles, one askew on the two others."""
    paper = paper_named("envelope-c6", batch.recorded.supplies)
    places: list[tuple[Place, float]] = [((-98, -62, -7), 0), ((92, -70, 8), 0), ((4, 62, -3), 0)]
    for number, (place, lift) in enumerate(places[: batch.count]):
        bundle(picture, Bench(batch, 801 + number), heap(place, C6).moved(0, 0, lift), number, paper)
