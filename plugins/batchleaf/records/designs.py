"""Designs that stand alone: from what is written to what batches make of it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Set
from dataclasses import dataclass, replace
from typing import Final

from batchleaf.facts import NO_TERMS, Design, Place, Settings
from batchleaf.measure.lengths import Unit
from batchleaf.records.collating import check_collate
from batchleaf.records.credit import read_credit
from batchleaf.records.grammar import read_step, read_thing
from batchleaf.records.known import KnownSupplies, KnownTools
from batchleaf.records.made_of import MadeOf, made_of
from batchleaf.records.nodes import Node, place_of
from batchleaf.records.packing import read_packing, tell_packed_twice
from batchleaf.records.papers import NOTHING, Papers, role_like
from batchleaf.records.parts import read_parts
from batchleaf.records.report import Report
from batchleaf.records.shape_problems import did_you_mean
from batchleaf.records.sticking import stuck_parts
from batchleaf.records.terms import read_terms
from batchleaf.records.uses import read_uses
from batchleaf.records.works import read_works
from batchleaf.records.written import DesignWritten


@dataclass(frozen=True, slots=True)
class DesignFile:
    """One design as written, with its nodes for places."""

    slug: str
    node: Node
    written: DesignWritten


@dataclass(frozen=True, slots=True)
class ReadDesign:
    """A design as meant, and its lines for the batches that use it."""

    fact: Design
    lines: MadeOf


class KnownDesigns:
    """Designs by slug. Naming a faulty one is no second problem."""

    def __init__(self, designs: Mapping[str, ReadDesign], lost: Set[str]) -> None:
        self._designs, self._lost = designs, lost

    def all(self) -> tuple[Design, ...]:
        """Every design by slug."""
        return tuple(self._designs[slug].fact for slug in sorted(self._designs))

    def find(self, slug: str, place: Place, report: Report) -> ReadDesign | None:
        """The design called ``slug``, or ``None`` and (unless its record is faulty) a problem."""
        design = self._designs.get(slug)
        if design is None and slug not in self._lost:
            hint = did_you_mean(slug, (*self._designs, *self._lost))
            report.error(place, f"there is no “{slug}” in projects/designs{hint}")
        return design


NO_DESIGNS: Final = KnownDesigns({}, frozenset())


def design_of(
    one: DesignFile, known: KnownSupplies, tools: KnownTools, settings: Settings, report: Report
) -> ReadDesign | None:
    """The design as meant, or ``None`` with problems."""
    written, before = one.written, report.mark()
    unit = Unit(written.unit) if written.unit else settings.unit
    lines = made_of(one.node, written, unit)
    roles = dict.fromkeys(written.roles, NOTHING)
    papers = Papers(known, report, roles, may_want=True)
    parts = read_parts(lines, lambda _: papers, tools, report)
    check_lines(lines, known, tools, report)
    read_works(lines.bench, parts, known, tools, report)
    stuck_parts(lines, parts, known, None, report)
    if lines.collate:
        check_collate(lines.collate, parts, report)
    credit = report.read(lines.credit.place, read_credit, lines.credit.text) if lines.credit else None
    sale = place_of(one.node, ("sale",))
    terms = report.read(sale, read_terms, written.sale) if written.sale else None
    if report.errors_since(before):
        return None
    fact = Design(
        slug=one.slug,
        title=written.title,
        roles=_roles(written.roles, papers.asked),
        about=written.about or "",
        credit=credit,
        terms=terms or NO_TERMS,
        place=Place(one.node.place.file, 1, 1),
    )
    return ReadDesign(fact, replace(lines, parts=parts.lines))


def check_lines(lines: MadeOf, known: KnownSupplies, tools: KnownTools, report: Report) -> None:
    """Report what is wrong with the lines that only a batch gives a meaning."""
    if lines.thing:
        report.read(lines.thing.place, read_thing, lines.thing.text)
    list(read_uses(lines.supplies, 1, known, report))
    list(read_packing(lines.packing, 1, known, report))
    tell_packed_twice(lines.packing, lines.supplies, report)
    for line in lines.tools:
        tools.find(line.text, line.place, report)
    for line in lines.steps:
        report.read(line.place, read_step, line.text)


def _roles(written: Mapping[str, str], asked: Iterable[str]) -> tuple[tuple[str, str], ...]:
    """Every role with what is said of it: those that are written, then those that parts name."""
    others = (name for name in asked if role_like(name, written) is None)
    return (*written.items(), *((name, "") for name in others))
