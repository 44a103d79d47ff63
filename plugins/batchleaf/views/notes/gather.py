"""What to gather before the first cut: sheets, things bought ready, and what is used up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from batchleaf.core.figures import BatchFigures
from batchleaf.core.reserved import needed_sheets
from batchleaf.facts import Cut, Origin, Project, Purpose, Supply, Use
from batchleaf.measure.amounts import is_measured
from batchleaf.measure.display import show_number, show_sheet_size, show_size
from batchleaf.views.disclosure import told_by_name
from batchleaf.views.links import together
from batchleaf.views.pages import GatherRow
from batchleaf.views.words import NBSP, capitalised, counted, listed

Supplies = Mapping[str, Supply]
_FOR: Final = {Purpose.STICKING: ", to stick with", Purpose.PACKING: ", to pack with"}


def gather_rows(batch: BatchFigures, supplies: Supplies) -> tuple[GatherRow, ...]:
    """For all makes that the record begins; equal sheets of several papers stand in one row."""
    return (*_sheets(batch, supplies), *_used(batch.project, supplies))


def _sheets(batch: BatchFigures, supplies: Supplies) -> Iterator[GatherRow]:
    unit = batch.project.unit
    alike: dict[tuple[str, str], list[Supply]] = {}
    for cut in _as_planned(batch):
        supply = supplies[cut.supply]
        noun = ("scrap", "scraps") if cut.scrap else (supply.unit, supply.units)
        size = show_size(cut.scrap, unit) if cut.scrap else show_sheet_size(supply.sheet, unit)
        alike.setdefault((counted(cut.count, *noun), size), []).append(supply)
    for (quantity, size), papers in alike.items():
        names = listed([told_by_name(paper) for paper in together(papers)])
        each = " each" if len(papers) > 1 else ""
        yield GatherRow(f"{quantity}{each}", f"of {names}, {size}{NBSP}{unit.word}")


def _as_planned(batch: BatchFigures) -> Sequence[Cut]:
    """As many sheets as the plans take, which may be fewer than the record took."""
    cutting = batch.cutting
    if cutting is None or not cutting.plans:
        return needed_sheets(batch)
    times = dict.fromkeys(cutting.sheets, 0)
    for plan in cutting.plans:
        times[plan.stock] += plan.times
    return [replace(cutting.sheets[id_], count=count) for id_, count in times.items() if count]


def _used(project: Project, supplies: Supplies) -> Iterator[GatherRow]:
    """Each supply once for each purpose; of those that readers are not to know, what is a part itself."""
    ready = {slug for part in project.parts if part.origin is Origin.READY for slug in part.papers}
    amounts: dict[tuple[str, Purpose], Fraction | None] = {}
    for use in project.uses:
        key, amount = (use.supply, use.purpose), _amount(use, project)
        before = amounts.get(key)
        amounts[key] = before + amount if before is not None and amount is not None else amount or before
    for (slug, purpose), amount in amounts.items():
        supply = supplies[slug]
        if not supply.named and slug not in ready:
            continue
        quantity, name = _quantity(amount, supply)
        yield GatherRow(quantity, f"{name}{_FOR.get(purpose, '')}")


def _amount(use: Use, project: Project) -> Fraction | None:
    return use.quantity if use.per_make is None else use.per_make * project.begun


def _quantity(amount: Fraction | None, supply: Supply) -> tuple[str, str]:
    """``3.36 m`` of jute cord, ``56 ×`` foam square; of what nobody measures the name alone."""
    if not amount:
        return "", capitalised(told_by_name(supply))
    number = show_number(amount, 2)
    if is_measured(supply.unit) or supply.unit != "piece":
        return f"{number}{NBSP}{supply.name_of_unit(amount)}", f"of {told_by_name(supply)}"
    # A name that ends in a size has no plural that one could make.
    return f"{number}{NBSP}×", told_by_name(supply)
