"""Answers tried one by one: each stands in a record that nobody wrote, read as all records are."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import fields, replace
from pathlib import Path
from typing import Final

from batchleaf.facts import NOWHERE, Problem, Settings, Supply, Weight
from batchleaf.records.archive import Reading
from batchleaf.records.designs import NO_DESIGNS
from batchleaf.records.folder import FolderPhotos
from batchleaf.records.known import KnownSupplies, KnownTools
from batchleaf.records.papers import Papers
from batchleaf.records.projects import Others, ProjectFile, project_of
from batchleaf.records.report import Report
from batchleaf.records.shape import shaped
from batchleaf.records.written import ProjectWritten
from batchleaf.records.yaml_text import read_yaml
from batchleaf.writing.record import SOUND, Answers, line_of, record_text

MOST: Final = 20
"""More names than this are counted, not listed."""
ANSWERS: Final = frozenset(one.name for one in fields(Answers))
NO_PHOTOS: Final = FolderPhotos((), (), Path(), "")


class Trial:
    """Knows what the archive holds, and so what an answer may name."""

    def __init__(self, reading: Reading, settings: Settings) -> None:
        archive = reading.archive
        faulty = {Path(problem.place.file) for problem in reading.problems if problem.weight is Weight.ERROR}
        self._settings, self._supplies = settings, archive.supplies
        self._series = tuple(one.slug for one in archive.series)
        # What a faulty file of the drawer or of the series holds, nobody can say.
        lost = any(file.parent.name == "inventory" for file in faulty)
        tools = {tool.slug: tool for tool in archive.tools}
        supplies = {supply.slug: supply for supply in archive.supplies}
        self._known = KnownSupplies(supplies, frozenset(), all_lost=lost, tools=tools)
        series = None if any(file.name == "series.yml" for file in faulty) else frozenset(self._series)
        known_tools = KnownTools(tools, frozenset(), all_lost=lost, supplies=supplies)
        self._others = Others(self._known, known_tools, NO_DESIGNS, series)

    def told(self, name: str, said: Mapping[str, str]) -> tuple[str, ...]:
        """What is wrong with the answer ``name`` beside the others in ``said``; nothing where it is fine."""
        record = record_text(replace(SOUND, **{key: said[key] for key in said.keys() & ANSWERS}), ())
        line = line_of(name, record)
        sentences = tuple(one.sentence for one in self._problems(record) if one.place.line == line)
        return sentences and (*sentences, *self._names(name))

    def told_of_paper(self, text: str) -> tuple[str, ...]:
        """What is wrong with ``text`` as what fills a role."""
        report = Report()
        Papers(self._known, report).source(text, NOWHERE)
        sentences = tuple(problem.sentence for problem in report.found)
        return sentences and (*sentences, *self._names("paper"))

    def _problems(self, record: str) -> Iterable[Problem]:
        node, problems = read_yaml(record.encode(), "")
        if node is None or problems:
            return problems
        found = shaped(node, ProjectWritten, "a batch")
        if found.written is None or found.problems:
            return found.problems
        report = Report()
        project_of(ProjectFile("", node, found.written, NO_PHOTOS, ""), self._others, self._settings, report)
        return report.found

    def _names(self, name: str) -> tuple[str, ...]:
        """What could have been answered, where that is known."""
        match name:
            case "paper":
                papers = [_called(one) for one in self._supplies if one.size and not one.pad]
                none = "no paper yet; write one into a file of the drawer first"
                return (f"The drawer has {_listed(papers) or none}",)
            case "series":
                return (f"The file series.yml has {_listed(self._series) or 'none yet'}",)
        return ()


def _called(supply: Supply) -> str:
    """A pad with the numbers of its papers."""
    return f"{supply.slug} 1 to {supply.designs}" if supply.designs else supply.slug


def _listed(names: Sequence[str]) -> str:
    more = len(names) - MOST
    return ", ".join((*names[:MOST], *([f"and {more} more"] if more > 0 else [])))
