"""A new archive, from the starter that comes with the package."""

from __future__ import annotations

import json
import shutil
from pathlib import Path
from typing import Final

from batchleaf.records.schema import KINDS, schema_of

STARTER: Final = Path(__file__).parent / "starter"
SCHEMAS: Final = ".batchleaf"


class NotEmptyError(OSError):
    """The folder holds something already, and nothing of it may be written over."""


def start_archive(folder: Path) -> None:
    """Lay out a small archive with an example in ``folder``. Raises :class:`NotEmptyError`."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise NotEmptyError(f"{folder} is not empty; name a folder that is not there yet")
    shutil.copytree(STARTER, folder, dirs_exist_ok=True)
    write_schemas(folder)


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Write the schema of each kind of record into the archive; returns the files."""
    schemas = folder / SCHEMAS
    schemas.mkdir(exist_ok=True)
    files = tuple(schemas / f"{kind}.schema.json" for kind in KINDS)
    for kind, file in zip(KINDS, files, strict=True):
        file.write_text(json.dumps(schema_of(kind), indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
    return files
