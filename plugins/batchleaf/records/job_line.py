"""A job for the cutting planner in one line: ``24 of 3 3/4 x 5, 48 of 2 x 2 from 12 x 12``."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd
from string import ascii_uppercase
from typing import Final

from batchleaf.facts.jobs import AskedJob, CostQuestion, Job, MakesQuestion, PartKind, Stock
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Unit, parse_lengths, parse_size, unit_named, with_wholes

EXAMPLES: Final = ("3 3/4 x 5 from 12 x 12", "24 of 3 3/4 x 5, 48 of 2 x 2 from 12 x 12")
INCHES_UP_TO: Final = 36
"""Measures that are all below this are taken for inches where no unit stands: no sheet is so many mm."""
_COUNTED: Final = re.compile(r"(?:(?P<count>[0-9]{1,5}) (?:(?:sheets?|scraps?) )?of )?(?P<size>.+)")


@dataclass(frozen=True, slots=True)
class _Counted:
    count: int | None
    size: str


def read_job_line(text: str) -> AskedJob:
    """The question that one line asks. Raises :class:`MeasureError`.

    Parts with a count ask for the least cost of sheets; without, for the most full sets that
    the sheets give, where a sheet without a count is one.
    """
    wanted, word, sheets = text.strip().partition(" from ")
    if not word or " from " in sheets:
        raise MeasureError(f"“{text}” does not say what to cut from what; write for example {EXAMPLES[0]}")
    parts, stocks = _counted(wanted), _counted(sheets)
    unit = _unit_of([one.size for one in (*parts, *stocks)])
    if len(parts) > len(ascii_uppercase):
        raise MeasureError(f"these are {len(parts)} kinds of parts; write more than 26 in a file")
    counts = {one.count is None for one in parts}
    if len(counts) > 1:
        raise MeasureError(
            "some of these parts have a count and some have none; write it for all or for none"
        )
    # As many makes as the counts have in common, so that too few sheets can be told of in makes.
    makes = gcd(*(part.count or 1 for part in parts))
    kinds = tuple(
        PartKind(letter, parse_size(part.size, unit), (part.count or 1) // makes)
        for letter, part in zip(ascii_uppercase, parts, strict=False)
    )
    if True in counts:
        stocked = tuple(_stock(at, one, unit, 1) for at, one in enumerate(stocks, 1))
        return AskedJob(MakesQuestion(Job(stocked, kinds)), unit)
    endless = tuple(_stock(at, one, unit, None) for at, one in enumerate(stocks, 1))
    return AskedJob(CostQuestion(Job(endless, kinds), makes), unit)


def _counted(text: str) -> list[_Counted]:
    found = []
    for piece in text.split(","):
        counted = _COUNTED.fullmatch(" ".join(with_wholes(piece).split()))
        if counted is None:
            raise MeasureError(f"a size is missing in “{text.strip()}”; write for example {EXAMPLES[1]}")
        count = int(counted["count"]) if counted["count"] else None
        if count == 0:
            raise MeasureError(f"“{piece.strip()}” asks for none; write 1 or more")
        found.append(_Counted(count, counted["size"]))
    return found


def _stock(at: int, one: _Counted, unit: Unit, uncounted: int | None) -> Stock:
    size = parse_size(one.size, unit)
    return Stock(f"sheet {at}", size, uncounted if one.count is None else one.count, Fraction(1))


def _unit_of(sizes: Sequence[str]) -> Unit:
    """The unit that stands last, for all that name none; else inches where all is small."""
    named = [unit for size in sizes if (unit := unit_named(size))]
    if named:
        return named[-1]
    longest = max(length for size in sizes for length in parse_lengths(size, Unit.INCH))
    return Unit.INCH if longest < INCHES_UP_TO * Unit.INCH.in_mm else Unit.MM
