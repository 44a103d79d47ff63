"""Sound records to begin from, and the words that stand in them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from batchleaf.facts import Weight
from batchleaf.records.archive import read_archive
from batchleaf.records.kinds import KINDS
from batchleaf.records.nodes import Plain, plain
from batchleaf.records.yaml_text import read_yaml
from records.test_cases import CASES, SETTINGS, files_of

ROOT: Final = Path(__file__).parents[2]
Files = Mapping[str, bytes]
"""Path below the archive → what stands in the file."""


def home_of(kind: str, name: str = "more") -> str:
    """The file in which a record of a kind stands; ``name`` where there may be several."""
    return KINDS[kind].file.replace("NAME", name)


def kind_in(path: str) -> str:
    """Which kind of record a file holds; nothing where it holds none."""
    name = Path(path).stem if Path(path).stem != "project" else Path(path).parent.name
    return next((kind for kind in KINDS if home_of(kind, name) == path), "")


def lay_out(files: Files, folder: Path) -> None:
    """Write an archive below ``folder``."""
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)


@cache
def archives() -> tuple[Files, ...]:
    """The demo's records, and each archive of ``cases/``, sound or not."""
    demo = {
        path.relative_to(ROOT).as_posix(): path.read_bytes()
        for path in sorted((ROOT / "projects").rglob("*.yml"))
    }
    cases = (path.read_text(encoding="utf-8") for path in sorted(CASES.glob("*.case")))
    return (demo, *({name: text.encode() for name, text in files_of(case)[0].items()} for case in cases))


@cache
def sound_archives() -> tuple[Files, ...]:
    """What is left of each without the records that cannot be read, where that is anything."""
    return tuple(files for files in map(_sound_part, archives()) if any(map(kind_in, files)))


def _sound_part(files: Files) -> Files:
    with TemporaryDirectory() as folder:
        lay_out(files, Path(folder))
        problems = read_archive(Path(folder, "projects"), SETTINGS).problems
    faulty = {problem.place.file for problem in problems if problem.weight is Weight.ERROR}
    kept = {name: data for name, data in files.items() if not any(name.startswith(one) for one in faulty)}
    return _sound_part(kept) if faulty and len(kept) < len(files) else kept


def tree_in(data: bytes) -> Plain | None:
    """A record without its places, where it can be read."""
    node, _ = read_yaml(data, "record.yml")
    return plain(node) if node else None


@cache
def trees(kind: str) -> tuple[Plain, ...]:
    """Every sound record of a kind."""
    files = (item for archive in sound_archives() for item in archive.items())
    found = (tree_in(data) for path, data in files if kind_in(path) == kind)
    return tuple(tree for tree in found if tree is not None)


@cache
def texts_under() -> Mapping[str, tuple[str, ...]]:
    """Key → each text that stands anywhere below it in a seed; under no key (``""``) all of them."""
    return _gathered((key, text) for path, text in _all_texts() for key in {"", *path})


@cache
def keys_under() -> Mapping[str, tuple[str, ...]]:
    """Key → each key that stands right below it in a seed."""
    return _gathered((above, key) for path, _ in _all_texts() for above, key in pairwise(path))


@cache
def words() -> tuple[str, ...]:
    """Each word, number and sign of the seeds' texts and keys."""
    told = (*texts_under()[""], *(key for keys in keys_under().values() for key in keys))
    return tuple(sorted({word for text in told for word in re.findall(r"[\w-]+|[^\w\s]", text)}))


def _gathered(pairs: Iterator[tuple[str, str]]) -> Mapping[str, tuple[str, ...]]:
    found: dict[str, dict[str, None]] = {}
    for key, text in pairs:
        found.setdefault(key, {})[text] = None
    return {key: tuple(texts) for key, texts in found.items()}


def _all_texts() -> Iterator[tuple[tuple[str, ...], str]]:
    for kind in KINDS:
        for tree in trees(kind):
            yield from _texts(tree, ())


def _texts(tree: Plain, path: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
    match tree:
        case str():
            yield path, tree
        case list():
            for item in tree:
                yield from _texts(item, path)
        case dict():
            for key, value in tree.items():
                yield from _texts(value, (*path, key))
