"""PNG (W3C, third edition): chunks that say how the picture looks, animated or not."""

from __future__ import annotations

import struct
import zlib
from collections.abc import Iterator
from typing import Final

from batchleaf.render.stripped.turned import turned_alone

_SIGNATURE: Final = 8
_KEPT: Final = frozenset(
    {
        *(b"IHDR", b"PLTE", b"IDAT", b"IEND", b"tRNS", b"bKGD", b"sBIT", b"hIST", b"pHYs"),
        *(b"gAMA", b"cHRM", b"sRGB", b"cICP", b"mDCV", b"cLLI"),
        *(b"acTL", b"fcTL", b"fdAT"),
    }
)


def of_png(data: bytes) -> Iterator[bytes]:
    """The picture's own chunks. Raises :class:`ValueError`."""
    yield data[:_SIGNATURE]
    at, name = _SIGNATURE, b""
    while name != b"IEND":
        length, name = struct.unpack_from(">I4s", data, at)
        body, at = data[at + 8 : at + 8 + length], at + 12 + length
        if at > len(data):
            raise ValueError("a chunk breaks off")
        yield _kept(name, body)


def _kept(name: bytes, body: bytes) -> bytes:
    if name in _KEPT:
        return _chunk(name, body)
    if name == b"iCCP":  # what a profile is called is up to the program that wrote it
        return _chunk(name, b"icc" + body[body.index(b"\0") :])
    turned = turned_alone(body) if name == b"eXIf" else b""
    return _chunk(name, turned) if turned else b""


def _chunk(name: bytes, body: bytes) -> bytes:
    return struct.pack(">I", len(body)) + name + body + struct.pack(">I", zlib.crc32(name + body))
