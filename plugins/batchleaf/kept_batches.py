"""What was made of each batch before, kept beside the archive; what is not there is made on all cores.

What is made of a batch depends on what its pages look at (:class:`~batchleaf.made_batch.ToMake`) and on the
house itself: its code, its templates and the libraries that write text are part of the key.
"""

from __future__ import annotations

import json
import multiprocessing
import os
import sys
from collections.abc import Iterator, Sequence
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import Final

from batchleaf.core.batch_cutting import PLANNER, Planner, remembering
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.core.sheets_needed import Counting, count_sheets, remembering_counts
from batchleaf.kept_plans import keeping, keeping_counts
from batchleaf.made_batch import MadeBatch, MadeFile, MadePage, Text, ToMake, made_batch
from batchleaf.store import Store, key_of

PAGES: Final = "pages"
"""The part of the store for the texts of batches."""
ENOUGH_FOR_ALL_CORES: Final = 12
"""Fewer batches are made sooner than other processes are ready to help."""
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


def made_batches(asked: Sequence[ToMake], store: Store, how: Making) -> list[MadeBatch]:
    """What is made of each, in their order."""
    pages = store.part(PAGES)
    keys = [_key(one) for one in asked]
    found = [_find(key, pages) for key in keys]
    missing = [at for at, one in enumerate(found) if one is None]
    made = _made([asked[at] for at in missing if keys[at]], store, how)
    for at in missing:
        if keys[at]:
            found[at], names = next(made)
            pages.put(keys[at], names.encode())
        else:
            found[at] = made_batch(asked[at], how.planner, how.count, how.remembered)
    return [one for one in found if one]


def _made(asked: Sequence[ToMake], store: Store, how: Making) -> Iterator[tuple[MadeBatch, str]]:
    cores, pages = os.cpu_count() or 1, store.part(PAGES)
    if len(asked) < ENOUGH_FOR_ALL_CORES or cores == 1:
        for one in asked:
            yield _laid_down(made_batch(one, how.planner, how.count, how.remembered), pages)
        return
    # Begun afresh, since a copy of a process with threads may hang.
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(cores, context, _begin, (store,)) as pool:
        for names in pool.map(_made_elsewhere, asked, chunksize=4):
            made = _read(names, pages)
            if made is None:
                raise OSError(f"what was just written to {pages.folder} is gone or damaged")
            yield made, names


_here: dict[str, tuple[Store, Making]] = {}
"""In a process that helps: what it makes batches with."""


def _begin(store: Store) -> None:
    _here["making"] = (store, making(store))


def _made_elsewhere(asked: ToMake) -> str:
    store, how = _here["making"]
    return _laid_down(made_batch(asked, how.planner, how.count, how.remembered), store.part(PAGES))[1]


# --- in the store ------------------------------------------------------------------


def _key(asked: ToMake) -> str:
    """Empty for a batch to come, which looks at the whole drawer: that is made anew each time."""
    if asked.around.ledger is not None and not asked.batch.taken:
        return ""
    return key_of(b"batch", asked.told.encode(), _house())


def _laid_down(made: MadeBatch, store: Store) -> tuple[MadeBatch, str]:
    """The batch, whose texts lie in the store, and their names there."""

    def down(text: Text) -> str:
        return store.keep(text.encode() if isinstance(text, str) else text.read_bytes())

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
