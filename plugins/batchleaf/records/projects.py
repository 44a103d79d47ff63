"""One project: from what is written to what it means."""

from __future__ import annotations

from collections.abc import Iterator, Set
from dataclasses import dataclass, replace

from batchleaf.facts import Cut, KeptPiece, Part, Place, Project, Settings, Status, Step, Use
from batchleaf.measure.amounts import parse_amount, unit_in
from batchleaf.measure.durations import parse_minutes
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit
from batchleaf.records.bases import read_base
from batchleaf.records.folder import FolderPhotos
from batchleaf.records.grammar import (
    CutLine,
    read_cut,
    read_date,
    read_makes,
    read_step,
    read_thing,
    read_use,
)
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Node, place_of
from batchleaf.records.papers import Papers, Roles, read_roles
from batchleaf.records.parts import read_parts
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.written import ProjectWritten


@dataclass(frozen=True, slots=True)
class ProjectFile:
    """One project as written, with its nodes for places and its folder's pictures and prose."""

    slug: str
    node: Node
    written: ProjectWritten
    photos: FolderPhotos
    notes: str


def project_of(
    one: ProjectFile, known: KnownSupplies, series: Set[str] | None, settings: Settings, report: Report
) -> Project | None:
    """The project as meant, or ``None`` with problems. ``series`` None: their file is unreadable."""
    return _ProjectReader(one, known, settings, report).project(series)


class _ProjectReader:
    """Reads one record from top to bottom; problems go to the report, reading goes on."""

    def __init__(self, one: ProjectFile, known: KnownSupplies, settings: Settings, report: Report) -> None:
        self._one, self._written, self._known, self._report = one, one.written, known, report
        self._papers = Papers(known, report)
        self._unit = Unit(one.written.unit) if one.written.unit else settings.unit

    def _place(self, *path: str | int) -> Place:
        return place_of(self._one.node, path)

    def project(self, series: Set[str] | None) -> Project | None:
        written, read = self._written, self._report.read
        before = self._report.mark()
        date = read(self._place("date"), read_date, written.date)
        makes = read(self._place("makes"), read_makes, written.makes)
        minutes = read(self._place("time"), parse_minutes, written.time) if written.time else None
        base = read(self._place("base"), read_base, written.base, self._unit) if written.base else None
        roles = read_roles(self._one.node, written, self._papers)
        parts = tuple(read_parts(self._one.node, written, base, roles, self._papers, self._unit))
        cut = tuple(self._cuts(roles, parts))
        uses = tuple(self._uses(makes[0] if makes else 0))
        steps = tuple(self._steps())
        photos = self._one.photos.settled(written.photos, steps, self._one.node, self._report)
        self._check_series(series)
        self._check_thing()
        thing_read = read(
            self._place("thing"), read_thing, written.thing or (base.thing if base else "thing")
        )
        if self._report.errors_since(before) or date is None or makes is None or thing_read is None:
            return None
        thing, things = thing_read
        return Project(
            slug=self._one.slug,
            title=written.title,
            date=date,
            status=Status(written.status),
            series=written.series,
            unit=self._unit,
            thing=thing,
            things=things,
            finished=makes[0],
            begun=makes[1],
            finished_size=base.finished_size if base else None,
            height=base.height if base else None,
            envelope=base.envelope if base else "",
            parts=parts,
            cut=cut,
            uses=uses,
            minutes=minutes,
            steps=steps,
            photos=photos,
            notes=self._one.notes,
            was=tuple(written.was),
            place=Place(self._one.node.place.file, 1, 1),
        )

    def _steps(self) -> Iterator[Step]:
        for i, text in enumerate(self._written.steps):
            step = self._report.read(self._place("steps", i), read_step, text)
            yield Step(*step) if step else Step(text)

    def _check_series(self, series: Set[str] | None) -> None:
        slug = self._written.series
        if slug and series is not None and slug not in series:
            self._report.error(
                self._place("series"), f"“{slug}” is not in series.yml{did_you_mean(slug, series)}"
            )

    def _check_thing(self) -> None:
        if not self._written.thing and not self._written.base:
            self._report.error(
                self._place(), "nothing says what one make is; write base, or thing such as “thing: card”"
            )

    def _cuts(self, roles: Roles, parts: tuple[Part, ...]) -> Iterator[Cut]:
        for i, text in enumerate(self._written.cut):
            place = self._place("cut", i)
            line = self._report.read(place, read_cut, text, self._unit)
            if line is None:
                continue
            papers = self._cut_from(line, roles, place)
            kept = self._report.read(place, _kept, line, parts, papers)
            for supply in papers:
                yield self._cut(supply, line, kept or (), place)

    def _cut(self, slug: str, line: CutLine, kept: tuple[KeptPiece, ...], place: Place) -> Cut:
        """The line for one supply, with each piece under the one name it has in the drawer."""
        supply = self._known.named(slug)
        pieces = tuple(replace(piece, size=supply.piece(piece.size)) for piece in kept)
        return Cut(slug, line.count, line.scrap and supply.piece(line.scrap), pieces, place)

    def _cut_from(self, line: CutLine, roles: Roles, place: Place) -> tuple[str, ...]:
        papers = roles.get(line.who)
        if papers is None:
            supply = self._papers.find(line.who, place, roles)
            papers = (supply.slug,) if supply else ()
        for slug in papers:
            self._check_noun(line, slug, place)
        if len(papers) > 1 and not line.each:
            self._report.error(
                place, f"“{line.who}” is filled by {len(papers)} papers; write “each”, or name one of them"
            )
            return ()
        return papers

    def _check_noun(self, line: CutLine, slug: str, place: Place) -> None:
        """Sheets are counted by the supply's own word; scraps by theirs."""
        supply = self._known.get(slug)
        if supply and supply.size and line.noun and line.noun not in (supply.unit, supply.units):
            self._report.error(place, f"“{line.noun}” is not what {slug} is counted in; write {supply.units}")

    def _uses(self, finished: int) -> Iterator[Use]:
        for i, text in enumerate(self._written.supplies):
            place = self._place("supplies", i)
            named = self._report.read(place, read_use, text)
            if named is None:
                continue
            if named.supply[0].isdigit():
                self._report.error(place, f"“{text}” begins with a number; name the supply first")
                continue
            unit = unit_in(named.amount) or "piece"
            supply = self._known.find_or_suppose(named.supply, unit, place, self._report)
            if supply is None:
                continue
            if not named.amount:
                yield Use(supply.slug, None, None, place)
                continue
            amount = self._report.read(place, parse_amount, named.amount, supply.unit, supply.units)
            if amount is not None:
                whole = amount if named.in_all else amount * finished
                yield Use(supply.slug, whole, None if named.in_all else amount, place)


def _kept(line: CutLine, parts: tuple[Part, ...], papers: tuple[str, ...]) -> tuple[KeptPiece, ...]:
    sizes: dict[str, Size] = {part.letter: part.size for part in parts}
    cut_from = {part.letter: part.papers for part in parts}
    pieces: list[KeptPiece] = []
    for kept in line.kept:
        size = kept.size or sizes.get(kept.letter)
        if size is None:
            raise MeasureError(f"there is no part {kept.letter} to keep")
        own = cut_from.get(kept.letter, ())
        if own and not set(own).issuperset(papers):
            raise MeasureError(
                f"{kept.letter} is cut from {' or '.join(own)} only, and this line is of"
                f" {' and '.join(papers)}; keep it where its own paper is cut"
            )
        pieces.append(KeptPiece(size, kept.count, kept.letter))
    return tuple(pieces)
