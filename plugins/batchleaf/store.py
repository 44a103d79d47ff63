"""The cache beside an archive: what is dear to work out is kept, by content.

An entry is written under a temporary name and moved into place, and it is only
used where its checksum holds: a half-written or damaged one counts as not there,
and is made again. The folder may be deleted at any time, and two builds may use it at once.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Final

DAY: Final = 86_400.0
KEPT_FOR: Final = 60 * DAY
"""What no build has asked for in so long goes."""
MOST_BYTES: Final = 2 * 1024**3
"""More than that is not kept; what was not asked for longest goes first."""
SWEPT: Final = "swept"


class Store:
    """Files by key below one folder; ``damaged``: keys of entries that did not hold, of all parts."""

    def __init__(self, folder: Path, damaged: list[str] | None = None) -> None:
        self.folder = folder
        self.damaged: list[str] = [] if damaged is None else damaged

    def part(self, name: str) -> Store:
        """The store of one kind of thing, in a folder of its own."""
        return Store(self.folder / name, self.damaged)

    def find(self, key: str) -> Path | None:
        """The file that was kept under ``key``; ``None`` where nothing sound is there."""
        return None if self.read(key) is None else self._path(key)

    def read(self, key: str) -> bytes | None:
        """What was kept under ``key``; ``None`` where nothing sound is there."""
        path = self._path(key)
        try:
            content = path.read_bytes()
        except OSError:
            return None
        try:
            sound = _checksum(content) == _beside(path).read_bytes()
        except OSError:
            sound = False
        return content if self._is_used(path, sound=sound) else None

    def put(self, key: str, content: bytes) -> Path:
        """Keep ``content`` under ``key``; returns its file."""
        path = self._path(key)
        path.parent.mkdir(parents=True, exist_ok=True)
        _replace(path, content)
        _replace(_beside(path), _checksum(content))
        return path

    def keep(self, content: bytes) -> str:
        """Keep ``content`` under the name that it gives itself; returns that name."""
        name = hashlib.sha256(content).hexdigest()
        path = self._path(name)
        if self.kept(name) is None:
            path.parent.mkdir(parents=True, exist_ok=True)
            _replace(path, content)
        return name

    def kept(self, name: str) -> Path | None:
        """The file that :meth:`keep` gave ``name`` to; ``None`` where it is gone or damaged."""
        path = self._path(name)
        try:
            content = path.read_bytes()
        except OSError:
            return None
        return path if self._is_used(path, sound=hashlib.sha256(content).hexdigest() == name) else None

    def sweep(self, *, kept_for: float = KEPT_FOR, most_bytes: int = MOST_BYTES) -> None:
        """Let go, once a day, of what was not asked for in a long time, or is too much."""
        mark, now = self.folder / SWEPT, time.time()
        if _asked_for(mark) > now - DAY or not self.folder.is_dir():
            return
        left = most_bytes
        entries = sorted(_entries(self.folder), key=lambda one: one[0], reverse=True)
        for asked_for, size, path in entries:
            left -= size
            if left < 0 or asked_for < now - kept_for:
                for one in (path, _beside(path)):
                    one.unlink(missing_ok=True)
        with contextlib.suppress(OSError):
            mark.touch()

    def _is_used(self, path: Path, *, sound: bool) -> bool:
        """Mark the entry as asked for; a damaged one goes at once."""
        with contextlib.suppress(OSError):
            if not sound:
                path.unlink(missing_ok=True)
                self.damaged.append(path.name)
            elif _asked_for(path) < time.time() - DAY:
                os.utime(path)
        return sound

    def _path(self, key: str) -> Path:
        return self.folder / key[:2] / key


def _asked_for(path: Path) -> float:
    """When an entry was last asked for; long ago, where there is none."""
    try:
        return path.stat().st_mtime
    except OSError:
        return 0.0


def _entries(folder: Path) -> Iterator[tuple[float, int, Path]]:
    """When each was asked for, its size, its file; what a process that was killed left behind is one too."""
    for path in folder.rglob("*"):
        if path.suffix == ".sha256" or path.name == SWEPT or not path.is_file():
            continue
        yield _asked_for(path), path.stat().st_size, path


def _replace(path: Path, content: bytes) -> None:
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=".new-")
    with os.fdopen(handle, "wb") as file:
        file.write(content)
    Path(name).replace(path)


def _beside(path: Path) -> Path:
    return path.with_name(f"{path.name}.sha256")


def _checksum(content: bytes) -> bytes:
    return hashlib.sha256(content).hexdigest().encode()


def key_of(*pieces: bytes) -> str:
    """One name for a content together with the recipe that it is made by."""
    digest = hashlib.sha256()
    for piece in pieces:
        digest.update(len(piece).to_bytes(8, "big"))
        digest.update(piece)
    return digest.hexdigest()
