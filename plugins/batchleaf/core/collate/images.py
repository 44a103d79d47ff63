"""Images dealt round: each as often as the next, and each evenly over the papers that it meets."""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Sequence

from batchleaf.core.collate.alternating import balanced_colours


def deal_images(meets: Sequence[Sequence[Hashable]], images: int) -> list[list[int]]:
    """Which of so many images each part of each make gets, from 0.

    ``meets``: make by make what each part of it meets, such as its paper. Of all parts, of those that
    meet one thing, and of those of one make as many get one image as another, or one more: so nothing
    meets an image twice before it has met all of them.
    """
    if all(len(make) == 1 for make in meets):
        return _one_each([make[0] for make in meets], images)
    return _several_each(meets, images)


def _one_each(meets: Sequence[Hashable], images: int) -> list[list[int]]:
    """Round and round, with those that meet one thing next to each other."""
    first = {thing: at for at, thing in enumerate(dict.fromkeys(meets))}
    order = sorted(range(len(meets)), key=lambda make: first[meets[make]])
    dealt = {make: at % images for at, make in enumerate(order)}
    return [[dealt[make]] for make in range(len(meets))]


def _several_each(meets: Sequence[Sequence[Hashable]], images: int) -> list[list[int]]:
    """As colours of edges between what the parts meet and the makes they belong to.

    What has more edges than there are images is several nodes: full ones, which get every image
    once, and one with the rest.
    """
    met = Counter[Hashable]()
    edges: list[tuple[Hashable, Hashable]] = []
    for make, things in enumerate(meets):
        for at, thing in enumerate(things):
            edges.append((("met", thing, met[thing] // images), ("make", make, at // images)))
            met[thing] += 1
    colours = iter(balanced_colours(edges, images))
    return [[next(colours) for _ in make] for make in meets]
