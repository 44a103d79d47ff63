"""What the batch took and cost: the strip, the list of supplies and the sums."""

from __future__ import annotations

import string
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import Cost
from batchleaf.core.cost_kinds import CostKind
from batchleaf.core.costing import BatchCost, CostLine
from batchleaf.core.figures import BatchFigures
from batchleaf.core.movements import Draw
from batchleaf.core.reserved import needed_sheets
from batchleaf.core.todays_prices import TodaysCost
from batchleaf.core.used import Taken
from batchleaf.facts import Basis, Cut, Project, Purpose, Settings, Supply
from batchleaf.measure.display import show_size
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.disclosure import tie_of
from batchleaf.views.drawing.cost_strip import draw_cost_strip, rule_for
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.links import supply_link
from batchleaf.views.lots import lots_in_words
from batchleaf.views.pages import CostView, KindShare, SupplyRow
from batchleaf.views.prices import asked_note
from batchleaf.views.sentence import Supplies, made_or_planned
from batchleaf.views.unpriced import is_whole, missing
from batchleaf.views.words import amount, capitalised, counted, listed, money

PACKING: Final = "packing"
"""What the list says beside what makes are packed with."""


def cost_view(batch: BatchFigures, supplies: Supplies, settings: Settings) -> CostView:
    """The supply list of a batch: what each added to the cost, what was used, or what it will take."""
    if not batch.taken:
        return _needs_view(batch, supplies)
    return _account(batch, batch.cost, supplies, settings) if batch.cost else _used_view(batch, supplies)


def _account(batch: BatchFigures, cost: BatchCost, supplies: Supplies, settings: Settings) -> CostView:
    """By kind as a strip; then dearest first, each supply with its share."""
    project, currency = batch.project, settings.currency
    lines = dearest_first(cost)
    shown = cost.counted and cost.one is not None
    kinds = tuple(_kinds(batch, currency)) if shown and cost.one else ()
    strip = _strip(kinds, batch, currency) if kinds else None
    return CostView(
        strip=strip,
        strip_caption=_caption(cost.one or 0, currency) if strip else "",
        currency=currency.sign,
        rows=tuple(_row(line, batch, supplies, settings) for line in lines),
        total_label=capitalised(made_or_planned(project)),
        total_batch=money(Cost(cost.batch.known, is_whole(batch)), currency) if cost.counted else "",
        total_one=money(Cost(cost.one, is_whole(batch)), currency) if shown and cost.one is not None else "",
        notes=(*_notes(batch, cost, supplies, currency), *_asked(batch, currency)),
        kinds=kinds,
    )


def dearest_first(cost: BatchCost) -> list[CostLine]:
    """The lines of an account in the order in which it is read."""
    return sorted(cost.lines, key=lambda line: (-line.one, -line.cost.known))


def _used_view(batch: BatchFigures, supplies: Supplies) -> CostView:
    """What was used, where nothing is told of what it cost."""
    rows = [
        (
            used.supply,
            listed([_amount(taken, supplies[used.supply], batch.project) for taken in used.taken]),
            _packing(used.supply, batch.project),
        )
        for used in batch.used
    ]
    return _without_cost(rows, batch.project, supplies, used_label="Used")


def _needs_view(batch: BatchFigures, supplies: Supplies) -> CostView:
    """What a batch that is only planned will take from the drawer."""
    project = batch.project
    cuts = needed_sheets(batch)
    needed = [(cut.supply, _cut_in_words(cut, supplies[cut.supply], project), "") for cut in cuts]
    for use in project.uses:
        whole = use.quantity if use.per_make is None else use.per_make * project.begun
        used = "not measured" if whole is None else amount(whole, supplies[use.supply])
        needed.append((use.supply, used, PACKING if use.purpose is Purpose.PACKING else ""))
    return _without_cost(needed, project, supplies, used_label="Needed")


def _without_cost(
    amounts: Sequence[tuple[str, str, str]], project: Project, supplies: Supplies, used_label: str
) -> CostView:
    """``amounts``: supply, how much of it, and a note."""
    here = site_map.batch(project.slug)
    rows = tuple(
        SupplyRow(supply_link(supplies[slug], here), _noted(note, tie_of(supplies[slug])), used, "", "")
        for slug, used, note in amounts
    )
    return CostView(None, "", "", rows, "", "", "", (), used_label)


def _noted(*notes: str) -> str:
    return ", ".join(filter(None, notes))


def _packing(supply: str, project: Project) -> str:
    """What the list says of a supply that makes are packed with: all of it, or some."""
    purposes = {use.purpose for use in project.uses if use.supply == supply}
    if Purpose.PACKING not in purposes:
        return ""
    is_all = len(purposes) == 1 and all(cut.supply != supply for cut in project.cut)
    return PACKING if is_all else f"some of it {PACKING}"


def _cut_in_words(cut: Cut, supply: Supply, project: Project) -> str:
    if cut.scrap is not None:
        return f"{counted(cut.count, 'scrap', 'scraps')} {show_size(cut.scrap, project.unit)}"
    return amount(Fraction(cut.count), supply)


def _kinds(batch: BatchFigures, currency: Currency) -> Iterator[KindShare]:
    """What one make is made of, in the order of making; the letters go on in that order."""
    paid = [kind for kind in batch.kinds if kind.one]
    for letter, kind in zip(string.ascii_lowercase, paid, strict=False):
        yield KindShare(letter, kind.kind.value, currency.show(kind.one))


def _strip(kinds: Sequence[KindShare], batch: BatchFigures, currency: Currency) -> Drawing:
    ones = [kind.one for kind in batch.kinds if kind.one]
    said = [f"{kind.letter}, {kind.kind}, {kind.one}" for kind in kinds]
    total = currency.show_with_sign(sum(ones))
    return draw_cost_strip(
        tuple((kind.letter, one) for kind, one in zip(kinds, ones, strict=True)),
        id="cost-strip",
        title=f"The cost of one {batch.project.thing}, {total}, as a strip",
        description=f"{'; '.join(said)}.",
        digits=currency.digits,
        lost=[kind.letter for kind in kinds if kind.kind in (CostKind.WASTE, CostKind.SPOILAGE)],
    )


def _caption(one: int, currency: Currency) -> str:
    unit = "the smallest coin" if rule_for(one, currency.digits).in_minor else currency.sign
    return f"The rule is in {unit}."


def _row(line: CostLine, batch: BatchFigures, supplies: Supplies, settings: Settings) -> SupplyRow:
    supply, project, currency = supplies[line.supply], batch.project, settings.currency
    one = Cost(line.one, line.cost.complete)
    kept = any(draw.kept.known or not draw.kept.complete for draw in line.draws)
    return SupplyRow(
        supply=supply_link(supply, site_map.batch(project.slug)),
        note=_noted(_packing(line.supply, project), "less what was kept" if kept else "", tie_of(supply)),
        used=listed([_amount(draw, supply, project) for draw in line.draws]),
        batch=money(line.cost, currency) if line.measured else "",
        one=money(one, currency) if line.measured and project.finished else "",
        lots=lots_in_words(line.draws, supply, settings),
    )


def _amount(draw: Draw | Taken, supply: Supply, project: Project) -> str:
    if draw.quantity is None:
        return "not measured"
    if draw.piece is not None:
        size = show_size(draw.piece, project.unit)
        return f"{counted(int(draw.quantity), 'scrap', 'scraps')} {size}"
    return amount(draw.quantity, supply)


def _asked(batch: BatchFigures, currency: Currency) -> Iterator[str]:
    if note := asked_note(batch, currency):
        yield note


def _notes(batch: BatchFigures, cost: BatchCost, supplies: Supplies, currency: Currency) -> Iterator[str]:
    project = batch.project
    spoiled = project.begun - project.finished
    if spoiled and project.finished and batch.made:
        things = counted(spoiled, f"{project.thing} was", f"{project.things} were")
        yield f"{things} spoiled; the paper is shared out among the finished ones."
    if not is_whole(batch):
        yield f"Not in the sum, since the price is not known: {missing(batch, supplies)}."
    if Basis.GUESSED in cost.batch.rests_on:
        yield "What some of it cost is a guess."
    if Basis.GIFT in cost.batch.rests_on:
        yield "Some of it was a gift and cost nothing."
    if cost.not_counted:
        names = listed([supplies[slug].name for slug in cost.not_counted])
        yield f"Used without a measure, and not in the sum: {names}."
    if today := batch.today:
        yield _at_todays_prices(today, batch, supplies, currency)


def _at_todays_prices(today: TodaysCost, batch: BatchFigures, supplies: Supplies, currency: Currency) -> str:
    """``At the prices last paid, one would cost 0.61 €.``"""
    if not today.without and today.one == batch.one:
        return "At the prices last paid, one would cost the same."
    names = listed([supplies[slug].name for slug in today.without])
    least, without = ("at least ", f" (without {names})") if names else ("", "")
    return f"At the prices last paid, one would cost {least}{currency.show_with_sign(today.one)}{without}."
