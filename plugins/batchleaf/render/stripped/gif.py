"""GIF (version 89a): frames, how each is shown, how often all are; no remarks."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

_SCREEN: Final = 13
_EXTENSION, _IMAGE, _TRAILER = 0x21, 0x2C, 0x3B
_CONTROL, _PROGRAM = 0xF9, 0xFF
_LOOPS: Final = (b"NETSCAPE2.0", b"ANIMEXTS1.0")
"""What programs say of how often an animation is shown; all else of theirs goes."""


def of_gif(data: bytes) -> Iterator[bytes]:
    """The picture's own blocks. Raises :class:`ValueError` and :class:`IndexError`."""
    at = _SCREEN + _table(data[10])
    yield data[:at]
    while data[at] != _TRAILER:
        start = at
        if data[at] == _IMAGE:
            at = _end_of_blocks(data, at + 10 + _table(data[at + 9]) + 1)
            yield data[start:at]
        elif data[at] == _EXTENSION:
            at = _end_of_blocks(data, at + 2)
            name = data[start + 3 : start + 14]
            kind = data[start + 1]
            if kind == _CONTROL or (kind == _PROGRAM and name in _LOOPS):
                yield data[start:at]
        else:
            raise ValueError("a block is missing")
    yield bytes([_TRAILER])


def _table(told: int) -> int:
    """The bytes of a table of colours, where there is one."""
    return 3 * 2 ** ((told & 7) + 1) if told & 0x80 else 0


def _end_of_blocks(data: bytes, at: int) -> int:
    while data[at]:
        at += 1 + data[at]
    return at + 1
