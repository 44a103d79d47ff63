"""All records of one maker: found, read, settled among one another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from batchleaf.facts import Archive, Place, Problem, Project, Series, Settings
from batchleaf.records import nodes
from batchleaf.records.addresses import DESIGNS, OWN_FOLDERS, why_no_address
from batchleaf.records.counts import counted_once, counts_of
from batchleaf.records.designs import NO_DESIGNS, DesignFile, KnownDesigns, ReadDesign, design_of
from batchleaf.records.drawer import read_drawer
from batchleaf.records.folder import CANNOT_BE_READ, LEADS_OUT, bytes_of, lies_within, notes_in, photos_in
from batchleaf.records.gone import gone_of
from batchleaf.records.inventory import InventoryFile
from batchleaf.records.known import KnownSupplies, KnownTools
from batchleaf.records.moves import check_moves
from batchleaf.records.nodes import Node, child
from batchleaf.records.post_rules import known_posts
from batchleaf.records.projects import Others, ProjectFile, project_of
from batchleaf.records.purchases import purchases_of
from batchleaf.records.rates import postage_of
from batchleaf.records.report import Report
from batchleaf.records.series import series_of
from batchleaf.records.shape import Shaped, shaped
from batchleaf.records.sticking import adhesive_of
from batchleaf.records.written import DesignWritten, InventoryWritten, ProjectWritten, SeriesFileWritten
from batchleaf.records.yaml_text import lines_of, read_yaml

M = TypeVar("M", bound=BaseModel)
TextLines = Mapping[str, tuple[str, ...]]
"""File → its lines."""


@dataclass(frozen=True, slots=True)
class Reading:
    """What was read and what was wrong. ``archive`` is whole only where no problem is an error.

    ``lines`` holds the text of each file, so that a problem found later can show its line;
    ``drawer``, ``batches`` and ``designs`` are the records as written.
    """

    archive: Archive
    problems: tuple[Problem, ...]
    lines: TextLines
    drawer: tuple[InventoryFile, ...] = ()
    batches: tuple[ProjectFile, ...] = ()
    designs: KnownDesigns = NO_DESIGNS

    def located(self, problem: Problem) -> Problem:
        """The problem with the line it speaks of."""
        lines = self.lines.get(problem.place.file, ())
        at = problem.place.line - 1
        return replace(problem, line_text=lines[at]) if 0 <= at < len(lines) else problem


def read_archive(projects: Path, settings: Settings) -> Reading:
    """Every record below ``projects``, whatever is wrong with some of them."""
    return _ArchiveReader(projects, settings).read()


class _ArchiveReader:
    """Reads the drawer first, since projects name its supplies."""

    def __init__(self, projects: Path, settings: Settings) -> None:
        self._projects, self._settings, self._report = projects, settings, Report()
        self._lines: dict[str, tuple[str, ...]] = {}
        self._faulty: set[Place] = set()
        self._drawer: list[InventoryFile] = []
        self._batches: list[ProjectFile] = []
        self._known_designs = NO_DESIGNS
        self._lost: set[str] = set()
        self._all_lost = False

    def read(self) -> Reading:
        """The whole archive with all problems, each with the line it speaks of."""
        if not self._projects.is_dir():
            place = Place(self._projects.name, 1, 1)
            self._report.error(place, "this folder is not there; it is where the records belong")
            return Reading(Archive((), (), (), (), ()), tuple(self._report.found), {})
        archive = self._archive()
        reading = Reading(
            archive, (), self._lines, tuple(self._drawer), tuple(self._batches), self._known_designs
        )
        return replace(reading, problems=tuple(sorted(reading.located(one) for one in self._report.found)))

    def _archive(self) -> Archive:
        files = self._drawer = self._inventory_files()
        mark = self._report.mark()
        drawer = read_drawer(files, self._settings, self._report)
        self._lost = (self._lost | drawer.named) - drawer.supplies.keys() - drawer.tools.keys()
        known = KnownSupplies(drawer.supplies, self._lost, all_lost=self._all_lost, tools=drawer.tools)
        tools = KnownTools(drawer.tools, self._lost, all_lost=self._all_lost, supplies=drawer.supplies)
        purchases = [line for one in files for line in purchases_of(one, known, self._settings, self._report)]
        found = [count for one in files for count in counts_of(one, known, self._settings, self._report)]
        counts = list(counted_once(found, self._report))
        gone = [line for one in files for line in gone_of(one, known, self._settings, self._report)]
        adhesive = adhesive_of(files, known, self._report)
        postage = postage_of(files, known_posts(), self._settings, self._report)
        self._report.forget_repeats(mark, self._faulty)
        designs = self._known_designs = self._designs(known, tools)
        series = self._series()
        slugs = None if series is None else {one.slug for one in series}
        projects = list(self._project_facts(Others(known, tools, designs, slugs, adhesive)))
        check_moves(projects, self._report)
        return Archive(
            projects=tuple(sorted(projects, key=lambda p: (p.date, p.slug))),
            supplies=known.all(),
            purchases=tuple(sorted(purchases, key=lambda p: (p.date, p.supply, p.place))),
            counts=tuple(sorted(counts, key=lambda c: (c.date, c.supply, c.place))),
            gone=tuple(sorted(gone, key=lambda g: (g.date, g.supply, g.place))),
            series=tuple(sorted(series or (), key=lambda s: s.slug)),
            designs=designs.all(),
            tools=tools.all(),
            postage=postage,
        )

    def _shown(self, file: Path) -> str:
        return file.relative_to(self._projects.parent).as_posix()

    def _lies_within(self, path: Path) -> bool:
        within = lies_within(path, self._projects)
        if not within:
            self._report.error(Place(self._shown(path), 1, 1), LEADS_OUT)
        return within

    def _read(self, file: Path, model: type[M], called: str) -> tuple[Node | None, Shaped[M]]:
        """A file's nodes and its record as written; what is wrong with it is reported."""
        shown = self._shown(file)
        try:
            data = bytes_of(file)
        except OSError:
            unreadable = Problem(Place(shown, 1, 1), CANNOT_BE_READ)
            self._report.take((unreadable,))
            return None, Shaped(None, (unreadable,))
        self._lines[shown] = lines_of(data.decode("utf-8-sig", errors="replace"))
        node, problems = read_yaml(data, shown)
        self._report.take(problems)
        unread: Shaped[M] = Shaped(None, ())
        record = shaped(node, model, called) if node else unread
        self._report.take(record.problems)
        faulty = (*problems, *record.problems)
        self._faulty |= {problem.place for problem in faulty}
        return node, Shaped(record.written, faulty)

    def _inventory_files(self) -> list[InventoryFile]:
        """The files of the drawer. Supplies of a faulty one are lost, but its other values are still read."""
        files: list[InventoryFile] = []
        for file in _record_files(self._projects / "inventory"):
            if not self._lies_within(file):
                self._all_lost = True
                continue
            node, record = self._read(file, InventoryWritten, "a file of the drawer")
            if record.problems:
                self._all_lost |= node is None
                for named in (child(node, key) if node else None for key in ("supplies", "tools")):
                    self._lost |= (
                        {key.text for key, _ in named.entries} if isinstance(named, nodes.Mapping) else set()
                    )
            if node is not None and record.written is not None:
                files.append(InventoryFile(self._shown(file), node, record.written))
        return files

    def _series(self) -> tuple[Series, ...] | None:
        """The series, none where there is no file, ``None`` where it cannot be read."""
        file = self._projects / "series.yml"
        if not file.is_file():
            return ()
        if not self._lies_within(file):
            return None
        node, record = self._read(file, SeriesFileWritten, "the file of series")
        if node is None or record.written is None or record.problems:
            return None
        return tuple(series_of(record.written, node))

    def _designs(self, known: KnownSupplies, tools: KnownTools) -> KnownDesigns:
        """The designs that stand alone; a faulty one is lost, and told once."""
        designs: dict[str, ReadDesign] = {}
        named: set[str] = set()
        for file in _record_files(self._projects / DESIGNS):
            if self._is_design(file, named):
                design = self._design(file, known, tools)
                if design is not None:
                    designs[file.stem] = design
            named.add(file.stem)
        return KnownDesigns(designs, named - designs.keys())

    def _is_design(self, file: Path, named: Set[str]) -> bool:
        place = Place(self._shown(file), 1, 1)
        if not self._lies_within(file):
            return False
        if why_not := why_no_address(file.stem):
            self._report.error(place, f"{why_not}; it is the name of this file")
        elif file.stem in named:
            self._report.error(place, f"“{file.stem}” is the name of another design; rename one of them")
        else:
            return True
        return False

    def _design(self, file: Path, known: KnownSupplies, tools: KnownTools) -> ReadDesign | None:
        node, record = self._read(file, DesignWritten, "a design")
        if node is None or record.written is None:
            return None
        mark = self._report.mark()
        one = DesignFile(file.stem, node, record.written)
        design = design_of(one, known, tools, self._settings, self._report)
        self._report.forget_repeats(mark, self._faulty)
        return None if record.problems else design

    def _project_facts(self, others: Others) -> Iterator[Project]:
        for folder in _batch_folders(self._projects):
            project = self._project(folder, others)
            if project is not None:
                yield project

    def _project(self, folder: Path, others: Others) -> Project | None:
        """A record whose shape is faulty is read on for what else is wrong, and then dropped."""
        if not self._is_project(folder):
            return None
        shown = self._shown(folder)
        node, record = self._read(folder / "project.yml", ProjectWritten, "a batch")
        if node is None or record.written is None:
            return None
        mark = self._report.mark()
        notes = notes_in(folder, self._projects, self._report, shown)
        one = ProjectFile(folder.name, node, record.written, photos_in(folder, shown), notes)
        self._batches.append(one)
        project = project_of(one, others, self._settings, self._report)
        self._report.forget_repeats(mark, self._faulty)
        return None if record.problems else project

    def _is_project(self, folder: Path) -> bool:
        place = Place(self._shown(folder), 1, 1)
        if not self._lies_within(folder):
            return False
        if not (folder / "project.yml").is_file():
            self._report.notice(place, _left_out(folder))
            return False
        if why_not := why_no_address(folder.name):
            self._report.error(place, f"{why_not}; it is the name of this folder")
            return False
        return self._lies_within(folder / "project.yml")


def batch_slugs(projects: Path) -> tuple[str, ...]:
    """The folders of ``projects`` that are to be batches, whether their records can be read or not."""
    return tuple(folder.name for folder in _batch_folders(projects) if not why_no_address(folder.name))


def record_files(projects: Path) -> Iterator[tuple[Path, str]]:
    """Every file that is a record and lies in ``projects``, with its kind, whether it can be read or not."""
    found = [
        *((folder / "project.yml", "project") for folder in _batch_folders(projects)),
        *((file, "design") for file in _record_files(projects / DESIGNS)),
        *((file, "inventory") for file in _record_files(projects / "inventory")),
        (projects / "series.yml", "series"),
        (projects / "recipients.yml", "recipients"),
    ]
    return ((file, kind) for file, kind in found if file.is_file() and lies_within(file, projects))


def _batch_folders(projects: Path) -> list[Path]:
    folders = projects.iterdir() if projects.is_dir() else ()
    return sorted(
        folder
        for folder in folders
        if folder.is_dir() and folder.name not in OWN_FOLDERS and not folder.name.startswith((".", "_"))
    )


def _record_files(folder: Path) -> list[Path]:
    """The records of a folder; what an editor or a system leaves beside them is none."""
    files = folder.iterdir() if folder.is_dir() else ()
    return sorted(
        file
        for file in files
        if file.suffix in (".yml", ".yaml") and not file.name.startswith(".") and file.is_file()
    )


def _left_out(folder: Path) -> str:
    """Why a folder is no batch, and which file was perhaps meant to be its record."""
    near = sorted(file.name for file in folder.iterdir() if file.name.lower().startswith("project.y"))
    hint = f"; rename {near[0]} to project.yml" if near else ""
    return f"this folder has no project.yml, so it is left out{hint}"
