"""One project: from what is written to what it means."""

from __future__ import annotations

import string
from collections.abc import Iterator, Set
from dataclasses import dataclass, replace

from batchleaf.facts import Cut, Fold, KeptPiece, Part, Place, Project, Settings, Status, Step, Supply, Use
from batchleaf.measure.amounts import parse_amount, unit_in
from batchleaf.measure.durations import parse_minutes
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_size
from batchleaf.records.folder import FolderPhotos
from batchleaf.records.grammar import (
    BaseLine,
    CutLine,
    read_base,
    read_count,
    read_cut,
    read_date,
    read_makes,
    read_names,
    read_part_key,
    read_step,
    read_thing,
    read_use,
)
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Node, key_place, place_of
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.written import PartWritten, ProjectWritten

BASE_ROLE = "base"


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
        roles = self._roles()
        parts = tuple(self._parts(base, roles))
        cut = tuple(self._cuts(roles, parts))
        uses = tuple(self._uses(makes[0] if makes else 0))
        steps = tuple(Step(*read_step(text)) for text in written.steps)
        photos = self._one.photos.settled(written.photos, steps, self._one.node, self._report)
        self._check_series(series)
        self._check_thing()
        if self._report.errors_since(before) or date is None or makes is None:
            return None
        thing, things = read_thing(written.thing or (base.thing if base else ""))
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

    def _roles(self) -> dict[str, tuple[str, ...]]:
        roles: dict[str, tuple[str, ...]] = {}
        for role, text in self._written.papers.items():
            place = self._place("papers", role)
            found = [self._paper(name, place) for name in read_names(text)]
            roles[role] = tuple(supply.slug for supply in found if supply)
        return roles

    def _paper(self, name: str, place: Place) -> Supply | None:
        supply = self._known.find(name, place, self._report)
        if supply is not None and supply.size is None:
            self._report.error(
                place, f"“{name}” has no sheet size in the drawer, so nothing can be cut from it"
            )
        return supply

    def _parts(self, base: BaseLine | None, roles: dict[str, tuple[str, ...]]) -> Iterator[Part]:
        letters = self._letters(has_base=self._written.base is not None)
        if base is not None:
            papers = roles.get(BASE_ROLE, ())
            if BASE_ROLE not in roles:
                self._report.error(
                    self._place("base"), "no paper is named for the base; write it under papers"
                )
            yield Part(
                "A", BASE_ROLE, base.size, 1, papers, self._turns(papers), base.fold, self._place("base")
            )
        for key, written in self._written.parts.items():
            part = self._part(key, next(letters), written, roles)
            if part is not None:
                yield part

    def _letters(self, *, has_base: bool) -> Iterator[str]:
        """The letter of each part in order: the one written, else the next that is free."""
        given = [read_part_key(key)[0] for key in self._written.parts]
        taken = {*given, *(["A"] if has_base else [])}
        free = (letter for letter in string.ascii_uppercase if letter not in taken)
        seen = {"A"} if has_base else set()
        for key, written in zip(self._written.parts, given, strict=True):
            place = key_place(self._one.node, ("parts", key))
            letter = written or next(free, "")
            if not letter:
                self._report.error(place, "there are more parts here than letters; one make has at most 26")
            elif letter in seen:
                self._report.error(place, f"the letter {letter} is taken by another part")
            seen |= {letter} - {""}
            yield letter

    def _part(
        self, key: str, letter: str, written: PartWritten, roles: dict[str, tuple[str, ...]]
    ) -> Part | None:
        path = ("parts", key)
        size = self._report.read(self._place(*path, "size"), parse_size, written.size, self._unit)
        each = self._report.read(self._place(*path, "each"), read_count, written.each)
        papers = roles.get(written.paper)
        if papers is None:
            place = self._place(*path, "paper")
            found = [self._paper(name, place) for name in read_names(written.paper)]
            papers = tuple(supply.slug for supply in found if supply)
        if size is None or each is None:
            return None
        turns = written.turn == "yes" and self._turns(papers)
        name = read_part_key(key)[1]
        return Part(letter, name, size, each, papers, turns, Fold.NONE, key_place(self._one.node, path))

    def _turns(self, papers: tuple[str, ...]) -> bool:
        """A part may be turned only if each paper it may come from allows it."""
        found = [self._known.get(slug) for slug in papers]
        return all(supply.turns for supply in found if supply)

    def _cuts(self, roles: dict[str, tuple[str, ...]], parts: tuple[Part, ...]) -> Iterator[Cut]:
        for i, text in enumerate(self._written.cut):
            place = self._place("cut", i)
            line = self._report.read(place, read_cut, text, self._unit)
            if line is None:
                continue
            kept = self._report.read(place, _kept, line, parts)
            for supply in self._cut_from(line, roles, place):
                yield self._cut(supply, line, kept or (), place)

    def _cut(self, slug: str, line: CutLine, kept: tuple[KeptPiece, ...], place: Place) -> Cut:
        """The line for one supply, with each piece under the one name it has in the drawer."""
        supply = self._known.named(slug)
        pieces = tuple(replace(piece, size=supply.piece(piece.size)) for piece in kept)
        return Cut(slug, line.count, line.scrap and supply.piece(line.scrap), pieces, place)

    def _cut_from(self, line: CutLine, roles: dict[str, tuple[str, ...]], place: Place) -> tuple[str, ...]:
        papers = roles.get(line.who)
        if papers is None:
            supply = self._paper(line.who, place)
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
            named = read_use(text)
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


def _kept(line: CutLine, parts: tuple[Part, ...]) -> tuple[KeptPiece, ...]:
    sizes: dict[str, Size] = {part.letter: part.size for part in parts}
    pieces: list[KeptPiece] = []
    for kept in line.kept:
        size = kept.size or sizes.get(kept.letter)
        if size is None:
            raise MeasureError(f"there is no part {kept.letter} to keep")
        pieces.append(KeptPiece(size, kept.count, kept.letter))
    return tuple(pieces)
