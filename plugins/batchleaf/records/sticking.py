"""What parts are stuck with: what each says, else its batch or its design, else the drawer."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.facts import Origin, Part, Place, Purpose, Stuck, Supply, Use
from batchleaf.measure.amounts import parse_amount
from batchleaf.records.inventory import InventoryFile
from batchleaf.records.known import KnownSupplies
from batchleaf.records.made_of import Line, MadeOf, PartLine, supply_in
from batchleaf.records.parts import PartsRead
from batchleaf.records.report import Report
from batchleaf.records.sticks import example_for

NOTHING: Final = "nothing"
"""What stands where a part is not stuck at all."""
_MEANT_FOR_NOTHING: Final = ("no", "none", "not")


def adhesive_of(files: Iterable[InventoryFile], known: KnownSupplies, report: Report) -> Supply | None:
    """What parts are stuck with that do not say otherwise, as one file of the drawer says it."""
    found, first = None, None
    for one in files:
        if one.written.stick is None:
            continue
        place = one.place("stick")
        if first is None:
            first, found = place, _usual(one.written.stick, place, known, report)
            continue
        report.error(
            place,
            f"stick is said once for the whole drawer, and stands in {first.file}, line {first.line},"
            " already; leave this one out",
        )
    return found


def _usual(text: str, place: Place, known: KnownSupplies, report: Report) -> Supply | None:
    if text.casefold() in (NOTHING, *_MEANT_FOR_NOTHING):
        report.error(place, "parts are not stuck where nobody says with what; leave stick out")
        return None
    supply = _alone(text, place, known, report)
    if supply is not None and supply.sticks is None:
        report.error(
            place,
            f"“{supply.slug}” does not say how much of it sticks a part; write sticks for it,"
            f" like “{example_for(supply.unit)}”",
        )
        return None
    return supply


def _named(text: str, place: Place, known: KnownSupplies, report: Report) -> Supply | None:
    """The supply that a text begins with, or ``None`` and a problem."""
    slug = text.partition(" ")[0]
    if known.get(slug) is None and (sentence := known.spelt_out(text)):
        report.error(place, sentence)
        return None
    if known.get(slug) is None and slug.casefold() in _MEANT_FOR_NOTHING:
        report.error(place, f"“{slug}” is not in the drawer; write {NOTHING} for what is not stuck")
        return None
    return known.find(slug, place, report)


def _alone(text: str, place: Place, known: KnownSupplies, report: Report) -> Supply | None:
    """The supply that a text names without an amount, or ``None`` and a problem."""
    supply = _named(text, place, known, report)
    amount = text.partition(" ")[2].strip()
    if supply is not None and amount:
        report.error(
            place,
            f"“{text}” says how much one part takes, which stands at the part; write {supply.slug} alone",
        )
        return None
    return supply


def stuck_parts(
    makeup: MadeOf, parts: PartsRead, known: KnownSupplies, usual: Supply | None, report: Report
) -> tuple[Part, ...]:
    """The parts with what each is stuck with; the base and the lid of a box never are.

    ``usual``: what the drawer says parts are stuck with.
    """
    reader = _Sticking(makeup, known, usual, report)
    read = {part.letter: part for part in parts.parts}
    stuck = {line.letter: reader.of(line, read.get(line.letter)) for line in parts.lines}
    return tuple(replace(part, stuck=stuck.get(part.letter)) for part in parts.parts)


class _Sticking:
    """Knows which adhesives ``supplies`` has a line of: that stands, measured or not, for all parts."""

    def __init__(self, makeup: MadeOf, known: KnownSupplies, usual: Supply | None, report: Report) -> None:
        self._known, self._report = known, report
        self._listed = supplies_in(makeup.supplies)
        self._usual = self._of_the_batch(makeup.stick) if makeup.stick else usual

    def _of_the_batch(self, line: Line) -> Supply | None:
        if line.text == NOTHING:
            return None
        return self._enough_said(_alone(line.text, line.place, self._known, self._report), line.place)

    def of(self, line: PartLine, part: Part | None) -> Stuck | None:
        """What the part of a line is stuck with; ``part`` is ``None`` where it could not be read."""
        if line.written.stick:
            before = self._report.mark()
            stuck = self._own(line.written.stick, line, part)
            if not line.own:
                self._report.reword(before, lambda told: f"in part {line.letter} of the design: {told}")
            return stuck
        lies_on_another = part is not None and part.below and part.origin is not Origin.READY
        return self._by_size(self._usual, part) if lies_on_another else None

    def _own(self, text: str, line: PartLine, part: Part | None) -> Stuck | None:
        """``foam-square``, ``foam-square 6``, ``bench-glue 2 ml`` or ``nothing``."""
        place, report = line.at("stick"), self._report
        supply = None if text == NOTHING else _named(text, place, self._known, report)
        rest = text.partition(" ")[2].strip()
        if supply is None or not rest:
            return self._by_size(self._enough_said(supply, place), part)
        amount = report.read(place, parse_amount, rest, supply.unit, supply.units)
        if amount == 0:
            report.error(place, f"“{text}” is nothing; write {NOTHING} alone")
        if supply.slug in self._listed and line.own:
            report.notice(
                place,
                f"supplies has a line of “{supply.slug}”, which stands for all parts,"
                f" so “{rest}” is not counted besides; leave one of them out",
            )
        return Stuck(supply.slug, amount) if amount else None

    def _enough_said(self, supply: Supply | None, place: Place) -> Supply | None:
        """A supply of which somebody says how much it takes, or ``None`` and a problem."""
        if supply is None or supply.sticks or supply.slug in self._listed:
            return supply
        self._report.error(
            place,
            f"“{supply.slug}” does not say in the drawer how much of it sticks a part; write sticks there,"
            f" like “{example_for(supply.unit)}”, or a line of {supply.slug} under supplies",
        )
        return None

    def _by_size(self, supply: Supply | None, part: Part | None) -> Stuck | None:
        if supply is None or part is None:
            return None
        counts = supply.sticks if supply.slug not in self._listed else None
        return Stuck(supply.slug, counts.for_one(part.size) if counts else None)


def supplies_in(lines: Iterable[Line]) -> frozenset[str]:
    """The supplies that lines name, each by its first word."""
    return frozenset(supply_in(line) for line in lines)


def sticking_uses(parts: Sequence[Part], listed: Collection[str], makes: int) -> Iterator[Use]:
    """What sticks the parts of ``makes``, one use for each adhesive; none for those that are ``listed``.

    Extras lie loose, and so take none.
    """
    stuck = [(part, part.stuck) for part in parts if part.stuck and part.stuck.supply not in listed]
    for supply in dict.fromkeys(one.supply for _, one in stuck):
        mine = [(part, one.amount or Fraction(0)) for part, one in stuck if one.supply == supply]
        per_make = sum((part.each * amount for part, amount in mine), Fraction(0))
        yield Use(supply, per_make * makes, per_make, mine[0][0].place, Purpose.STICKING)


def for_sticking(uses: Iterable[Use], parts: Sequence[Part]) -> Iterator[Use]:
    """The uses that ``supplies`` lists; those of what parts are stuck with are for sticking."""
    adhesives = {part.stuck.supply for part in parts if part.stuck}
    for use in uses:
        yield replace(use, purpose=Purpose.STICKING) if use.supply in adhesives else use
