"""One project: from what is written to what it means."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence, Set
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import (
    Asked,
    Companion,
    Cut,
    Part,
    Place,
    Project,
    Settings,
    Status,
    Step,
    Supply,
    Tool,
    Use,
    Went,
)
from batchleaf.measure.durations import parse_minutes
from batchleaf.measure.lengths import Unit
from batchleaf.records.ages import read_age
from batchleaf.records.collating import collating_of
from batchleaf.records.credit import read_credit
from batchleaf.records.cuts import read_cuts
from batchleaf.records.designs import KnownDesigns
from batchleaf.records.film import read_film
from batchleaf.records.folder import FolderPhotos
from batchleaf.records.grammar import read_date, read_makes, read_step, read_thing
from batchleaf.records.known import KnownSupplies, KnownTools
from batchleaf.records.made_of import ANY_LETTER, MadeOf, lines_in, made_of, varied
from batchleaf.records.nodes import Node, child, place_of
from batchleaf.records.occasions import read_occasions
from batchleaf.records.packing import read_packing, tell_packed_twice
from batchleaf.records.papers import Papers, read_roles
from batchleaf.records.parts import PartsRead, read_parts
from batchleaf.records.prices import read_asked
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import closest, did_you_mean
from batchleaf.records.sticking import for_sticking, sticking_uses, stuck_parts, supplies_in
from batchleaf.records.uses import read_uses, ready_uses, tell_twice
from batchleaf.records.went import read_all_went
from batchleaf.records.works import NamedWork, read_works, tell_unlisted, works_of
from batchleaf.records.written import ProjectWritten

UNREAD: Final = PartsRead(None, (), (), frozenset({ANY_LETTER}))
"""The parts of a batch whose design cannot be read."""


@dataclass(frozen=True, slots=True)
class ProjectFile:
    """One project as written, with its nodes for places and its folder's pictures and prose."""

    slug: str
    node: Node
    written: ProjectWritten
    photos: FolderPhotos
    notes: str


@dataclass(frozen=True, slots=True)
class Others:
    """The other records that a project may name. ``series`` None: their file is unreadable.

    ``adhesive``: what the drawer says parts are stuck with.
    """

    supplies: KnownSupplies
    tools: KnownTools
    designs: KnownDesigns
    series: Set[str] | None
    adhesive: Supply | None = None


def project_of(one: ProjectFile, others: Others, settings: Settings, report: Report) -> Project | None:
    """The project as meant, or ``None`` with problems."""
    return _ProjectReader(one, others, settings, report).project()


class _ProjectReader:
    """Reads one record from top to bottom; problems go to the report, reading goes on."""

    def __init__(self, one: ProjectFile, others: Others, settings: Settings, report: Report) -> None:
        self._one, self._written, self._others, self._report = one, one.written, others, report
        self._settings = settings
        self._unit = Unit(one.written.unit) if one.written.unit else settings.unit

    def _place(self, *path: str | int) -> Place:
        return place_of(self._one.node, path)

    def _says(self, key: str) -> bool:
        """Whether ``key`` stands in the record, be its value faulty."""
        return child(self._one.node, key) is not None

    def project(self) -> Project | None:
        """Everything that the record says, told of what is off."""
        written, read, report, others = self._written, self._report.read, self._report, self._others
        before = report.mark()
        date = read(self._place("date"), read_date, written.date)
        makes = read(self._place("makes"), read_makes, written.makes) or (0, 0)
        youngest = read(self._place("youngest"), read_age, written.youngest) if written.youngest else None
        occasions = (
            read(self._place("occasion"), read_occasions, written.occasion) if written.occasion else ()
        )
        minutes = read(self._place("time"), parse_minutes, written.time) if written.time else None
        lines, parts, cut = self._make()
        base, status = parts.base, Status(written.status)
        listed = tuple(read_uses(lines.supplies, makes[0], others.supplies, report))
        stuck = stuck_parts(lines, parts, others.supplies, others.adhesive, report)
        collating = collating_of(lines.collate, parts, others.supplies, report)
        uses = self._uses(lines, stuck, listed, makes[0] if status.moves_the_drawer else makes[1])
        steps = tuple(self._steps(lines))
        photos = self._one.photos.settled(written.photos, steps, self._one.node, report)
        went = tuple(self._went(makes[0]))
        asks = self._asks()
        credit = read(lines.credit.place, read_credit, lines.credit.text) if lines.credit else None
        film = read(self._place("film"), read_film, written.film) if written.film else None
        named = read_works(lines.bench, parts, others.supplies, others.tools, report)
        tell_unlisted(named, uses, report)
        tools = tuple(self._tools(lines, parts.parts, named))
        self._check_series()
        thing = self._thing(lines, parts)
        if report.errors_since(before) or parts is UNREAD or date is None or thing is None:
            return None
        return Project(
            slug=self._one.slug,
            title=written.title,
            date=date,
            status=status,
            series=written.series,
            unit=self._unit,
            thing=thing[0],
            things=thing[1],
            finished=makes[0],
            begun=makes[1],
            finished_size=base.finished_size if base else None,
            parts=stuck,
            cut=cut,
            uses=uses,
            minutes=minutes,
            youngest=youngest,
            occasions=occasions or (),
            steps=steps,
            photos=photos,
            notes=self._one.notes,
            was=tuple(written.was),
            design=written.design or "",
            height=base.height if base else None,
            envelope=base.envelope if base else "",
            tools=tools,
            kerf=self._kerf(tools),
            went=went,
            asks=asks,
            credit=credit,
            collating=collating,
            film=film,
            works=works_of(named, stuck, tuple(self._known(tools))),
            companion=Companion(written.notes),
            place=Place(self._one.node.place.file, 1, 1),
        )

    def _make(self) -> tuple[MadeOf, PartsRead, tuple[Cut, ...]]:
        """What one make is, and what was cut for it; neither where its design cannot be read."""
        own = made_of(self._one.node, self._written, self._unit)
        slug, place = self._written.design, self._place("design")
        if slug is None and not self._says("design"):
            return self._parts_and_cut(own)
        design = self._others.designs.find(slug, place, self._report) if slug else None
        if design is None:
            return own, UNREAD, ()
        return self._parts_and_cut(varied(design.lines, own, place))

    def _parts_and_cut(self, lines: MadeOf) -> tuple[MadeOf, PartsRead, tuple[Cut, ...]]:
        supplies, report = self._others.supplies, self._report
        roles = read_roles(self._one.node, self._written, supplies, report)
        own = Papers(supplies, report, roles)
        of_design = Papers(supplies, report, roles, may_want=True)
        parts = read_parts(lines, lambda line: own if line.own else of_design, self._others.tools, report)
        if of_design.unfilled:
            idle = roles.keys() - own.asked.keys() - of_design.asked.keys()
            self._tell_unfilled(tuple(of_design.unfilled), idle)
        cut = lines_in(self._one.node, "cut", self._written.cut, self._unit)
        return lines, parts, read_cuts(cut, roles, parts, supplies, self._settings.least_kept, report)

    def _uses(
        self, lines: MadeOf, parts: Sequence[Part], listed: Sequence[Use], makes: int
    ) -> tuple[Use, ...]:
        """All that is used for ``makes``: what the record lists, and what follows from the rest of it."""
        tell_twice(parts, listed, self._report)
        tell_packed_twice(lines.packing, lines.supplies, self._report)
        return (
            *for_sticking(listed, parts),
            *sticking_uses(parts, supplies_in(lines.supplies), makes),
            *ready_uses(parts, makes),
            *read_packing(lines.packing, makes, self._others.supplies, self._report),
        )

    def _tell_unfilled(self, roles: tuple[str, ...], idle: Set[str]) -> None:
        """``idle``: roles of the batch that nobody asks for, one of them perhaps misspelt."""
        asks = "a paper for" if len(roles) == 1 else "papers for"
        names, them = " and ".join(f"“{role}”" for role in roles), "it" if len(roles) == 1 else "them"
        slip = closest(roles[0], sorted(idle))
        hint = f", where “{slip}” stands now" if slip else ""
        self._report.error(
            self._place("design"),
            f"the design “{self._written.design}” asks for {asks} {names}; write {them} under papers{hint}",
        )

    def _steps(self, lines: MadeOf) -> Iterator[Step]:
        for line in lines.steps:
            step = self._report.read(line.place, read_step, line.text)
            yield Step(*step) if step else Step(line.text)

    def _went(self, finished: int) -> Iterator[Went]:
        lines = lines_in(self._one.node, "went", self._written.went, self._unit)
        return read_all_went(lines, finished, self._settings.currency, self._report)

    def _asks(self) -> Asked | None:
        if self._written.asks is None:
            return None
        place = self._place("asks")
        price = self._report.read(place, read_asked, self._written.asks, self._settings.currency)
        return None if price is None else Asked(price, place)

    def _tools(self, lines: MadeOf, parts: Sequence[Part], works: Sequence[NamedWork]) -> Iterator[str]:
        """The tools that are named, the sets that parts are stamped with or cut by, those of bench work."""
        named = dict.fromkeys(
            line.text for line in lines.tools if self._others.tools.find(line.text, line.place, self._report)
        )
        sets = dict.fromkeys(use.tool for part in parts for use in (*part.stamps, *part.dies))
        at_work = dict.fromkeys(one.tool.slug for one in works if one.tool)
        yield from named | sets | at_work

    def _known(self, tools: Iterable[str]) -> Iterator[Tool]:
        known = (self._others.tools.get(slug) for slug in tools)
        yield from (tool for tool in known if tool)

    def _kerf(self, tools: Iterable[str]) -> Fraction:
        return max((tool.kerf for tool in self._known(tools)), default=Fraction(0))

    def _check_series(self) -> None:
        slug, series = self._written.series, self._others.series
        if slug and series is not None and slug not in series:
            self._report.error(
                self._place("series"), f"“{slug}” is not in series.yml{did_you_mean(slug, series)}"
            )

    def _thing(self, lines: MadeOf, parts: PartsRead) -> tuple[str, str] | None:
        """What one make is called, and several."""
        if lines.thing:
            return self._report.read(lines.thing.place, read_thing, lines.thing.text)
        if lines.base:
            return read_thing(parts.base.thing) if parts.base else None
        if parts is not UNREAD and not (self._says("thing") or self._says("base")):
            self._report.error(
                place_of(self._one.node, ()),
                "nothing says what one make is; write base, or thing such as “thing: card”",
            )
        return None
