"""A job made ready for the search: whole numbers, and groups that can be asked alone."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from batchleaf.core.cutting.choose import Terms
from batchleaf.core.cutting.components import Component, components
from batchleaf.core.cutting.integers import WholeJob, common_unit, in_whole_numbers
from batchleaf.facts.jobs import Job


@dataclass(frozen=True, slots=True)
class Question:
    """``stranded`` are parts that fit no sheet; ``cost_unit`` is one step of the groups' costs."""

    whole: WholeJob
    groups: tuple[Terms, ...]
    stranded: tuple[int, ...]
    cost_unit: Fraction


def asked(job: Job) -> Question:
    """``job`` as the search sees it; stocks of which there is none take no part."""
    whole = in_whole_numbers(job)
    sheets = tuple(
        replace(sheet, shapes=()) if stock.have == 0 else sheet
        for sheet, stock in zip(whole.sheets, job.stocks, strict=True)
    )
    unit = common_unit(stock.cost for stock in job.stocks)
    found = components(sheets, len(job.parts))
    return Question(
        replace(whole, sheets=sheets),
        tuple(_terms(job, group, unit) for group in found if group.stocks),
        tuple(part for group in found if not group.stocks for part in group.parts),
        unit,
    )


def _terms(job: Job, group: Component, unit: Fraction) -> Terms:
    return Terms(
        group.parts,
        {part: job.parts[part].each for part in group.parts},
        {stock: job.stocks[stock].have for stock in group.stocks},
        {stock: int(job.stocks[stock].cost / unit) for stock in group.stocks},
    )
