"""The money of a year: what the drawer was worth, what was spent and used, and which supplies most."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.drawer_years import DrawerYear, Way
from batchleaf.core.figures import Figures
from batchleaf.core.years import Drawn, Money, Year
from batchleaf.facts import Supply
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.drawing.charts.money import draw_spent, draw_worth, spent_figure
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.links import supply_link
from batchleaf.views.pages import DrawerOfYear, Line, Link, MoneyRow, UsedInYear, UsedRow
from batchleaf.views.stock import worth_in_words
from batchleaf.views.words import (
    capitalised,
    counted,
    day_and_month,
    joined,
    listed,
    long_date,
    money,
    money_moved,
    month_name,
    number_of,
)

MOST_NAMED: Final = 6
"""Supplies by name; all others stand in one row."""


def money_in_words(year: Year, told: Money, currency: Currency, how: str) -> Line:
    """``75.85 € was spent and at least 48.88 € used; on 14 November the drawer was worth 80.47 €.``"""
    spent, used = told.drawer.moved(Way.BOUGHT), told.drawer.moved(Way.USED)
    went: list[Line] = []
    if spent and spent.known:
        went.append((*_at_least(spent, currency, how), " was spent"))
    if used and used.known:
        went.append((*_at_least(-used, currency, how), " used" if went else " was used"))
    worth = _at_least(told.drawer.end, currency, f"#drawer-{year.number}")
    last = (f"on {day_and_month(told.ends)} the drawer was worth ", *worth, ".")
    first, *rest = (*joined(went, " and ", " and "), "; ", *last) if went else last
    return (capitalised(first) if isinstance(first, str) else first, *rest)


def _at_least(cost: Cost, currency: Currency, how: str) -> Line:
    """The amount leads to how it was worked out."""
    amount = Link(currency.show_with_sign(cost.known), how)
    return (amount,) if cost.complete else ("at least ", amount)


# --- the drawer -------------------------------------------------------------------------


def drawer_of_year(year: Year, told: Money, currency: Currency) -> DrawerOfYear:
    """Its worth and what was spent by month, and the account that says why it changed."""
    drawer = told.drawer
    return DrawerOfYear(
        anchor=f"drawer-{year.number}",
        worth=draw_worth(
            [month.worth for month in drawer.months],
            currency,
            id=f"worth-{year.number}",
            title=f"Worth of the drawer by month, {year.number}",
            description=_worth_in_words(drawer, currency),
        ),
        worth_caption=_worth_caption(drawer, currency),
        spent=_spent(year, drawer, currency),
        spent_caption=_spent_caption(drawer, currency),
        currency=currency.sign,
        rows=tuple(_account(year, drawer, currency)),
        total=MoneyRow(_end_of(year, told), "", money(drawer.end, currency)),
        notes=tuple(_notes(told)),
    )


def _account(year: Year, drawer: DrawerYear, currency: Currency) -> Iterator[MoneyRow]:
    """One line for each way in or out that something went; they sum to the end."""
    if any(pile.start.quantity or pile.start.cost.known for pile in drawer.piles):
        yield MoneyRow(f"At the start of {year.number}", "", money(drawer.start, currency))
    for way, label, note in _WAYS:
        moved = drawer.moved(way)
        if moved is not None:
            yield MoneyRow(label, note, money_moved(moved, currency))


_WAYS: Final = (
    (Way.BEFORE, "There before the records", ""),
    (Way.BOUGHT, "Bought", "with the delivery"),
    (Way.UNEXPLAINED, "Missing from the records", "it was used, so it must have come in"),
    (Way.FOUND, "Found at counts", "comes in at no cost"),
    (Way.USED, "Used by batches", "less what they kept"),
    (Way.GONE, "Went elsewhere", ""),
    (Way.EMPTIED, "Used up, by level", "what counts of levels found less"),
    (Way.MISSING, "Missing at counts", ""),
)


def _end_of(year: Year, told: Money) -> str:
    return f"At the end of {year.number}" if told.whole else f"On {long_date(told.ends)}"


def _worth_in_words(drawer: DrawerYear, currency: Currency) -> str:
    told = [
        f"{month_name(number)} {worth_in_words(month.worth, currency)}"
        for number, month in enumerate(drawer.months, 1)
        if month.worth is not None
    ]
    return f"At the end of {'; '.join(told)}." if told else "No month is told of."


def _worth_caption(drawer: DrawerYear, currency: Currency) -> str:
    said = f"Worth of all in the drawer at the end of each month, in {currency.sign}."
    if any(month.worth is not None and not month.worth.complete for month in drawer.months):
        said += " It is at least that, since not everything has a known price."
    return said


def _spent(year: Year, drawer: DrawerYear, currency: Currency) -> Drawing | None:
    if drawer.moved(Way.BOUGHT) is None:
        return None
    bought = [month.bought for month in drawer.months]
    told = [
        f"{month_name(number)} {_bought_in_words(cost, currency)}"
        for number, cost in enumerate(bought, 1)
        if cost.known or not cost.complete
    ]
    return draw_spent(
        bought,
        currency,
        id=f"spent-{year.number}",
        title=f"Spent by month, {year.number}",
        description=f"{'; '.join(told)}." if told else "Only gifts that cost nothing.",
    )


def _bought_in_words(cost: Cost, currency: Currency) -> str:
    return worth_in_words(cost, currency) if cost.known else "not known"


def _spent_caption(drawer: DrawerYear, currency: Currency) -> str:
    if drawer.moved(Way.BOUGHT) is None:
        return ""
    said = f"Spent in each month, in {currency.sign}."
    figures = [spent_figure(month.bought, currency) for month in drawer.months]
    if any(figure.endswith("+") for figure in figures):
        said += " A plus: and something whose price is not known."
    if "?" in figures:
        said += " A question mark: no price is known."
    return said


def _notes(told: Money) -> Iterator[str]:
    if not told.drawer.end.complete or not told.drawer.start.complete:
        yield "What has no known price is in no sum, so the drawer is worth at least so much."
    if told.unpriced:
        yield f"The price of {_purchases(told.unpriced)} is not known."
    if told.gifts:
        yield f"{_purchases(told.gifts).capitalize()} {'was a gift' if told.gifts == 1 else 'were gifts'}."
    if told.guessed:
        yield f"The price of {_purchases(told.guessed)} is a guess."


def _purchases(count: int) -> str:
    return "one purchase" if count == 1 else counted(count, "purchase", "purchases")


# --- what was used -----------------------------------------------------------------------


def used_in_year(year: Year, told: Money, figures: Figures) -> UsedInYear:
    """The supplies that cost most, by name; the others in one row, so that the column adds up."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    currency = figures.settings.currency
    named = told.drawn if len(told.drawn) <= MOST_NAMED + 1 else told.drawn[:MOST_NAMED]
    others = told.drawn[len(named) :]
    rows = [_row(one, supplies[one.supply], currency) for one in named]
    if others:
        rest = sum((one.cost for one in others), NOTHING)
        rows.append(UsedRow((f"{len(others)} other supplies",), "", money(rest, currency)))
    return UsedInYear(
        anchor=f"used-{year.number}",
        currency=currency.sign,
        rows=tuple(rows),
        total=money(sum((one.cost for one in told.drawn), NOTHING), currency),
        notes=tuple(_of_drawn(told.drawn)),
    )


def _row(drawn: Drawn, supply: Supply, currency: Currency) -> UsedRow:
    return UsedRow((supply_link(supply, site_map.YEAR),), _quantity(drawn, supply), _value(drawn, currency))


def _quantity(drawn: Drawn, supply: Supply) -> str:
    said = [number_of(drawn.quantity, supply)] if drawn.quantity else []
    said += [counted(drawn.pieces, "scrap", "scraps")] if drawn.pieces else []
    if drawn.unmeasured:
        said.append("some not measured" if said else "not measured")
    return listed(said)


def _value(drawn: Drawn, currency: Currency) -> str:
    """Nothing for what was only used without a measure: its cost is in no sum."""
    return money(drawn.cost, currency) if drawn.measured else ""


def _of_drawn(drawn: tuple[Drawn, ...]) -> Iterator[str]:
    yield "Less what was kept of it. Dearest first."
    if any(one.unmeasured for one in drawn):
        yield "What was used without a measure is in no sum."
