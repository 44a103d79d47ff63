"""What is kept beside an archive is what was given, or nothing; and what nobody asks for goes."""

from __future__ import annotations

import os
import time
from pathlib import Path

import pytest

from batchleaf.store import DAY, Store, key_of

CONTENT = b"forty sheets of dune card"


def files(folder: Path) -> list[Path]:
    """All that lies there, but for the mark of the last sweep."""
    return [one for one in folder.rglob("*") if one.is_file() and one.name != "swept"]


@pytest.mark.parametrize("spoilt", [b"", CONTENT[:-1], CONTENT + b"\n", b"x" * len(CONTENT)], ids=repr)
def test_a_spoilt_entry_is_told_and_gone(tmp_path: Path, spoilt: bytes) -> None:
    """Neither under a key nor under its own name does it count as there; once is enough to be rid of it."""
    store = Store(tmp_path)
    key, name = key_of(b"a question"), store.keep(CONTENT)
    store.put(key, CONTENT)
    for path in files(tmp_path):
        if path.suffix != ".sha256":
            path.write_bytes(spoilt)
    assert (store.read(key), store.find(key), store.kept(name)) == (None, None, None)
    assert store.damaged == [key, name]
    assert store.keep(CONTENT) == name
    kept = store.kept(name)
    assert kept is not None
    assert kept.read_bytes() == CONTENT


def test_without_its_checksum_an_entry_is_not_used(tmp_path: Path) -> None:
    """As where a process was stopped between the two."""
    store = Store(tmp_path)
    path = store.put("ab", CONTENT)
    path.with_name("ab.sha256").unlink()
    assert store.read("ab") is None


def test_parts_share_what_they_tell(tmp_path: Path) -> None:
    """A part has its own folder; what was damaged in it is known to the whole."""
    store = Store(tmp_path)
    store.part("plans").put("ab", CONTENT).write_bytes(b"")
    assert store.read("ab") is None
    assert store.damaged == []
    assert store.part("plans").read("ab") is None
    assert store.damaged == ["ab"]


def test_what_nobody_asked_for_goes(tmp_path: Path) -> None:
    """After its time an entry goes with its checksum; one that was asked for stays."""
    store = Store(tmp_path)
    old, asked = store.put("ab", CONTENT), store.put("cd", CONTENT)
    for path in (old, asked):
        os.utime(path, (time.time() - 90 * DAY,) * 2)
    assert store.read("cd") == CONTENT
    store.sweep()
    assert store.read("ab") is None
    assert store.read("cd") == CONTENT
    assert {path.name for path in files(tmp_path)} == {"cd", "cd.sha256"}


def test_too_much_goes_from_the_oldest(tmp_path: Path) -> None:
    """The newest entries that have room together stay."""
    store = Store(tmp_path)
    for age, key in enumerate(("aa", "bb", "cc"), 2):
        os.utime(store.put(key, CONTENT), (time.time() - age * DAY,) * 2)
    store.sweep(most_bytes=2 * len(CONTENT))
    assert [store.read(key) is not None for key in ("aa", "bb", "cc")] == [True, True, False]


def test_a_sweep_a_day_is_enough(tmp_path: Path) -> None:
    """The second one on a day looks at nothing; what it would take stays for now."""
    store = Store(tmp_path)
    store.put("ab", CONTENT)
    store.sweep()
    store.sweep(most_bytes=0)
    assert store.read("ab") == CONTENT
    os.utime(tmp_path / "swept", (0, 0))
    store.sweep(most_bytes=0)
    assert store.read("ab") is None
