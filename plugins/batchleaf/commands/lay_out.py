"""Laying out an archive, and what helps while writing in it."""

from __future__ import annotations

from pathlib import Path

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import refuse
from batchleaf.plugin import BatchleafConfig
from batchleaf.writing.archive import KEYS, KEYS_PAGE, NotEmptyError, start_archive, write_keys, write_schemas


def start(folder: Path, unit: str, currency: str) -> int:
    """Lay out a new archive."""
    said = BatchleafConfig()
    said.load_dict({"unit": unit, "currency": currency})
    said.validate()
    if said.mistakes:
        return refuse("\n".join(["Nothing was written:", *said.mistakes]))
    try:
        start_archive(folder, unit=said.unit, currency=said.currency)
    except NotEmptyError as error:
        return refuse(f"{error}.")
    print(f"A small archive with one example is in {folder}; read its README.md first.")
    return 0


def schema(archive: Path) -> int:
    """Write what helps while writing records anew: the schemas, and the reference of keys where it lies."""
    beside = archive / KEYS
    if beside.is_file():
        write_keys(beside)
    for file in (*write_schemas(archive), *([beside] if beside.is_file() else [])):
        print(f"Wrote {file}")
    return 0


def keys(archive: Opened) -> int:
    """Write the reference of keys as a page of the site."""
    file = archive.pages / KEYS_PAGE
    write_keys(file)
    print(f"Wrote {file}")
    return 0
