"""A new archive, from the starter that comes with the package."""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from batchleaf.records.kinds import KINDS
from batchleaf.records.schema import schema_of
from batchleaf.writing.keys_page import keys_page

STARTER: Final = Path(__file__).parent / "starter"
SCHEMAS: Final = ".batchleaf"
KEYS: Final = "KEYS.md"
"""The reference beside an archive's README."""
KEYS_PAGE: Final = "keys.md"
"""The reference as a page of the site."""


class NotEmptyError(OSError):
    """The folder holds something already, and nothing of it may be written over."""


def start_archive(folder: Path, **settings: str) -> None:
    """Lay out a small archive with an example in ``folder``. Raises :class:`NotEmptyError`.

    ``settings`` take the place of those in the starter's mkdocs.yml; the example can be read with any.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise NotEmptyError(f"{folder} is not empty; name a folder that is not there yet")
    shutil.copytree(STARTER, folder, dirs_exist_ok=True)
    _set(folder / "mkdocs.yml", settings)
    write_schemas(folder)
    write_keys(folder / KEYS)


def _set(config: Path, settings: Mapping[str, str]) -> None:
    text = config.read_text(encoding="utf-8")
    for key, value in settings.items():
        text = re.sub(rf"(?m)^( +{key}: )\S+", rf"\g<1>{value}", text)
    config.write_bytes(text.encode())


def write_schemas(folder: Path) -> tuple[Path, ...]:
    """Write the schema of each kind of record into the archive; returns the files."""
    (folder / SCHEMAS).mkdir(exist_ok=True)
    files = tuple(schema_file(folder, kind) for kind in KINDS)
    for kind, file in zip(KINDS, files, strict=True):
        file.write_text(json.dumps(schema_of(kind), indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
    return files


def schema_file(folder: Path, kind: str) -> Path:
    """Where the schema of a kind of record lies in an archive."""
    return folder / SCHEMAS / f"{kind}.schema.json"


def write_keys(file: Path) -> None:
    """Write the reference of keys."""
    file.parent.mkdir(exist_ok=True)
    file.write_bytes(keys_page().encode())
