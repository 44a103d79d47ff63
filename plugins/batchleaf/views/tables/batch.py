"""The tables of a batch's page: its parts, its cuts, what it took and cost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import Cost
from batchleaf.core.costing import BatchCost
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.movements import Draw
from batchleaf.core.reserved import needed_sheets
from batchleaf.core.used import Taken
from batchleaf.facts import Origin, Part, Supply
from batchleaf.measure.money import Currency
from batchleaf.measure.rects import Rect
from batchleaf.views import site_map
from batchleaf.views.cost import dearest_first
from batchleaf.views.plan import alike_plans
from batchleaf.views.sentence import Supplies
from batchleaf.views.tables.table import Column, Money, Table, how_far_known, money_known, tabled

_FROM: Final = {Axis.X: "left", Axis.Y: "top"}


def parts_table(batch: BatchFigures, figures: Figures) -> Table:
    """A row for each part; ``cut width`` and ``cut height``: larger where it is trimmed later."""
    supplies, project = _supplies(figures), batch.project
    columns: list[Column[Part]] = [
        ("letter", lambda part: part.letter),
        ("part", lambda part: part.name),
        ("width in mm", lambda part: part.size.width),
        ("height in mm", lambda part: part.size.height),
        ("cut width in mm", lambda part: part.cut_size.width),
        ("cut height in mm", lambda part: part.cut_size.height),
        ("in one", lambda part: part.each),
        ("extra", lambda part: part.extra),
        ("cut" if batch.taken else "to cut", lambda part: _cut(part, project.begun)),
        ("made how", lambda part: part.origin.value),
        ("papers", lambda part: ", ".join(supplies[slug].name for slug in part.papers)),
    ]
    return tabled(_beside(batch, "parts"), "Parts", columns, project.parts)


def _cut(part: Part, begun: int) -> int | None:
    return None if part.origin is Origin.READY else part.each * begun + part.extra


def _supplies(figures: Figures) -> dict[str, Supply]:
    return {supply.slug: supply for supply in figures.archive.supplies}


def _beside(batch: BatchFigures, name: str) -> str:
    return f"{site_map.batch(batch.project.slug)}{name}.csv"


# --- cuts ------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Cut:
    """One cut of one sheet plan; ``gives``: the parts that it sets free."""

    plan: int
    papers: str
    sheets: int
    step: CutStep
    gives: str


def cuts_table(batch: BatchFigures, figures: Figures) -> Table:
    """A row for each cut of each plan, in the order of cutting."""
    columns: list[Column[_Cut]] = [
        ("plan", lambda cut: cut.plan),
        ("papers", lambda cut: cut.papers),
        ("sheets", lambda cut: cut.sheets),
        ("cut", lambda cut: cut.step.n),
        ("setting in mm", lambda cut: cut.step.setting),
        ("measured from", lambda cut: _FROM[cut.step.axis]),
        ("width in hand in mm", lambda cut: cut.step.piece.width),
        ("height in hand in mm", lambda cut: cut.step.piece.height),
        ("gives", lambda cut: cut.gives),
    ]
    return tabled(_beside(batch, "cuts"), "Cuts", columns, _cuts(batch, _supplies(figures)))


def _cuts(batch: BatchFigures, supplies: Supplies) -> Iterator[_Cut]:
    cutting = batch.cutting
    if cutting is None:
        return
    for number, group in enumerate(alike_plans(cutting, supplies), 1):
        laid = lay_out(group.plans[0], cutting.job)
        parts = {placed.rect: placed.part for placed in laid.parts}
        papers = dict.fromkeys(supplies[cutting.sheets[plan.stock].supply].name for plan in group.plans)
        for step in laid.cuts:
            yield _Cut(number, ", ".join(papers), group.sheets, step, _gives(step, parts))


def _gives(step: CutStep, parts: Mapping[Rect, str]) -> str:
    """``2 B``, or ``1 B, 1 C``."""
    free = Counter(parts[rect] for rect in (step.first, step.second) if rect in parts)
    return ", ".join(f"{count} {letter}" for letter, count in free.items())


# --- supplies --------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Took:
    """What a batch took of one supply, or will take: whole units, odd pieces, and what that cost.

    ``cost`` and ``one`` are ``None`` where nothing was measured, or nothing is told.
    """

    supply: Supply
    whole: Fraction | None
    scraps: int
    cost: Cost | None = None
    one: int | None = None


def supplies_table(batch: BatchFigures, figures: Figures) -> Table:
    """A row for each supply; with its cost, where that is told. What was not measured has no amount."""
    supplies, cost = _supplies(figures), batch.cost if batch.taken else None
    columns: list[Column[_Took]] = [
        ("supply", lambda took: took.supply.slug),
        ("name", lambda took: took.supply.name),
        ("used" if batch.taken else "needed", lambda took: took.whole),
        ("unit", lambda took: took.supply.unit),
        ("scraps", lambda took: took.scraps),
    ]
    if cost:
        columns += _of_cost(batch, figures.settings.currency)
    return tabled(_beside(batch, "supplies"), "Supplies", columns, _took(batch, cost, supplies))


def _of_cost(batch: BatchFigures, currency: Currency) -> Iterator[Column[_Took]]:
    code = currency.code
    yield f"cost in {code}", lambda took: money_known(took.cost, currency) if took.cost else None
    if batch.project.finished:
        yield f"one in {code}", lambda took: _one(took, currency)
    yield "price known", lambda took: how_far_known(took.cost) if took.cost else "not measured"


def _one(took: _Took, currency: Currency) -> Money | None:
    """Its share; of what has no known price there is none."""
    known = took.cost is not None and money_known(took.cost, currency) is not None
    return Money(took.one, currency) if known and took.one is not None else None


def _took(batch: BatchFigures, cost: BatchCost | None, supplies: Supplies) -> Iterator[_Took]:
    """In the order in which the page has them."""
    if cost:
        for line in dearest_first(cost):
            took = _amount(supplies[line.supply], line.draws)
            yield replace(took, cost=line.cost, one=line.one) if line.measured else took
    elif batch.taken:
        for used in batch.used:
            yield _amount(supplies[used.supply], used.taken)
    else:
        yield from _needed(batch, supplies)


def _amount(supply: Supply, drawn: Sequence[Draw | Taken]) -> _Took:
    whole = [one.quantity for one in drawn if one.quantity is not None and one.piece is None]
    scraps = sum(int(one.quantity) for one in drawn if one.quantity is not None and one.piece is not None)
    return _Took(supply, sum(whole, Fraction(0)) if whole else None, scraps)


def _needed(batch: BatchFigures, supplies: Supplies) -> Iterator[_Took]:
    for cut in needed_sheets(batch):
        scraps = cut.count if cut.scrap else 0
        yield _Took(supplies[cut.supply], None if cut.scrap else Fraction(cut.count), scraps)
    for use in batch.project.uses:
        whole = use.quantity if use.per_make is None else use.per_make * batch.project.begun
        yield _Took(supplies[use.supply], whole, 0)
