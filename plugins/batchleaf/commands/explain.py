"""What records leave to be understood, shown or written into them."""

from __future__ import annotations

from codecs import BOM_UTF8
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from batchleaf.commands.check import check
from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import agrees, nothing_written, refuse
from batchleaf.facts import Weight
from batchleaf.records.archive import read_archive
from batchleaf.records.explaining.archive import Explained, explained
from batchleaf.writing.write_out import explanation, new_lines, written_out

UNREADABLE: Final = "not all records can be read; check says why"
SAYS_ALL: Final = " says all there is to say."


def explain(archive: Opened, name: str) -> int:
    """Print what the record called ``name`` means besides what it says; every record where that is empty.

    Where not all records can be read, they are checked instead.
    """
    found = _explained(archive)
    if found is None:
        return check(archive)
    wanted = list(_called(name, found)) if name else list(found)
    if not wanted:
        return refuse(f"Nothing is explained: {_no_record(name)}.")
    for one in wanted:
        besides = list(explanation(one.understood))
        print(f"{one.file}{' also means:' if besides else SAYS_ALL}")
        print("".join(f"  {line}\n" for line in besides))
    return 0


def take_defaults(archive: Opened, name: str, *, sure: bool) -> int:
    """Write all that the record called ``name`` leaves to be understood into it, after asking."""
    found = _explained(archive)
    if found is None:
        return nothing_written(UNREADABLE)
    one = next(_called(name, found), None)
    if one is None:
        return nothing_written(_no_record(name))
    if not one.understood:
        print(f"{one.file}{SAYS_ALL}")
        return 0
    file = archive.projects.parent / one.file
    mark, text = _parted(file.read_bytes())
    long = written_out(text, one.node, one.understood)
    print("\n".join(new_lines(one.understood)))
    if not sure and not agrees(f"Write this into {file}?"):
        return refuse("Nothing was written.")
    file.write_bytes(mark + long.encode())
    print(f"Wrote {file}")
    return 0


def _parted(record: bytes) -> tuple[bytes, str]:
    """The byte-order mark that some editors write, and the text."""
    mark = BOM_UTF8 if record.startswith(BOM_UTF8) else b""
    return mark, record.removeprefix(mark).decode()


def _explained(archive: Opened) -> tuple[Explained, ...] | None:
    reading = read_archive(archive.projects, archive.settings)
    if any(problem.weight is Weight.ERROR for problem in reading.problems):
        return None
    return tuple(explained(reading, archive.settings))


def _called(name: str, found: tuple[Explained, ...]) -> Iterator[Explained]:
    """A batch by its folder, any other record by its file."""
    for one in found:
        path = Path(one.file)
        if name in (path.parent.name if path.stem == "project" else path.stem, one.file):
            yield one


def _no_record(name: str) -> str:
    return f"there is no record “{name}”; name the folder of a batch, or a file of the drawer like card"
