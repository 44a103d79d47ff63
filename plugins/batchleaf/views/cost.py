"""What the batch cost: the strip, the list of supplies and the sums."""

from __future__ import annotations

import string
from collections.abc import Iterator, Sequence

from batchleaf.core.costing import CostLine
from batchleaf.core.figures import BatchFigures
from batchleaf.core.ledger import Draw
from batchleaf.facts import Project, Supply
from batchleaf.measure.display import show_size
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.drawing.cost_strip import draw_cost_strip
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages import CostView, Link, SupplyRow
from batchleaf.views.sentence import Supplies, is_counted
from batchleaf.views.words import amount, capitalised, counted, listed, money


def cost_view(batch: BatchFigures, supplies: Supplies, currency: Currency) -> CostView:
    """The supply list of a batch, dearest first, each supply with its share."""
    project, cost = batch.project, batch.cost
    lines = sorted(cost.lines, key=lambda line: (-line.one, -line.cost.known))
    letters = dict(zip([line.supply for line in lines], string.ascii_lowercase * 4, strict=False))
    shown = is_counted(cost) and cost.one is not None
    strip = _strip(lines, letters, project, currency) if shown and cost.one else None
    return CostView(
        strip=strip,
        strip_caption="The rule is in the smallest coin; the letters are those of the list." if strip else "",
        currency=currency.sign,
        rows=tuple(_row(line, letters, project, supplies, currency) for line in lines),
        total_label=capitalised(counted(project.finished, project.thing, project.things)),
        total_batch=money(cost.batch, currency) if is_counted(cost) else "",
        total_one=currency.show(cost.one) if cost.one is not None and is_counted(cost) else "",
        notes=tuple(_notes(batch, supplies)),
    )


def _strip(
    lines: Sequence[CostLine], letters: dict[str, str], project: Project, currency: Currency
) -> Drawing:
    shares = tuple((letters[line.supply], line.one) for line in lines if line.one)
    total = sum(share for _, share in shares)
    said = listed([f"{letter} {currency.show(share)}" for letter, share in shares])
    return draw_cost_strip(
        shares,
        id="cost-strip",
        title=f"The cost of one {project.thing}, {currency.show_with_sign(total)}, as a strip",
        description=f"{said}.",
        digits=currency.digits,
    )


def _row(
    line: CostLine, letters: dict[str, str], project: Project, supplies: Supplies, currency: Currency
) -> SupplyRow:
    supply = supplies[line.supply]
    here = site_map.batch(project.slug)
    kept = any(draw.kept.known or not draw.kept.complete for draw in line.draws)
    return SupplyRow(
        letter=letters[line.supply] if line.measured else "",
        supply=Link(supply.name, site_map.href(here, site_map.item(supply.slug))),
        note="less what was kept" if kept else "",
        used=listed([_used(draw, supply, project) for draw in line.draws]),
        batch=money(line.cost, currency) if line.measured else "",
        one=currency.show(line.one) if line.measured and line.cost.complete else "",
    )


def _used(draw: Draw, supply: Supply, project: Project) -> str:
    if draw.quantity is None:
        return "not measured"
    if draw.piece is not None:
        size = show_size(draw.piece, project.unit)
        return f"{counted(int(draw.quantity), 'scrap', 'scraps')} {size}"
    return amount(draw.quantity, supply)


def _notes(batch: BatchFigures, supplies: Supplies) -> Iterator[str]:
    project, cost = batch.project, batch.cost
    spoiled = project.begun - project.finished
    if spoiled:
        things = counted(spoiled, f"{project.thing} was", f"{project.things} were")
        yield f"{things} spoiled; the paper is shared out among the finished ones."
    if cost.without:
        names = listed([supplies[slug].name for slug in cost.without])
        yield f"Nobody knows what {names} cost; it is not in the sum."
    if cost.not_counted:
        names = listed([supplies[slug].name for slug in cost.not_counted])
        yield f"Used without a measure, and not in the sum: {names}."
