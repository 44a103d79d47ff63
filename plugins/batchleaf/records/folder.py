"""What lies in a project's folder beside its record: photos and prose."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import Final

from batchleaf.facts import Photo, Place, Step
from batchleaf.records.nodes import Node, key_place
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.yaml_text import LARGEST

PICTURES: Final = frozenset({".jpg", ".jpeg", ".png", ".webp", ".tif", ".tiff", ".gif", ".bmp"})
OF_PHONES: Final = frozenset({".heic", ".heif"})
"""They are read where what reads them is installed besides."""
READER_OF_PHONES: Final = "pi_heif"
OTHER_PICTURES: Final = frozenset({".avif", ".raw", ".dng", ".cr2", ".nef", ".arw", ".psd"})
"""Picture files that cannot be read here."""


@dataclass(frozen=True, slots=True)
class FolderPhotos:
    """The picture files of a folder, in order of name; ``shown`` is how problems name the folder."""

    names: tuple[str, ...]
    unread: tuple[str, ...]
    folder: Path
    shown: str

    def settled(
        self, alts: Mapping[str, str], steps: tuple[Step, ...], node: Node, report: Report
    ) -> tuple[Photo, ...]:
        """Each picture with its step and its words; a description of no picture is a problem."""
        for name in alts:
            if name not in self.names:
                hint = did_you_mean(name, self.names)
                report.error(
                    key_place(node, ("photos", name)), f"there is no picture “{name}” in the folder{hint}"
                )
        for name in self.unread:
            report.notice(self._at(name), _unread(name))
        return tuple(self._photos(alts, steps, report))

    def _at(self, name: str) -> Place:
        return Place(f"{self.shown}/{name}", 1, 1)

    def _photos(self, alts: Mapping[str, str], steps: tuple[Step, ...], report: Report) -> Iterator[Photo]:
        covers = [name for name in self.names if Path(name).stem.lower() == "cover"]
        for name in self.names:
            place = self._at(name)
            cover, step = name in covers[:1], _step_of(name)
            if name in covers[1:]:
                report.notice(place, f"{covers[0]} is the cover already; this is shown as another picture")
            if step > len(steps) > 0:
                there = "1 step" if len(steps) == 1 else f"{len(steps)} steps"
                report.notice(place, f"this picture belongs to step {step}, and the record has {there}")
            step = step if step <= len(steps) else 0
            alt = alts.get(name) or (steps[step - 1].sentence if step else "")
            yield Photo(str(self.folder / name), step, cover, alt, place)


def _step_of(name: str) -> int:
    """``02-label.jpg`` belongs to step 2; a name without a leading number to none (0)."""
    found = re.match(r"([0-9]{1,2})[-_. ]", name)
    return int(found[1]) if found else 0


def _unread(name: str) -> str:
    if Path(name).suffix.lower() in OF_PHONES:
        return (
            "this picture of a phone cannot be read here; save it as JPEG, or install what reads it:"
            " pip install mkdocs-batchleaf[heic]"
        )
    return "this picture cannot be read here; save it as JPEG"


def _reads_phones() -> bool:
    return find_spec(READER_OF_PHONES) is not None


def photos_in(folder: Path, shown: str) -> FolderPhotos:
    """The pictures of ``folder``. A link that leads elsewhere is left out: only what lies here is shown."""
    files = sorted(
        entry
        for entry in folder.iterdir()
        if entry.is_file() and not entry.is_symlink() and not entry.name.startswith(".")
    )
    read = PICTURES | OF_PHONES if _reads_phones() else PICTURES
    names = tuple(file.name for file in files if file.suffix.lower() in read)
    unread = tuple(file.name for file in files if file.suffix.lower() in (OTHER_PICTURES | OF_PHONES) - read)
    return FolderPhotos(names, unread, folder, shown)


LEADS_OUT: Final = "this is a link that leads out of the records, so it is not read; put the file itself here"


def lies_within(path: Path, projects: Path) -> bool:
    """True where ``path`` really lies below ``projects``. What a link leads to elsewhere may be anything."""
    return path.resolve().is_relative_to(projects.resolve())


CANNOT_BE_READ: Final = "this file cannot be read; look whether you may read it"


def bytes_of(file: Path) -> bytes:
    """What a file holds, and of a huge one no more than shows that. Raises :class:`OSError`."""
    with file.open("rb") as opened:
        return opened.read(LARGEST + 1)


def notes_in(folder: Path, projects: Path, report: Report, shown: str) -> str:
    """The prose of ``notes.md``, or nothing."""
    file = folder / "notes.md"
    place = Place(f"{shown}/notes.md", 1, 1)
    if not file.is_file():
        return ""
    if not lies_within(file, projects):
        report.notice(place, LEADS_OUT)
        return ""
    try:
        data = bytes_of(file)
        if len(data) > LARGEST:
            report.error(place, f"these notes are larger than {LARGEST // 1024} kB; shorten them")
            return ""
        return data.decode("utf-8-sig")
    except OSError:
        report.error(place, CANNOT_BE_READ)
        return ""
    except UnicodeDecodeError:
        report.error(place, "these notes are not in UTF-8; save the file as UTF-8")
        return ""
