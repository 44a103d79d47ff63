"""Which way a picture is turned: the one thing of an Exif block that it needs to be shown."""

from __future__ import annotations

import struct
from typing import Final

_ORIENTATION: Final = 0x0112
_SHORT: Final = 3
_START: Final = b"Exif\0\0"


def turned_alone(block: bytes) -> bytes:
    """An Exif block (CIPA DC-008) that says this alone; nothing where it is upright, or not told."""
    turned = _turned(block.removeprefix(_START))
    if not 2 <= turned <= 8:
        return b""
    return b"II*\0" + struct.pack("<IHHHIHHI", 8, 1, _ORIENTATION, _SHORT, 1, turned, 0, 0)


def _turned(tiff: bytes) -> int:
    order = {b"II*\0": "<", b"MM\0*": ">"}.get(tiff[:4])
    try:
        if order is None:
            return 0
        (start,) = struct.unpack_from(f"{order}I", tiff, 4)
        (count,) = struct.unpack_from(f"{order}H", tiff, start)
        for number in range(count):
            tag, kind, _, value = struct.unpack_from(f"{order}HHIH", tiff, start + 2 + 12 * number)
            if (tag, kind) == (_ORIENTATION, _SHORT):
                return int(value)
    except struct.error:
        return 0
    return 0
