"""Photos made ready for the web: upright, sRGB, three widths, nothing personal in them.

The original is never published. Position, camera, comments and every other bit
of metadata stay behind, since each file is encoded anew from bare pixels.
"""

from __future__ import annotations

import io
import struct
import warnings
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from importlib import import_module
from pathlib import Path
from typing import Final

import PIL
from PIL import Image, ImageCms, ImageOps

from batchleaf.facts import Photo, Problem
from batchleaf.records.folder import READER_OF_PHONES
from batchleaf.store import Store, key_of
from batchleaf.views.pictures import PreparedPhoto

PHOTOS: Final = "photos"
"""The part of the store for pictures."""
LARGEST_FILE: Final = 80 * 1024 * 1024
LARGEST_PIXELS: Final = 120_000_000
LONGEST_SIDE: Final = 16_383
"""No WebP file has a longer side (RFC 9649, section 2.7)."""


def _read_those_of_phones() -> None:
    """HEIC is read where somebody installed what reads it: no part of what everybody needs."""
    try:
        import_module(READER_OF_PHONES).register_heif_opener()
    except ImportError:
        return


_read_those_of_phones()


@dataclass(frozen=True, slots=True)
class Recipe:
    """How photos are made; it spells itself into the cache's key, so a changed one makes new files."""

    widths: tuple[int, ...] = (480, 960, 1600)
    webp_quality: int = 80
    jpeg_quality: int = 82

    def spelt(self) -> bytes:
        """The recipe and the library's version as one text."""
        return f"{self} Pillow {PIL.__version__}".encode()


@dataclass(frozen=True, slots=True)
class PhotoFile:
    """One file to publish below ``photos/``."""

    name: str
    path: Path


@dataclass(frozen=True, slots=True)
class ReadyPhotos:
    """All photos that could be read, the files to publish, and what could not be read."""

    prepared: dict[str, PreparedPhoto]
    files: tuple[PhotoFile, ...]
    problems: tuple[Problem, ...]


_DAMAGED: Final = (
    *(OSError, SyntaxError, ValueError, TypeError, LookupError, EOFError, ArithmeticError, struct.error),
    Image.DecompressionBombError,
)
"""All that the library raises on bytes that are no picture."""


class UnreadableError(Exception):
    """Why a picture cannot be shown, as a sentence."""


def prepare(photos: Sequence[Photo], store: Store, recipe: Recipe = Recipe()) -> ReadyPhotos:
    """Make the files of ``photos``, or take them from ``store`` where they were made before."""
    with warnings.catch_warnings(), ThreadPoolExecutor(max_workers=2) as pool:
        # What matters of damaged or huge pictures is told as a problem.
        warnings.filterwarnings("ignore", module=r"PIL\.")
        kept = store.part(PHOTOS)
        made = list(pool.map(lambda photo: _outcome(photo, kept, recipe), photos))
    prepared: dict[str, PreparedPhoto] = {}
    files: dict[str, PhotoFile] = {}  # one photo may lie there twice, under two names
    problems: list[Problem] = []
    for photo, outcome in zip(photos, made, strict=True):
        if isinstance(outcome, Problem):
            problems.append(outcome)
        else:
            prepared[photo.path], own = outcome
            files |= {file.name: file for file in own}
    return ReadyPhotos(prepared, tuple(files.values()), tuple(problems))


def _outcome(
    photo: Photo, store: Store, recipe: Recipe
) -> tuple[PreparedPhoto, tuple[PhotoFile, ...]] | Problem:
    try:
        return _prepare_one(Path(photo.path), store, recipe)
    except UnreadableError as reason:
        return Problem(photo.place, str(reason))


def _prepare_one(path: Path, store: Store, recipe: Recipe) -> tuple[PreparedPhoto, tuple[PhotoFile, ...]]:
    data = bytes_of(path)
    key = key_of(data, recipe.spelt())
    kept = _from_store(key, store) or _made(data, key, store, recipe)
    return _described(kept), kept


def bytes_of(path: Path) -> bytes:
    """The file of a picture. Raises :class:`UnreadableError`."""
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise UnreadableError(
                f"this picture is larger than {LARGEST_FILE // 1024 // 1024} MB; make it smaller"
            )
        return path.read_bytes()
    except OSError:
        raise UnreadableError("this picture is gone, or may not be read") from None


def _made(data: bytes, key: str, store: Store, recipe: Recipe) -> tuple[PhotoFile, ...]:
    made = tuple(
        PhotoFile(name, store.put(_entry(key, name), content))
        for name, content in _encoded(data, key, recipe)
    )
    store.put(_entry(key, "names"), " ".join(file.name for file in made).encode())
    return made


def _name(key: str, width: int, ending: str) -> str:
    return f"{key[:16]}-{width}.{ending}"


def _entry(key: str, name: str) -> str:
    return key_of(key.encode(), name.encode())


def _from_store(key: str, store: Store) -> tuple[PhotoFile, ...] | None:
    """The files of a photo; a photo narrower than a width has no file of that width."""
    names = store.read(_entry(key, "names"))
    if names is None:
        return None
    found = [(name, store.find(_entry(key, name))) for name in names.decode("ascii").split()]
    files = tuple(PhotoFile(name, path) for name, path in found if path is not None)
    return files if len(files) == len(found) else None


def _encoded(data: bytes, key: str, recipe: Recipe) -> Iterator[tuple[str, bytes]]:
    image = opened_picture(data, max(recipe.widths))
    widths = [width for width in recipe.widths if width < image.width]
    widths.append(min(image.width, max(recipe.widths)))
    for width in sorted(set(widths), reverse=True):
        image = _resized(image, width)
        for ending, kind, options in (
            ("webp", "WEBP", {"quality": recipe.webp_quality, "method": 4}),
            ("jpg", "JPEG", {"quality": recipe.jpeg_quality, "optimize": True, "progressive": True}),
        ):
            out = io.BytesIO()
            image.save(out, kind, **options)
            yield _name(key, width, ending), out.getvalue()


def opened_picture(data: bytes, widest: int) -> Image.Image:
    """The picture upright, in sRGB, without anything but its pixels. Raises :class:`UnreadableError`.

    It may come in fewer pixels than it has, though not narrower than twice ``widest``.
    """
    try:
        image = Image.open(io.BytesIO(data))
        if image.width * image.height > LARGEST_PIXELS:
            raise UnreadableError(f"this picture has {image.width} × {image.height} pixels; make it smaller")
        if image.width * LONGEST_SIDE < image.height * min(image.width, image.height, widest):
            raise UnreadableError("this picture is too long for its width; cut it shorter")
        image.draft("RGB", (widest * 2, widest * 2))
        upright = ImageOps.exif_transpose(image)
        return _bare(_in_srgb(upright))
    except _DAMAGED:
        raise UnreadableError("this picture cannot be read; save it again as JPEG or PNG") from None


def _in_srgb(image: Image.Image) -> Image.Image:
    profile = image.info.get("icc_profile")
    if image.mode.startswith("I"):
        image = _eight_bits(image)
    if image.mode not in ("RGB", "RGBA"):
        image = image.convert("RGBA" if "transparency" in image.info or image.mode == "LA" else "RGB")
    if not profile:
        return image
    try:
        given = ImageCms.ImageCmsProfile(io.BytesIO(profile))
        turned = ImageCms.profileToProfile(image, given, ImageCms.createProfile("sRGB"))
    except (
        ImageCms.PyCMSError,
        OSError,
    ):  # a profile that does not fit its picture is ignored, as browsers do
        return image
    return turned or image


def _eight_bits(grey: Image.Image) -> Image.Image:
    """Sixteen bits of grey as eight; the library would cut them off at 255, which is white."""
    eight = grey.convert("I").point(lambda value: value * (1 / 256)).convert("L")
    eight.info.pop("transparency", None)  # counted in sixteen bits, so it fits no grey any more
    return eight


def _bare(image: Image.Image) -> Image.Image:
    """Pixels on white paper, with no information attached."""
    bare = Image.new("RGB", image.size, (255, 255, 255))
    bare.paste(image, mask=image.getchannel("A") if image.mode == "RGBA" else None)
    return bare


def _resized(image: Image.Image, width: int) -> Image.Image:
    if width == image.width:
        return image
    height = max(1, round(image.height * width / image.width))
    return image.resize((width, height), Image.Resampling.LANCZOS, reducing_gap=3.0)


def _described(files: tuple[PhotoFile, ...]) -> PreparedPhoto:
    by_ending = {
        ending: tuple(
            sorted((_width_in(file.name), file.name) for file in files if file.name.endswith(ending))
        )
        for ending in ("webp", "jpg")
    }
    largest = next(file for file in files if file.name == by_ending["jpg"][-1][1])
    with Image.open(largest.path) as image:
        width, height = image.size
    return PreparedPhoto(
        width=width,
        height=height,
        webp=tuple((name, width) for width, name in by_ending["webp"]),
        jpeg=tuple((name, width) for width, name in by_ending["jpg"]),
    )


def _width_in(name: str) -> int:
    return int(name.rpartition("-")[2].partition(".")[0])
