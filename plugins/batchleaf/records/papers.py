"""Which supplies a part is made from, and which of them fill a role."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Final

from batchleaf.facts import NOWHERE, Direction, Place, ShownSide, Supply
from batchleaf.records.known import KnownSupplies
from batchleaf.records.nodes import Node, place_of
from batchleaf.records.report import Report
from batchleaf.records.sources import NamedPapers, SourceLine, read_named, read_source
from batchleaf.records.written import ProjectWritten


@dataclass(frozen=True, slots=True)
class Source:
    """The supplies that a part may come from; ``place``: where they are named.

    ``any_of`` above 0: so many papers of a pad. ``by_hand``: from scraps that nobody measured.
    """

    papers: tuple[str, ...] = ()
    any_of: int = 0
    by_hand: bool = False
    place: Place = field(default=NOWHERE, compare=False)


NOTHING: Final = Source()
Roles = Mapping[str, Source]
"""Role → what fills it."""


def role_like(name: str, roles: Iterable[str]) -> str | None:
    """The role that is called ``name`` but for large and small letters."""
    return next((role for role in roles if role.casefold() == name.casefold()), None)


class Papers:
    """Finds what a text names: roles first, then supplies. What is neither is told.

    For a design that stands alone, names that nothing fills are collected in
    ``unfilled`` instead; ``asked`` holds all names that were looked for.
    """

    def __init__(
        self, known: KnownSupplies, report: Report, roles: Roles | None = None, *, may_want: bool = False
    ) -> None:
        self._known, self._report, self._may_want = known, report, may_want
        self._roles, self._roles_count = roles or {}, roles is not None
        self._told: set[tuple[Place, str]] = set()
        self.asked: dict[str, None] = {}
        self.unfilled: dict[str, None] = {}

    def has_role(self, name: str) -> bool:
        """Whether a role is called ``name``, case ignored."""
        return role_like(name, self._roles) is not None

    def role(self, name: str) -> Source | None:
        """What fills the role called ``name``, case ignored; ``None`` where there is no such role."""
        own = role_like(name, self._roles)
        self.asked[own or name] = None
        if own is None and self._may_want:
            self.unfilled[name] = None
            return NOTHING
        return None if own is None else self._roles[own]

    def source(self, text: str, place: Place) -> Source | None:
        """What a text means, or ``None`` and a problem."""
        if text in self._roles:
            self.asked[text] = None
            return self._roles[text]
        line = self._report.read(place, read_source, text)
        if line is None:
            return None
        found = [self._piece(name, place) for name in line.names]
        papers = tuple(slug for source in found if source for slug in source.papers)
        twice = [slug for slug in dict.fromkeys(papers) if papers.count(slug) > 1]
        if twice:
            self._report.error(place, f"“{twice[0]}” is named twice here; once is enough")
        if twice or None in found or not self._can_choose(line, papers, place):
            return None
        alone = found[0] if len(found) == 1 and found[0] else NOTHING
        return Source(
            papers,
            line.any_of or alone.any_of,
            line.by_hand or alone.by_hand,
            place if alone is NOTHING else alone.place,
        )

    def _piece(self, text: str, place: Place) -> Source | None:
        """One piece between commas: a role, or supplies with numbers behind them."""
        if text in self._roles:
            self.asked[text] = None
            return self._roles[text]
        if self._known.get(text.split()[0]) is None and (sentence := self._known.spelt_out(text)):
            self._report.error(place, sentence)
            return None
        if self._may_want and self._is_unknown(text.split()[0]):
            return self._wanted(text)
        found = [self._supplies(named, place) for named in read_named(text)]
        if None in found:
            return None
        return Source(tuple(slug for slugs in found for slug in slugs or ()), place=place)

    def _is_unknown(self, name: str) -> bool:
        """Whether nothing is called so, not even a supply whose own record is faulty."""
        found = Report()
        return self._known.find(name, NOWHERE, found) is None and bool(found.found)

    def _wanted(self, text: str) -> Source:
        self.asked[text] = self.unfilled[text] = None
        return NOTHING

    def _supplies(self, named: NamedPapers, place: Place) -> tuple[str, ...] | None:
        self.asked[named.name] = None
        if named.name in self._roles and not named.numbers:
            return self._roles[named.name].papers
        if named.name in self._roles:
            self._report.error(place, f"“{named.name}” is a role; its papers are picked under papers")
            return None
        supply = self.find(named.name, place)
        if supply is None:
            return None
        return self._numbered(supply, named.numbers, place) if named.numbers else (supply.slug,)

    def _numbered(self, pad: Supply, numbers: tuple[int, ...], place: Place) -> tuple[str, ...] | None:
        wrong = [number for number in numbers if not 1 <= number <= pad.designs]
        if wrong:
            self._report.error(place, no_such_paper(pad, wrong[0]))
            return None
        return tuple(f"{pad.slug}-{number}" for number in numbers)

    def _can_choose(self, line: SourceLine, papers: tuple[str, ...], place: Place) -> bool:
        pad = self._known.get(papers[0]) if len(papers) == 1 else None
        if not line.any_of or (not papers and self._may_want):
            return True
        if pad is None or not pad.designs:
            name = line.names[0]
            sentence = f"“{name}” is no pad of several papers, so there is nothing for “any” to choose from"
        elif line.any_of > pad.designs:
            sentence = f"“{pad.slug}” has {pad.designs} papers, and {line.any_of} are wanted"
        else:
            return True
        self._report.error(place, sentence)
        return False

    def find(self, name: str, place: Place) -> Supply | None:
        """The supply called ``name``, or ``None`` and a problem."""
        pad, _, number = name.rpartition("-")
        of = self._known.get(pad)
        if of is not None and of.designs and number.isdigit() and self._known.get(name) is None:
            self._report.error(place, no_such_paper(of, int(number)))
            return None
        return self._known.find(name, place, self._report, self._roles if self._roles_count else None)

    def can_be_cut(self, papers: Iterable[str], place: Place) -> bool:
        """Whether each is bought in sheets; what is not is told once for a place."""
        bad = [slug for slug in papers if (supply := self._known.get(slug)) and supply.size is None]
        for slug in bad:
            if (place, slug) not in self._told:
                self._told.add((place, slug))
                self._report.error(
                    place, f"“{slug}” has no sheet size in the drawer, so nothing can be cut from it"
                )
        return not bad

    def supplies(self, source: Source) -> Iterator[Supply]:
        """The supplies of a source that could be read."""
        for slug in source.papers:
            if supply := self._known.get(slug):
                yield supply

    def let_turn(self, source: Source, shown: ShownSide) -> bool:
        """A part may be turned only if the side that shows allows it with each paper."""
        return all(supply.side(shown).direction is Direction.ANY_WAY for supply in self.supplies(source))


def no_such_paper(pad: Supply, number: int) -> str:
    """Why ``pad`` has no paper of that number."""
    if not pad.designs:
        return f"“{pad.slug}” is no pad of several papers; there is no {number}"
    return f"“{pad.slug}” has papers 1 to {pad.designs}; there is no {number}"


def read_roles(node: Node, written: ProjectWritten, known: KnownSupplies, report: Report) -> Roles:
    """What fills each role of a project."""
    papers = Papers(known, report)
    places = {role: place_of(node, ("papers", role)) for role in written.papers}
    found = {role: papers.source(text, places[role]) for role, text in written.papers.items()}
    return {role: replace(source or NOTHING, place=places[role]) for role, source in found.items()}
