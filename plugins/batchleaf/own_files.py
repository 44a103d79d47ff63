"""What a maker put into the folder of pages, as a site may have it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Final

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from batchleaf.facts import Place, Problem, Weight
from batchleaf.render.own_pictures import bare_copy
from batchleaf.store import Store

LEADS_OUT: Final = "this is a link that leads out of the archive, so it is left out; put the file itself here"
NO_FILE: Final = "this is no file that can be read, so it is left out"
LEADS_BACK: Final = "this link leads back to a folder that it lies in, round and round; take it away"


def loops_in(pages: Path) -> Iterator[Problem]:
    """Links that MkDocs would follow for ever; each folder is looked into once, whichever way leads there."""
    seen: set[Path] = set()

    def below(folder: Path, chain: tuple[Path, ...]) -> Iterator[Problem]:
        for entry in sorted(one for one in folder.iterdir() if one.is_dir()):
            real = entry.resolve()
            if real in chain:
                yield Problem(Place(f"{pages.name}/{entry.relative_to(pages).as_posix()}", 1, 1), LEADS_BACK)
            elif real not in seen:
                seen.add(real)
                yield from below(entry, (*chain, real))

    if pages.is_dir():
        yield from below(pages, (pages.resolve(),))


def without_odd_files(files: Files, config: MkDocsConfig) -> Iterator[Problem]:
    """Leave out what lies elsewhere, or is no file, and tell of each.

    Whoever builds the archive of somebody else would publish files of their own machine with it.
    """
    archive = Path(config.config_file_path).resolve().parent
    pages = Path(config.docs_dir).resolve()
    for file, path in _own(files, config):
        if why := _why_not(path, archive, pages):
            files.remove(file)
            yield Problem(_place(file, config), why, Weight.NOTICE)


def _why_not(path: Path, archive: Path, pages: Path) -> str:
    if not path.is_file():
        return NO_FILE
    real = path.resolve()
    return "" if real.is_relative_to(archive) or real.is_relative_to(pages) else LEADS_OUT


def bare_pictures(files: Files, config: MkDocsConfig, store: Store) -> Iterator[Problem]:
    """Put copies of pictures in their place that say nothing besides; tell where there can be none."""
    for file, path in _own(files, config):
        if file.is_media_file() and not file.inclusion.is_excluded():
            match bare_copy(path, _place(file, config), store):
                case Path() as copy:
                    bare = File.generated(
                        config, file.src_uri, abs_src_path=str(copy), inclusion=file.inclusion
                    )
                    files.remove(file)
                    files.append(bare)
                case Problem() as problem:
                    yield problem


def _own(files: Files, config: MkDocsConfig) -> list[tuple[File, Path]]:
    """Those of the folder of pages, with where they are read; none of the theme, none that was made."""
    return [
        (file, Path(file.abs_src_path))
        for file in files
        if file.generated_by is None and file.src_dir == config.docs_dir and file.abs_src_path
    ]


def _place(file: File, config: MkDocsConfig) -> Place:
    return Place(f"{Path(config.docs_dir).name}/{file.src_uri}", 1, 1)
