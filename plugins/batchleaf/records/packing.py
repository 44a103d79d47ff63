"""What finished makes are packed with: ``envelope-a2``, ``clear-bag per 5``, ``paper-band 220 mm``."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Purpose, Supply, Use
from batchleaf.measure.amounts import is_measured, parse_amount
from batchleaf.measure.errors import MeasureError
from batchleaf.records.grammar import NamedAmount, read_count, read_use
from batchleaf.records.known import KnownSupplies
from batchleaf.records.made_of import Line, supply_in
from batchleaf.records.report import Report
from batchleaf.records.uses import supply_of

_PER: Final = re.compile(r"(?P<line>\S.*?)\s+per(?:\s+(?P<makes>.*))?")


@dataclass(frozen=True, slots=True)
class PackingLine:
    """``label 2 per 5``: a supply, the text of its amount, and how many makes have that together."""

    named: NamedAmount
    makes: int


def read_packing_line(text: str) -> PackingLine:
    """A line of packing, with its supply still by name. Raises :class:`MeasureError`."""
    found = _PER.fullmatch(text.strip())
    if found is None:
        return PackingLine(read_use(text), 1)
    named = read_use(found["line"])
    if named.in_all or not re.fullmatch(r"[1-9][0-9]*", found["makes"] or ""):
        raise MeasureError(
            f"“{text}” does not say how many makes are packed together;"
            f" write for example {named.supply} per 5"
        )
    return PackingLine(named, read_count(found["makes"]))


def read_packing(lines: Sequence[Line], makes: int, known: KnownSupplies, report: Report) -> Iterator[Use]:
    """What ``makes`` are packed with: nothing where there are none.

    Where several are packed together, the last ones take as much as any.
    """
    for line in lines:
        use = _read(line, makes, known, report)
        if use is not None and makes:
            yield use


def _read(line: Line, makes: int, known: KnownSupplies, report: Report) -> Use | None:
    packed = report.read(line.place, read_packing_line, line.text)
    supply = supply_of(line, packed.named, known, report) if packed else None
    if packed is None or supply is None:
        return None
    amount = report.read(line.place, _amount, packed.named.amount, supply)
    if amount is None:
        return None
    if packed.named.in_all:
        return Use(supply.slug, amount, None, line.place, Purpose.PACKING)
    sets = -(-makes // packed.makes)
    per_make = amount if packed.makes == 1 else None
    return Use(supply.slug, amount * sets, per_make, line.place, Purpose.PACKING)


def _amount(text: str, supply: Supply) -> Fraction:
    if text:
        return parse_amount(text, supply.unit, supply.units)
    if is_measured(supply.unit):
        raise MeasureError(
            f"“{supply.slug}” is kept in {supply.units}; write how much, like {supply.slug} 1 {supply.unit}"
        )
    return Fraction(1)


def tell_packed_twice(packing: Sequence[Line], supplies: Sequence[Line], report: Report) -> None:
    """Tell where a supply is named under ``supplies`` and under ``packing``, unless a design says both."""
    listed = {supply_in(line): line for line in supplies}
    for line in packing:
        other = listed.get(supply_in(line))
        if other is not None and (line.own or other.own):
            report.notice(
                line.place,
                f"“{supply_in(line)}” stands under supplies as well, and both lines take of it;"
                " leave one of them out if that is not meant",
            )
