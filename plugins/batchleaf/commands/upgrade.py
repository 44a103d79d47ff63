"""Records of an older Batchleaf, rewritten for this one."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import agrees, nothing_written, refuse
from batchleaf.records.archive import record_files
from batchleaf.telling import told
from batchleaf.writing.upgrade import CannotUpgradeError, Upgraded, upgraded


def upgrade(archive: Opened, *, sure: bool) -> int:
    """Show what changes in which record, ask, and write; where the check then fails, all stays as it was."""
    changes: dict[Path, Upgraded] = {}
    for file, kind in record_files(archive.projects):
        try:
            one = upgraded(file.read_bytes(), kind)
        except CannotUpgradeError as error:
            shown = file.relative_to(archive.projects.parent).as_posix()
            return nothing_written(f"{shown}:{error.line}: {error}")
        if one.told:
            changes[file] = one
    if not changes:
        print("All records are in the format of this Batchleaf.")
        return 0
    for file, one in changes.items():
        print(f"{file.relative_to(archive.projects.parent).as_posix()}: {'; '.join(one.told)}")
    if not sure and not agrees(f"Write this into {'it' if len(changes) == 1 else 'them'}?"):
        return refuse("Nothing was written.")
    return _write(archive, {file: one.record for file, one in changes.items()})


def _write(archive: Opened, records: Mapping[Path, bytes]) -> int:
    before = {file: file.read_bytes() for file in records}
    try:
        _put(records)
    except OSError as error:
        _put({file: record for file, record in before.items() if file.read_bytes() != record})
        return nothing_written(f"{error.filename}: {(error.strerror or 'it cannot be written').lower()}")
    if errors := archive.worked().errors:
        _put(before)
        return nothing_written(
            "\n".join(("the records cannot be read as they would then be:", *map(told, errors)))
        )
    print(f"Wrote {len(records)} {'record' if len(records) == 1 else 'records'}; the check finds no error.")
    return 0


def _put(records: Mapping[Path, bytes]) -> None:
    for file, record in records.items():
        file.write_bytes(record)
