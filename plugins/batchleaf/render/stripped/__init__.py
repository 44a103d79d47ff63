"""Pictures as they are, pixel by pixel, without what else their files say.

Nothing is decoded: segments and chunks that say where, when, by whom and with what a picture was
made are left out, and whatever follows its end. What its pixels need to be shown stays: tables,
colour profiles, which way it is turned, the frames of an animation.
"""

from __future__ import annotations

import struct
from collections.abc import Callable, Iterator
from typing import Final

from batchleaf.render.stripped.gif import of_gif
from batchleaf.render.stripped.jpeg import of_jpeg
from batchleaf.render.stripped.png import of_png
from batchleaf.render.stripped.webp import of_webp

HEAD: Final = 16
"""So many bytes tell what a file is."""

_KINDS: Final[tuple[tuple[bytes, Callable[[bytes], Iterator[bytes]]], ...]] = (
    (b"\xff\xd8\xff", of_jpeg),
    (b"\x89PNG\r\n\x1a\n", of_png),
    (b"GIF8", of_gif),
)


class NotStrippedError(ValueError):
    """A file that begins as a picture and does not go on as one."""


def is_picture(head: bytes) -> bool:
    """Whether a file that begins so is a picture that can be stripped."""
    return _kind(head) is not None


def stripped(data: bytes) -> bytes:
    """The picture alone. Raises :class:`NotStrippedError` where it cannot be taken apart."""
    kind = _kind(data[:HEAD])
    try:
        return b"".join(kind(data)) if kind else data
    except (IndexError, ValueError, struct.error):
        raise NotStrippedError from None


def _kind(head: bytes) -> Callable[[bytes], Iterator[bytes]] | None:
    if head[:4] == b"RIFF" and head[8:12] == b"WEBP":
        return of_webp
    return next((kind for start, kind in _KINDS if head.startswith(start)), None)
