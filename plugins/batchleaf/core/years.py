"""The years of the records: what was made in each, how long it took, where its paper went.

A year is one of the calendar in which a batch was made or something moved in the
drawer; what is only planned is in none. Of the drawer the last one ends with the day of
which the drawer is told, that of the last record where no other is set.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.drawer_years import DrawerYear, drawer_years
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.movements import Draw, Ledger
from batchleaf.core.paper import PaperUse
from batchleaf.facts import Basis, Purchase, Supply


@dataclass(frozen=True, slots=True)
class Made:
    """What batches, oldest first, come to together."""

    batches: tuple[BatchFigures, ...]

    @property
    def finished(self) -> int:
        """Makes that are finished."""
        return sum(batch.project.finished for batch in self.batches)

    @property
    def begun(self) -> int:
        """Makes that were begun."""
        return sum(batch.project.begun for batch in self.batches)

    @property
    def spoiled(self) -> int:
        """Makes that were begun and not finished."""
        return self.begun - self.finished

    @property
    def minutes(self) -> int:
        """At the table, so far as it is told."""
        return sum(batch.project.minutes or 0 for batch in self.batches)

    @property
    def untimed(self) -> int:
        """Of how many batches the time is not told."""
        return sum(batch.project.minutes is None for batch in self.batches)

    @property
    def paper(self) -> PaperUse | None:
        """Where the paper of all of them went; ``None`` where no batch says what was cut."""
        uses = [batch.paper for batch in self.batches if batch.paper]
        if not any(use.cut for use in uses):
            return None
        return PaperUse(
            cut=sum((use.cut for use in uses), Fraction(0)),
            used=sum((use.used for use in uses), Fraction(0)),
            kept=sum((use.kept for use in uses), Fraction(0)),
        )


@dataclass(frozen=True, slots=True)
class Drawn:
    """What the batches of a year took of one supply, of a pad with all its papers.

    ``quantity``: in whole units; ``pieces``: odd ones besides. ``cost``: less what
    was kept. ``unmeasured``: some of it was used without a measure.
    """

    supply: str
    quantity: Fraction
    pieces: int
    cost: Cost
    unmeasured: bool

    @property
    def measured(self) -> bool:
        """Whether any of it was used with a measure, so that its cost means something."""
        return bool(self.quantity or self.pieces)


@dataclass(frozen=True, slots=True)
class Money:
    """What a year cost, until the day ``ends``.

    ``drawn``: by supply, the dearest first; it sums to what left the drawer with batches,
    those among them of which nothing is finished yet. ``purchases``: lines of orders.
    """

    ends: dt.date
    drawer: DrawerYear
    drawn: tuple[Drawn, ...]
    purchases: tuple[Purchase, ...]

    @property
    def whole(self) -> bool:
        """Whether all days of the year are told of."""
        return (self.ends.month, self.ends.day) == (12, 31)

    @property
    def unpriced(self) -> int:
        """How many lines of orders have no known price."""
        return sum(purchase.value is None for purchase in self.purchases)

    @property
    def gifts(self) -> int:
        """How many things were given."""
        return sum(purchase.basis is Basis.GIFT for purchase in self.purchases)

    @property
    def guessed(self) -> int:
        """How many prices are a guess."""
        return sum(purchase.basis is Basis.GUESSED for purchase in self.purchases)


@dataclass(frozen=True, slots=True)
class Year:
    """One year. ``money`` is ``None`` where nothing is told of the drawer."""

    number: int
    made: Made
    months: tuple[Made, ...]
    """Twelve."""
    money: Money | None


def years_of(figures: Figures) -> tuple[Year, ...]:
    """The years of the records, the first one first."""
    made = [batch for batch in figures.batches.values() if batch.made]
    dates = [batch.project.date for batch in made]
    if figures.ledger:
        dates += [movement.date for movement in figures.ledger.movements]
    numbers = sorted({date.year for date in dates})
    until = figures.as_of
    money = _money(figures, figures.ledger, numbers, until) if figures.ledger and until else {}
    return tuple(
        Year(
            number=number,
            made=_made_in(made, number),
            months=tuple(_made_in(made, number, month) for month in range(1, 13)),
            money=money.get(number),
        )
        for number in numbers
    )


def has_years(figures: Figures) -> bool:
    """Whether there is any: whether a batch is made, or something moved."""
    return any(batch.made for batch in figures.batches.values()) or bool(
        figures.ledger and figures.ledger.movements
    )


def _made_in(batches: list[BatchFigures], year: int, month: int | None = None) -> Made:
    dated = [batch for batch in batches if batch.project.date.year == year]
    found = [batch for batch in dated if month in (None, batch.project.date.month)]
    return Made(tuple(sorted(found, key=lambda batch: (batch.project.date, batch.project.slug))))


def _money(figures: Figures, ledger: Ledger, numbers: list[int], until: dt.date) -> Mapping[int, Money]:
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    by_level = {slug for slug, supply in supplies.items() if supply.by_level}
    told = [number for number in numbers if number <= until.year]
    drawers = drawer_years(ledger, told, until, by_level)
    return {
        number: Money(
            ends=min(dt.date(number, 12, 31), until),
            drawer=drawers[number],
            drawn=tuple(_drawn(_draws_in(number, figures, ledger), supplies)),
            purchases=tuple(
                one for one in figures.archive.purchases if one.date.year == number and one.date <= until
            ),
        )
        for number in told
    }


def _draws_in(year: int, figures: Figures, ledger: Ledger) -> list[Draw]:
    mine = (draws for slug, draws in ledger.draws.items() if figures.batches[slug].project.date.year == year)
    return [draw for draws in mine for draw in draws]


def _drawn(draws: list[Draw], supplies: Mapping[str, Supply]) -> Iterator[Drawn]:
    by_supply: dict[str, list[Draw]] = {}
    for draw in draws:
        by_supply.setdefault(supplies[draw.supply].pad or draw.supply, []).append(draw)
    found = [_sum_of(slug, mine) for slug, mine in by_supply.items()]
    yield from sorted(found, key=lambda drawn: (-drawn.cost.known, not drawn.measured, drawn.supply))


def _sum_of(supply: str, draws: list[Draw]) -> Drawn:
    whole = [draw.quantity for draw in draws if draw.piece is None and draw.quantity is not None]
    pieces = [int(draw.quantity) for draw in draws if draw.piece is not None and draw.quantity is not None]
    return Drawn(
        supply=supply,
        quantity=sum(whole, Fraction(0)),
        pieces=sum(pieces),
        cost=sum((draw.cost for draw in draws), NOTHING),
        unmeasured=any(draw.quantity is None for draw in draws),
    )
