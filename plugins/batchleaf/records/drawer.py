"""The drawer and the bench as a whole: every name stands for one thing."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from batchleaf.facts import Place, Settings, Supply, Tool
from batchleaf.records.inventory import InventoryFile
from batchleaf.records.known import bare
from batchleaf.records.report import Report
from batchleaf.records.supplies import papers_of, supplies_of
from batchleaf.records.tools import tools_of


@dataclass(frozen=True, slots=True)
class Drawer:
    """What could be read, by name; ``named``: all names, of what could not be read as well."""

    supplies: Mapping[str, Supply]
    tools: Mapping[str, Tool]
    named: frozenset[str]


def read_drawer(files: Iterable[InventoryFile], settings: Settings, report: Report) -> Drawer:
    """All supplies and tools of all files, with the numbered papers of each pad."""
    names = _Names(report)
    named: set[str] = set()
    for one in files:
        named |= {*one.written.supplies, *one.written.tools}
        for supply in supplies_of(one, settings, report):
            names.add_supply(supply)
    for pad in list(names.supplies.values()):
        for paper in papers_of(pad):
            names.add_paper(paper, pad)
    for one in files:
        for tool in tools_of(one, settings, report):
            names.add_tool(tool)
    return Drawer(names.supplies, names.tools, frozenset(named))


class _Names:
    """Takes each thing under its name, and tells where a name is taken."""

    def __init__(self, report: Report) -> None:
        self.supplies: dict[str, Supply] = {}
        self.tools: dict[str, Tool] = {}
        self._report = report
        self._bare: dict[str, Supply] = {}

    def add_supply(self, supply: Supply) -> None:
        slug = supply.slug
        if slug in self.supplies:
            first = _told(self.supplies[slug].place)
            self._report.error(supply.place, f"“{slug}” is in the drawer already, in {first}")
            return
        self.supplies[slug] = supply
        near = self._bare.setdefault(bare(slug), supply)
        if near is not supply:
            self._report.notice(
                supply.place,
                f"“{slug}” and “{near.slug}” in {_told(near.place)} are one name in two spellings;"
                " if they are one supply, keep one of them",
            )

    def add_paper(self, paper: Supply, pad: Supply) -> None:
        own = self.supplies.setdefault(paper.slug, paper)
        if own is not paper:
            self._report.error(
                own.place,
                f"“{own.slug}” is paper {paper.number} of the pad “{pad.slug}” in {_told(pad.place)};"
                " give this supply another name",
            )

    def add_tool(self, tool: Tool) -> None:
        slug = tool.slug
        if slug in self.tools:
            first = _told(self.tools[slug].place)
            self._report.error(tool.place, f"“{slug}” is on the bench already, in {first}")
        elif slug in self.supplies:
            first = _told(self.supplies[slug].place)
            self._report.error(
                tool.place, f"“{slug}” is a supply, in {first}; a tool needs a name of its own"
            )
        else:
            self.tools[slug] = tool


def _told(place: Place) -> str:
    return f"{place.file}, line {place.line}"
