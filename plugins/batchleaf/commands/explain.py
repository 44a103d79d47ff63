"""What records leave to be understood, shown or written into them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from batchleaf.commands.opened import Opened
from batchleaf.commands.terminal import agrees, refuse
from batchleaf.facts import Weight
from batchleaf.records.archive import read_archive
from batchleaf.records.explaining.archive import Explained, explained
from batchleaf.writing.write_out import explanation, written_out

UNREADABLE = "The records cannot all be read; see check."


def explain(archive: Opened, name: str) -> int:
    """Print what the record called ``name`` means besides what it says; every record where that is empty."""
    found = _explained(archive)
    if found is None:
        return refuse(UNREADABLE)
    wanted = list(_called(name, found)) if name else list(found)
    if not wanted:
        return refuse(_no_record(name))
    for one in wanted:
        besides = list(explanation(one.understood))
        print(f"{one.file}{' also means:' if besides else ' says all there is to say.'}")
        print("".join(f"  {line}\n" for line in besides))
    return 0


def write_out(archive: Opened, name: str, *, sure: bool) -> int:
    """Write all that the record called ``name`` leaves to be understood into it, after asking."""
    found = _explained(archive)
    if found is None:
        return refuse(UNREADABLE)
    one = next(_called(name, found), None)
    if one is None:
        return refuse(_no_record(name))
    file = archive.projects.parent / one.file
    text = file.read_bytes().decode("utf-8-sig")
    long = written_out(text, one.node, one.understood)
    if long == text:
        print(f"{one.file} says all there is to say.")
        return 0
    print(long)
    if not sure and not agrees(f"Write this into {file}?"):
        return refuse("Nothing was written.")
    file.write_bytes(long.encode("utf-8"))
    print(f"Wrote {file}")
    return 0


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
    return f"There is no record “{name}”; name the folder of a batch, or a file of the drawer like card."
