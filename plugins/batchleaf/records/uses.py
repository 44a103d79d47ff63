"""What a batch uses besides sheets: the lines under ``supplies``, and parts that are bought ready.

What sticks parts is in ``sticking``, what makes are packed with in ``packing``.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.facts import Origin, Part, Place, Supply, Use
from batchleaf.measure.amounts import parse_amount, unit_in
from batchleaf.measure.money import share
from batchleaf.records.grammar import NamedAmount, read_use
from batchleaf.records.known import KnownSupplies
from batchleaf.records.made_of import Line
from batchleaf.records.report import Report

COUNTED_BY_ONE: Final = ("piece", "sheet")
"""What is counted so is hardly used without a number, as ink is from its pad."""


def read_uses(lines: Sequence[Line], makes: int, known: KnownSupplies, report: Report) -> Iterator[Use]:
    """What each line takes for ``makes``."""
    for line in lines:
        use = _read_use(line, makes, known, report)
        if use is not None:
            yield use


def _read_use(line: Line, makes: int, known: KnownSupplies, report: Report) -> Use | None:
    named = report.read(line.place, read_use, line.text)
    supply = supply_of(line, named, known, report) if named else None
    if named is None or supply is None:
        return None
    if not named.amount:
        _tell_uncounted(supply, line.place, report)
        return Use(supply.slug, None, None, line.place)
    amount = report.read(line.place, parse_amount, named.amount, supply.unit, supply.units)
    if amount is None:
        return None
    if named.in_all:
        return Use(supply.slug, amount, None, line.place)
    return Use(supply.slug, amount * makes, amount, line.place)


def supply_of(line: Line, named: NamedAmount, known: KnownSupplies, report: Report) -> Supply | None:
    """The supply that a line names, taken as new where nothing is like it; or ``None`` and a problem."""
    if named.supply[0].isdigit():
        report.error(line.place, f"“{line.text}” begins with a number; name the supply first")
        return None
    if known.get(named.supply) is None and (sentence := known.spelt_out(line.text)):
        report.error(line.place, sentence)
        return None
    unit = unit_in(named.amount) or "piece"
    return known.find_or_suppose(named.supply, unit, line.place, report)


def _tell_uncounted(supply: Supply, place: Place, report: Report) -> None:
    if supply.unit in COUNTED_BY_ONE and not supply.supposed:
        report.notice(
            place,
            f"“{supply.slug}” is counted in {supply.units}, and without a number none leaves the drawer;"
            f" write {supply.slug} 1 for one each",
        )


def ready_uses(parts: Sequence[Part], makes: int) -> Iterator[Use]:
    """What is taken ready-made for ``makes``: evenly from each supply where there are several."""
    for part in parts:
        if part.origin is not Origin.READY or not part.papers:
            continue
        wanted = share(part.each * makes + part.extra, [Fraction(1)] * len(part.papers))
        alone = len(part.papers) == 1 and not part.extra
        per_make = Fraction(part.each) if alone else None
        for supply, count in zip(part.papers, wanted, strict=True):
            yield Use(supply, Fraction(count), per_make, part.place)


def tell_twice(parts: Sequence[Part], lines: Sequence[Use], report: Report) -> None:
    """Tell where a line takes what a ready-made part takes already: written twice, or meant besides."""
    ready = {supply: part for part in parts if part.origin is Origin.READY for supply in part.papers}
    for use in lines:
        part = ready.get(use.supply)
        if part is not None:
            report.notice(
                use.place,
                f"“{use.supply}” is taken for part {part.letter} already, and this line takes more of it;"
                " leave it out if that is not meant",
            )
