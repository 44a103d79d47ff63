"""All records of one maker: found, read, settled among one another."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Final, TypeVar

from pydantic import BaseModel

from batchleaf.facts import Archive, Place, Problem, Project, Series, Settings, Supply
from batchleaf.records.folder import notes_in, photos_in
from batchleaf.records.inventory import InventoryFile, counts_of, purchases_of, supplies_of
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Mapping, Node, child
from batchleaf.records.projects import ProjectFile, project_of
from batchleaf.records.report import Report
from batchleaf.records.series import series_of
from batchleaf.records.shape import shaped
from batchleaf.records.written import InventoryWritten, ProjectWritten, SeriesFileWritten
from batchleaf.records.yaml_text import read_yaml

M = TypeVar("M", bound=BaseModel)
NOT_PROJECTS: Final = frozenset({"inventory", "designs"})


@dataclass(frozen=True, slots=True)
class Reading:
    """What was read and what was wrong. ``archive`` is whole only where no problem is an error."""

    archive: Archive
    problems: tuple[Problem, ...]


def read_archive(projects: Path, settings: Settings) -> Reading:
    """Every record below ``projects``, whatever is wrong with some of them."""
    return _ArchiveReader(projects, settings).read()


class _ArchiveReader:
    """Reads the drawer first, since projects name its supplies."""

    def __init__(self, projects: Path, settings: Settings) -> None:
        self._projects, self._settings, self._report = projects, settings, Report()
        self._texts: dict[str, list[str]] = {}
        self._lost: set[str] = set()
        self._all_lost = False

    def read(self) -> Reading:
        """The whole archive with all problems, each with the line it speaks of."""
        if not self._projects.is_dir():
            self._report.error(
                Place(self._projects.name, 1, 1), "this folder is not there; it is where the records belong"
            )
            return Reading(Archive((), (), (), (), ()), tuple(self._report.found))
        files = self._inventory_files()
        supplies = self._supplies(files)
        known = KnownSupplies(supplies, self._lost, all_lost=self._all_lost)
        purchases = [line for one in files for line in purchases_of(one, known, self._settings, self._report)]
        counts = [count for one in files for count in counts_of(one, known, self._report)]
        series = self._series()
        archive = Archive(
            projects=tuple(sorted(self._project_facts(known, series), key=lambda p: (p.date, p.slug))),
            supplies=tuple(supplies[slug] for slug in sorted(supplies)),
            purchases=tuple(sorted(purchases, key=lambda p: (p.date, p.supply, p.place))),
            counts=tuple(sorted(counts, key=lambda c: (c.date, c.supply, c.place))),
            series=tuple(sorted(series or (), key=lambda s: s.slug)),
        )
        return Reading(archive, tuple(sorted(self._with_line(problem) for problem in self._report.found)))

    def _shown(self, file: Path) -> str:
        return file.relative_to(self._projects.parent).as_posix()

    def _with_line(self, problem: Problem) -> Problem:
        lines = self._texts.get(problem.place.file, [])
        at = problem.place.line - 1
        return replace(problem, line_text=lines[at]) if 0 <= at < len(lines) else problem

    def _read(self, file: Path, model: type[M], called: str) -> tuple[Node | None, M | None]:
        shown = self._shown(file)
        data = file.read_bytes()
        self._texts[shown] = data.decode("utf-8-sig", errors="replace").splitlines()
        node, problems = read_yaml(data, shown)
        self._report.found.extend(problems)
        if node is None:
            return None, None
        written, problems = shaped(node, model, called)
        self._report.found.extend(problems)
        return node, written

    def _inventory_files(self) -> list[InventoryFile]:
        files: list[InventoryFile] = []
        for file in sorted((self._projects / "inventory").glob("*.y*ml")):
            node, written = self._read(file, InventoryWritten, "a file of the drawer")
            if node is not None and written is not None:
                files.append(InventoryFile(self._shown(file), node, written))
                continue
            supplies = child(node, "supplies") if node else None
            self._all_lost |= node is None
            self._lost |= (
                {key.text for key, _ in supplies.entries} if isinstance(supplies, Mapping) else set()
            )
        return files

    def _supplies(self, files: list[InventoryFile]) -> dict[str, Supply]:
        supplies: dict[str, Supply] = {}
        for one in files:
            self._lost |= set(one.written.supplies)
            for supply in supplies_of(one, self._settings, self._report):
                if supply.slug in supplies:
                    first = supplies[supply.slug].place
                    self._report.error(
                        supply.place,
                        f"“{supply.slug}” is in the drawer already, in {first.file}, line {first.line}",
                    )
                else:
                    supplies[supply.slug] = supply
        return supplies

    def _series(self) -> tuple[Series, ...] | None:
        """The series, none where there is no file, ``None`` where it cannot be read."""
        file = self._projects / "series.yml"
        if not file.is_file():
            return ()
        node, written = self._read(file, SeriesFileWritten, "the file of series")
        return tuple(series_of(written, node)) if node is not None and written is not None else None

    def _project_facts(self, known: KnownSupplies, series: tuple[Series, ...] | None) -> list[Project]:
        slugs = None if series is None else {one.slug for one in series}
        projects: list[Project] = []
        for folder in sorted(self._projects.iterdir()):
            if not folder.is_dir() or folder.name in NOT_PROJECTS or folder.name.startswith((".", "_")):
                continue
            one = self._project_file(folder)
            project = project_of(one, known, slugs, self._settings, self._report) if one else None
            projects += [project] if project else []
        return projects

    def _project_file(self, folder: Path) -> ProjectFile | None:
        shown, file = self._shown(folder), folder / "project.yml"
        if not file.is_file():
            self._report.notice(Place(shown, 1, 1), "this folder has no project.yml, so it is left out")
            return None
        if not re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", folder.name):
            self._report.error(
                Place(shown, 1, 1),
                f"“{folder.name}” cannot be an address; name the folder in small letters, figures, hyphens",
            )
            return None
        node, written = self._read(file, ProjectWritten, "a batch")
        if node is None or written is None:
            return None
        notes = notes_in(folder, self._report, shown)
        return ProjectFile(folder.name, node, written, photos_in(folder, shown), notes)
