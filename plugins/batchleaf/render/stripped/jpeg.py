"""JPEG (ITU-T T.81): segments up to the scans, each scan, and nothing behind the end."""

from __future__ import annotations

import struct
from collections.abc import Iterator
from typing import Final

from batchleaf.render.stripped.turned import turned_alone

_START, _END, _SCAN, _COMMENT = 0xD8, 0xD9, 0xDA, 0xFE
_ALONE: Final = frozenset({0x01, *range(0xD0, 0xD8)})
"""Markers without a length."""
_APP0, _APP1, _APP2, _APP14, _APP15 = 0xE0, 0xE1, 0xE2, 0xEE, 0xEF
_JFIF, _EXIF, _PROFILE, _ADOBE = b"JFIF\0", b"Exif\0\0", b"ICC_PROFILE\0", b"Adobe"
_JFIF_LENGTH, _ADOBE_LENGTH = 12, 12


def of_jpeg(data: bytes) -> Iterator[bytes]:
    """The picture's own segments. Raises :class:`ValueError` and :class:`IndexError`."""
    yield data[:2]
    at, is_turned = 2, False
    while True:
        if data[at] != 0xFF:
            raise ValueError("a marker is missing")
        marker = data[at + 1]
        if marker == 0xFF:  # markers may be filled up from the front
            at += 1
        elif marker == _END:
            yield data[at : at + 2]
            return
        elif marker in _ALONE:
            yield data[at : at + 2]
            at += 2
        else:
            body, at = _body(data, at)
            if marker == _APP1 and is_turned:
                continue
            kept = _kept(marker, body)
            is_turned |= marker == _APP1 and bool(kept)
            yield kept
            if marker == _SCAN:
                end = _end_of_scan(data, at)
                yield data[at:end]
                at = end


def _body(data: bytes, at: int) -> tuple[bytes, int]:
    (length,) = struct.unpack_from(">H", data, at + 2)
    end = at + 2 + length
    if length < 2 or end > len(data):
        raise ValueError("a segment breaks off")
    return data[at + 4 : end], end


def _kept(marker: int, body: bytes) -> bytes:
    """A segment as it is kept: small copies of the picture go, and what programs wrote for themselves."""
    if marker == _APP0 and body.startswith(_JFIF):
        return _segment(marker, body[:_JFIF_LENGTH] + b"\0\0")
    if marker == _APP1 and body.startswith(_EXIF):
        turned = turned_alone(body)
        return _segment(marker, _EXIF + turned) if turned else b""
    if marker == _APP14 and body.startswith(_ADOBE):
        return _segment(marker, body[:_ADOBE_LENGTH])
    is_program = _APP0 <= marker <= _APP15 and not (marker == _APP2 and body.startswith(_PROFILE))
    return b"" if is_program or marker == _COMMENT else _segment(marker, body)


def _segment(marker: int, body: bytes) -> bytes:
    return struct.pack(">BBH", 0xFF, marker, len(body) + 2) + body


def _end_of_scan(data: bytes, at: int) -> int:
    """Where the next marker stands that is no part of the scan. Raises :class:`ValueError` where none is."""
    while True:
        at = data.index(b"\xff", at)
        if data[at + 1] == 0 or data[at + 1] in _ALONE:
            at += 2
        elif data[at + 1] == 0xFF:
            at += 1
        else:
            return at
