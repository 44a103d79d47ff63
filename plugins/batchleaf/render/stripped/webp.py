"""WebP (RFC 9649): chunks that say how the picture looks, animated or not."""

from __future__ import annotations

import struct
from collections.abc import Iterator
from typing import Final

from batchleaf.render.stripped.turned import turned_alone

_KEPT: Final = frozenset({b"ICCP", b"ANIM", b"ALPH", b"VP8 ", b"VP8L"})
_HEADER: Final = 12
_FRAME: Final = 16
"""Bytes of a frame of an animation before its own chunks."""
_HAS_EXIF, _HAS_XMP = 0x08, 0x04


def of_webp(data: bytes) -> Iterator[bytes]:
    """The picture's own chunks, under a header with their length. Raises :class:`ValueError`."""
    (length,) = struct.unpack_from("<I", data, 4)
    if 8 + length > len(data):
        raise ValueError("the file breaks off")
    chunks = list(_chunks(data[_HEADER : 8 + length]))
    exif = next((turned_alone(body) for name, body in chunks if name == b"EXIF"), b"")
    body = b"".join(_kept(name, body, exif) for name, body in chunks)
    yield b"RIFF" + struct.pack("<I", 4 + len(body)) + b"WEBP"
    yield body


def _chunks(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    at = 0
    while at < len(data):
        name, length = struct.unpack_from("<4sI", data, at)
        body, at = data[at + 8 : at + 8 + length], at + 8 + length + length % 2
        if len(body) < length:
            raise ValueError("a chunk breaks off")
        yield name, body


def _kept(name: bytes, body: bytes, exif: bytes) -> bytes:
    match name:
        case b"VP8X":
            told = body[0] & ~(_HAS_EXIF | _HAS_XMP) | (_HAS_EXIF if exif else 0)
            return _chunk(name, bytes([told]) + body[1:])
        case b"EXIF":
            return _chunk(name, exif) if exif else b""
        case b"ANMF":
            frame = b"".join(_kept(*one, exif=b"") for one in _chunks(body[_FRAME:]))
            return _chunk(name, body[:_FRAME] + frame)
    return _chunk(name, body) if name in _KEPT else b""


def _chunk(name: bytes, body: bytes) -> bytes:
    return name + struct.pack("<I", len(body)) + body + b"\0" * (len(body) % 2)
