"""Money month by month: what the drawer was worth as a stepped line, what was spent as bars."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import Cost
from batchleaf.measure.money import Currency
from batchleaf.views.drawing.charts.field import Field, Line, draw_measure, field_for, hatch, write_over
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke

SPENT_HEIGHT: Final = 110.0
BAR: Final = 0.5
"""Width of a bar, in months."""


def draw_worth(
    months: Sequence[Cost | None],
    currency: Currency,
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
) -> Drawing:
    """What was in the drawer at the end of each of twelve months, hatched as what is kept.

    A month without a worth stays empty. The last one is measured at its end, the highest over it.
    """
    known = {i: Fraction(month.known, 10**currency.digits) for i, month in enumerate(months) if month}
    field = field_for(known.values())
    field.draw_rule()
    steps = [(i * field.month, (i + 1) * field.month, field.y(value)) for i, value in known.items()]
    if hatching := tuple(line for left, right, y in steps for line in hatch(left, y, right, 0)):
        field.canvas.add(Stroke("hatch", hatching))
    if steps:
        field.canvas.add(Stroke("stepped", tuple(_outline(steps))))
    field.draw_months()
    if known:
        last = max(known)
        draw_measure(field, steps[-1][1] + 0.85 * field.em, steps[-1][2], _shown(months, last, currency))
        highest = max(known, key=lambda i: known[i])
        if known[highest] > known[last]:
            _write_highest(field, highest, field.y(known[highest]), _shown(months, highest, currency))
    return field.drawing(id, title, description)


def _outline(steps: Sequence[tuple[float, float, float]]) -> Iterator[Line]:
    before = 0.0
    for left, right, y in steps:
        yield (left, before, left, y)
        yield (left, y, right, y)
        before = y
    yield (steps[-1][1], before, steps[-1][1], 0.0)


def _shown(months: Sequence[Cost | None], i: int, currency: Currency) -> str:
    month = months[i]
    return currency.show(month.known) if month else ""


def _write_highest(field: Field, month: int, y: float, text: str) -> None:
    half = field.canvas.lettering.width(text) / 2
    x = min(max((month + 0.5) * field.month, half), field.width - half)
    field.canvas.add_if_free(Label("halo", x, y - 0.62 * field.em, text))


def draw_spent(
    months: Sequence[Cost],
    currency: Currency,
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
) -> Drawing:
    """What was paid in each of twelve months, with its sum over the bar.

    ``12.40 +``: and something of unknown price; ``?``: nothing of it has a known price.
    """
    field = field_for((Fraction(month.known, 10**currency.digits) for month in months), height=SPENT_HEIGHT)
    field.draw_rule()
    over: list[tuple[float, float, str]] = []
    for i, month in enumerate(months):
        middle, wide = (i + 0.5) * field.month, BAR * field.month
        y = field.y(Fraction(month.known, 10**currency.digits))
        if month.known:
            field.canvas.add(Box("piece", middle - wide / 2, y, wide, -y))
        if month.known or not month.complete:
            over.append((middle, y, spent_figure(month, currency)))
    field.draw_months()
    write_over(field, over)
    return field.drawing(id, title, description)


def spent_figure(month: Cost, currency: Currency) -> str:
    """What stands over the bar of a month."""
    if month.complete:
        return currency.show(month.known)
    return f"{currency.show(month.known)} +" if month.known else "?"
