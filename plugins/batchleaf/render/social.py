"""A page's picture for those who pass its address on: 1200 by 630 pixels, cut from the middle of a photo.

The size is the one that sites which show a linked page commonly ask for (common practice).
"""

from __future__ import annotations

import io
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import PIL
from PIL import Image, ImageDraw, ImageOps

from batchleaf.facts import Photo
from batchleaf.measure.colours import Colour
from batchleaf.render.look import Look
from batchleaf.render.photos import PHOTOS, PhotoFile, ReadyPhotos
from batchleaf.store import Store, key_of
from batchleaf.views.drawing.shapes import Box
from batchleaf.views.shared import SharedPicture

SIZE: Final = (1200, 630)
QUALITY: Final = 82
_FINER: Final = 2
"""A drawing is made so many times as large, and its edges are smooth once it is small again."""
_MARGIN: Final = 0.1


@dataclass(frozen=True, slots=True)
class SocialPicture:
    """A file below ``photos/``, and in words what is on it."""

    file: PhotoFile
    alt: str


def social_pictures(
    shared: Mapping[str, SharedPicture], ready: ReadyPhotos, look: Look, store: Store
) -> dict[str, SocialPicture]:
    """Address of a page → its picture, cut from a photo that is ready, or drawn."""
    return {
        address: SocialPicture(
            _of_photo(_largest(picture.photo, ready), store)
            if picture.photo
            else _of_boxes(picture.boxes, look, store),
            picture.alt,
        )
        for address, picture in shared.items()
    }


def _largest(photo: Photo, ready: ReadyPhotos) -> PhotoFile:
    name, _ = ready.prepared[photo.path].jpeg[-1]
    return next(file for file in ready.files if file.name == name)


def _of_photo(photo: PhotoFile, store: Store) -> PhotoFile:
    # The name of a photo's file stands for its content.
    return _kept(photo.name, store, lambda: _cut(photo.path))


def _of_boxes(boxes: tuple[Box, ...], look: Look, store: Store) -> PhotoFile:
    return _kept(repr((boxes, look)), store, lambda: _drawn(boxes, look))


def _kept(content: str, store: Store, make: Callable[[], Image.Image]) -> PhotoFile:
    key = key_of(content.encode(), f"{SIZE} {QUALITY} Pillow {PIL.__version__}".encode())
    photos = store.part(PHOTOS)
    path = photos.find(key) or photos.put(key, _encoded(make()))
    return PhotoFile(f"{key[:16]}-{SIZE[0]}x{SIZE[1]}.jpg", path)


def _cut(photo: Path) -> Image.Image:
    with Image.open(photo) as image:
        return ImageOps.fit(image.convert("RGB"), SIZE, Image.Resampling.LANCZOS)


def _drawn(boxes: tuple[Box, ...], look: Look) -> Image.Image:
    """Boxes in the middle of the page's ground, as large as a margin allows."""
    wide, high = (side * _FINER for side in SIZE)
    frame = boxes[0]
    scale = (1 - 2 * _MARGIN) * min(wide / frame.width, high / frame.height)
    left, top = (wide - frame.width * scale) / 2, (high - frame.height * scale) / 2
    image = Image.new("RGB", (wide, high), str(look.ground))
    draw = ImageDraw.Draw(image)
    outline = str(look.ground.mixed(look.ink, 0.2))
    for box in boxes:
        x, y = left + (box.x - frame.x) * scale, top + (box.y - frame.y) * scale
        corners = (x, y, x + box.width * scale, y + box.height * scale)
        draw.rectangle(corners, fill=_colour(box.fill), outline=outline, width=_FINER)
    return image.resize(SIZE, Image.Resampling.LANCZOS)


def _colour(fill: str) -> str | None:
    return str(Colour.of(fill)) if fill else None


def _encoded(image: Image.Image) -> bytes:
    out = io.BytesIO()
    image.save(out, "JPEG", quality=QUALITY, optimize=True, progressive=True)
    return out.getvalue()
