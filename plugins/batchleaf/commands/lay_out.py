"""Laying out an archive, and what helps while writing in it."""

from __future__ import annotations

from pathlib import Path

from batchleaf.commands.terminal import refuse
from batchleaf.writing.archive import NotEmptyError, start_archive, write_schemas


def start(folder: Path) -> int:
    """Lay out a new archive."""
    try:
        start_archive(folder)
    except NotEmptyError as error:
        return refuse(f"{error}.")
    print(f"A small archive with one example is in {folder}; read its README.md first.")
    return 0


def schema(archive: Path) -> int:
    """Write the schemas of all kinds of records."""
    for file in write_schemas(archive):
        print(f"Wrote {file}")
    return 0
