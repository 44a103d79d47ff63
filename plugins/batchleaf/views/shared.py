"""What a page shows of itself where others pass its address on: which batch's picture, if any."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Photo
from batchleaf.views import site_map
from batchleaf.views.drawing.shapes import Box
from batchleaf.views.pictures import cover_photo
from batchleaf.views.stand_in import stand_in


@dataclass(frozen=True, slots=True)
class SharedPicture:
    """``photo``, or where the batch has none, ``boxes`` of which the first is the frame.

    ``alt`` says what is to be seen.
    """

    photo: Photo | None
    boxes: tuple[Box, ...]
    alt: str


def shared_pictures(figures: Figures) -> dict[str, SharedPicture]:
    """Address of a page → its picture: a batch's own, and on the pages that list batches the newest one's."""
    made = [batch for batch in figures.batches.values() if batch.made]
    found = {site_map.batch(batch.project.slug): batch for batch in made}
    for address, batches in _lists(made):
        if batches:
            found[address] = batches[-1]
    pictures = {address: _picture(batch, figures) for address, batch in found.items()}
    return {address: picture for address, picture in pictures.items() if picture.photo or picture.boxes}


def _lists(made: list[BatchFigures]) -> Iterator[tuple[str, list[BatchFigures]]]:
    yield site_map.HOME, made
    for slug in dict.fromkeys(batch.project.series for batch in made):
        if slug:
            yield site_map.series(slug), [batch for batch in made if batch.project.series == slug]


def _picture(batch: BatchFigures, figures: Figures) -> SharedPicture:
    photo = cover_photo(batch.project)
    if photo:
        return SharedPicture(photo, (), photo.alt or batch.project.title)
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    boxes = tuple(shape for shape in stand_in(batch, supplies) if isinstance(shape, Box))
    return SharedPicture(None, boxes, batch.project.title)
