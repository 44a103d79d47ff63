"""What was made of each batch before, kept beside the archive; what is not there is made on all cores.

What is made of a batch depends on what its pages look at (:class:`~batchleaf.made_batch.ToMake`) and on the
house itself: its code, its templates and the libraries that write text are part of the key.
"""

from __future__ import annotations

import contextlib
import gc
import json
import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from importlib.resources.abc import Traversable
from itertools import islice
from pathlib import Path
from typing import IO, Final

from batchleaf.core.batch_cutting import PLANNER, Planner, remembering
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.core.sheets_needed import Counting, count_sheets, remembering_counts
from batchleaf.helping import Helpers, NoHelpError, receive, send
from batchleaf.kept_plans import keeping, keeping_counts
from batchleaf.made_batch import MadeBatch, MadeFile, MadePage, Text, ToMake, made_batch, said
from batchleaf.store import CannotKeepError, Store, key_of

PAGES: Final = "pages"
"""The part of the store for the texts of batches."""
ENOUGH_FOR_ALL_CORES: Final = 12
"""Fewer batches are made sooner than other processes are ready to help."""
WINDOW: Final = 128
"""So many are looked at together."""
LIBRARIES: Final = ("babel", "iso4217", "jinja2", "markdown", "markupsafe")


@dataclass(frozen=True, slots=True)
class Making:
    """What batches are made with: plans, counts, and what is remembered of the last time."""

    planner: Planner
    count: Counting
    remembered: Remembering = afresh


def making(store: Store, remembered: Remembering = afresh) -> Making:
    """As sites are made: what was worked out before is taken from ``store``, or from memory."""
    return Making(
        remembering(keeping(PLANNER, store)),
        remembering_counts(keeping_counts(count_sheets, store)),
        remembered,
    )


def made_batches(asked: Iterable[ToMake], store: Store, how: Making) -> Iterator[MadeBatch]:
    """What is made of each, in their order."""
    with Helpers(store.folder) as helpers:
        rest = iter(asked)
        # Not all at once: what pages look at is more than what they say.
        while some := list(islice(rest, WINDOW)):
            yield from _made(some, store, how, helpers)


def _made(asked: Sequence[ToMake], store: Store, how: Making, helpers: Helpers) -> list[MadeBatch]:
    pages = store.part(PAGES)
    keys = [_key(one) for one in asked]
    found = [_find(key, pages) for key in keys]
    missing = [at for at, one in enumerate(found) if one is None]
    elsewhere = _made_elsewhere([asked[at] for at in missing if keys[at]], helpers)
    for at in missing:
        names = next(elsewhere, "") if keys[at] else ""
        made = _read(names, pages)
        if made is None:
            made = made_batch(asked[at], how.planner, how.count, how.remembered)
            made, names = _laid_down(made, pages) if keys[at] else (made, "")
        if names:
            pages.put(keys[at], names.encode())
        found[at] = made
    return [one for one in found if one]


def _made_elsewhere(asked: Sequence[ToMake], helpers: Helpers) -> Iterator[str]:
    """The names of what others made; none where it is quicker, or no other way, to make it here."""
    if len(asked) < ENOUGH_FOR_ALL_CORES or os.cpu_count() == 1:
        return iter(())
    try:
        return iter(helpers.made(asked))
    except NoHelpError:
        return iter(())


def help_to_make(store: Store, asks: IO[bytes], answers: IO[bytes]) -> None:
    """Make what another process asks for, until it asks no more."""
    how = making(store)
    # Pages are many small things without rings; looking for rings among them took a tenth of the time.
    gc.set_threshold(50_000)
    while True:
        try:
            asked: list[ToMake] = receive(asks)
        except EOFError:
            return
        made = (made_batch(one, how.planner, how.count, how.remembered) for one in asked)
        send(answers, [_laid_down(one, store.part(PAGES))[1] for one in made])


# --- in the store ------------------------------------------------------------------


def _key(asked: ToMake) -> str:
    """Empty for a batch to come, which looks at the whole drawer: that is made anew each time."""
    if asked.around.ledger is not None and not asked.batch.taken:
        return ""
    return key_of(b"batch", asked.told.encode(), _house())


def _laid_down(made: MadeBatch, store: Store) -> tuple[MadeBatch, str]:
    """The batch, whose texts lie in the store, and their names there."""

    def down(text: Text) -> str:
        return store.keep(said(text).encode())

    pages = [
        [one.address, one.title, one.section, one.description, one.meta, down(one.body)] for one in made.pages
    ]
    data = [[one.address, down(one.text)] for one in made.files]
    names = json.dumps({"pages": pages, "files": data}, ensure_ascii=False)
    return _read(names, store) or made, names


def _find(key: str, store: Store) -> MadeBatch | None:
    names = store.read(key) if key else None
    return _read(names.decode(), store) if names else None


def _read(names: str, store: Store) -> MadeBatch | None:
    """What the names stand for; nothing where one of the texts is gone or damaged."""
    if not names:
        return None
    read = json.loads(names)
    pages = [
        MadePage(address, title, section, description, meta, body)
        for address, title, section, description, meta, name in read["pages"]
        if (body := store.kept(name))
    ]
    data = [MadeFile(address, text) for address, name in read["files"] if (text := store.kept(name))]
    whole = len(pages) == len(read["pages"]) and len(data) == len(read["files"])
    return MadeBatch(tuple(pages), tuple(data)) if whole else None


@cache
def _house() -> bytes:
    """The code and the templates that pages are made by, and what else has a hand in them."""
    code = sorted(_sources(files("batchleaf"), ""))
    others = [f"{name} {version(name)}".encode() for name in LIBRARIES]
    return key_of(*(piece for one in code for piece in one), *others, sys.version.encode()).encode()


def _sources(folder: Traversable, path: str) -> Iterator[tuple[bytes, bytes]]:
    for one in folder.iterdir():
        if one.is_dir():
            yield from _sources(one, f"{path}{one.name}/")
        elif one.name.endswith((".py", ".html", ".xml", ".css", ".js", ".yml", ".yaml")):
            yield f"{path}{one.name}".encode(), one.read_bytes()


if __name__ == "__main__":
    # Who asked makes it then, and tells what stood in the way.
    with contextlib.suppress(CannotKeepError, BrokenPipeError, KeyboardInterrupt):
        help_to_make(Store(Path(sys.argv[1])), sys.stdin.buffer, sys.stdout.buffer)
