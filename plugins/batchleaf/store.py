"""The cache beside an archive: what is dear to work out is kept, by content.

An entry is written under a temporary name and moved into place, and its
checksum lies beside it, so that a half-written or damaged one is never used: it
counts as not there and is made again. The folder may be deleted at any time.
"""

from __future__ import annotations

import hashlib
import os
import tempfile
from pathlib import Path


class Store:
    """Files by key below one folder."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def find(self, key: str) -> Path | None:
        """The file that was kept under ``key``; ``None`` where nothing sound is there."""
        return None if self.read(key) is None else self._path(key)

    def read(self, key: str) -> bytes | None:
        """What was kept under ``key``; ``None`` where nothing sound is there."""
        path = self._path(key)
        try:
            content = path.read_bytes()
            sound = _checksum(content) == _beside(path).read_bytes()
        except OSError:
            return None
        return content if sound else None

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
        if hashlib.sha256(content).hexdigest() == name:
            return path
        path.unlink(missing_ok=True)
        return None

    def _path(self, key: str) -> Path:
        return self.folder / key[:2] / key


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
