"""Pictures in the maker's own pages, as others may have them: all their pixels, and nothing personal."""

from __future__ import annotations

from pathlib import Path
from typing import Final

from batchleaf.facts import Place, Problem, Weight
from batchleaf.render.photos import PHOTOS, UnreadableError, bytes_of
from batchleaf.render.stripped import HEAD, NotStrippedError, is_picture, stripped
from batchleaf.store import Store, key_of

_RECIPE: Final = b"stripped 1"
_TELLING: Final = frozenset(
    {
        *(".heic", ".heif", ".avif", ".tif", ".tiff", ".jxl", ".dng"),
        *(".mp4", ".m4v", ".mov", ".m4a", ".mp3", ".pdf"),
    }
)
"""Files that may say as much, and that are not taken apart here."""
_AS_IT_IS: Final = (
    "this file is published as it is, and may say where, when and by whom it was made; "
    "look into it, or save a picture as JPEG, PNG, WebP or GIF"
)
_BROKEN: Final = (
    "this picture breaks off, so what it says of its place and maker cannot be taken out; save it again"
)


def bare_copy(path: Path, place: Place, store: Store) -> Path | Problem | None:
    """A copy without all that its pixels do not need, or what is to be told of it at ``place``.

    ``None``: it is no picture, and no other file that is known to say more than it shows.
    """
    if path.suffix.lower() in _TELLING:
        return Problem(place, _AS_IT_IS, Weight.NOTICE)
    try:
        if not is_picture(_head(path)):
            return None
        data = bytes_of(path)
        key, kept = key_of(data, _RECIPE), store.part(PHOTOS)
        return kept.find(key) or kept.put(key, stripped(data))
    except NotStrippedError:
        return Problem(place, _BROKEN)
    except UnreadableError as reason:
        return Problem(place, str(reason))


def _head(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            return file.read(HEAD)
    except OSError:
        return b""
