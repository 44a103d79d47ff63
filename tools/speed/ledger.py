"""How long the drawer of many years takes: 5,000 batches, 500 supplies, 20,000 movements.

Prints processor seconds of the ledger and of all costs, for both ways to price what is
taken, the least of several runs. The archive is invented, and the same at every run.

    .venv/bin/python tools/speed/ledger.py
"""

from __future__ import annotations

import datetime as dt
import random
import time
from collections.abc import Callable
from fractions import Fraction
from functools import partial
from typing import Final, TypeVar

from batchleaf.core.cost_kinds import cost_by_kind
from batchleaf.core.costing import batch_cost
from batchleaf.core.ledger import keep_ledger
from batchleaf.core.movements import Ledger
from batchleaf.core.todays_prices import last_prices, todays_cost
from batchleaf.facts import (
    Archive,
    CostFlow,
    Count,
    Cut,
    Gone,
    KeptPiece,
    Part,
    Place,
    Project,
    Purchase,
    Status,
    Supply,
    Use,
)
from batchleaf.measure.lengths import Size, Unit

BATCHES: Final = 5000
SUPPLIES: Final = 500
BOUGHT: Final = 6000
COUNTED: Final = 1500
GONE: Final = 500
DAYS: Final = 6000
RUNS: Final = 5
T = TypeVar("T")


def size(width: int, height: int) -> Size:
    """A size in whole millimetres."""
    return Size(Fraction(width), Fraction(height))


SHEET, PIECE, PART = size(210, 297), size(60, 90), size(90, 120)
START: Final = dt.date(2010, 1, 1)


def supply(slug: str) -> Supply:
    """A card of one size."""
    return Supply(slug, slug, "card", "sheet", "sheets", Unit.MM, SHEET)


def project(number: int, on: dt.date, paper: str, other: str, chance: random.Random) -> Project:
    """A batch that cuts one paper, keeps a piece of every fourth, and uses another supply."""
    kept = (KeptPiece(PIECE, 1),) if number % 4 == 0 else ()
    finished = chance.randint(4, 24)
    return Project(
        slug=f"batch-{number}",
        title=f"Batch {number}",
        date=on,
        status=Status.MADE,
        series=None,
        unit=Unit.MM,
        thing="card",
        things="cards",
        finished=finished,
        begun=finished + number % 3,
        finished_size=None,
        parts=(Part("A", "card", PART, 1, (paper,), turns=True),),
        cut=(Cut(paper, chance.randint(1, 4), None, kept),),
        uses=(Use(other, Fraction(chance.randint(1, 40), 7)),),
        minutes=None,
        steps=(),
        photos=(),
        notes="",
    )


def archive() -> Archive:
    """Sixteen years at the table."""
    chance = random.Random(20)
    slugs = [f"card-{number}" for number in range(SUPPLIES)]

    def day() -> dt.date:
        return START + dt.timedelta(days=chance.randrange(DAYS))

    projects = [
        project(number, day(), chance.choice(slugs), chance.choice(slugs), chance)
        for number in range(BATCHES)
    ]
    purchases = [
        Purchase(
            day(), chance.choice(slugs), Fraction(chance.randint(5, 50)), chance.randint(50, 5000), "",
            place=Place("orders.yml", number, 1),
        )
        for number in range(BOUGHT)
    ]  # fmt: skip
    counts = [Count(day(), chance.choice(slugs), Fraction(chance.randint(0, 60))) for _ in range(COUNTED)]
    gone = [Gone(day(), chance.choice(slugs), None, Fraction(1), "swatches") for _ in range(GONE)]
    return Archive(
        projects=tuple(sorted(projects, key=lambda one: (one.date, one.slug))),
        supplies=tuple(supply(slug) for slug in slugs),
        purchases=tuple(purchases),
        counts=tuple(counts),
        series=(),
        gone=tuple(gone),
    )


def all_costs(records: Archive, ledger: Ledger) -> int:
    """What all batches cost, by kind and at today's prices as well; in minor units."""
    supplies = {one.slug: one for one in records.supplies}
    prices = last_prices(records.purchases, supplies, None)
    total = 0
    for one in records.projects:
        cost = batch_cost(ledger.draws[one.slug], one.finished)
        kinds = cost_by_kind(cost, one, supplies)
        todays_cost(one, supplies, prices)
        total += sum(kind.cost.known for kind in kinds)
    return total


def timed(what: Callable[[], T]) -> tuple[float, T]:
    """The least processor seconds of some runs, and what came out."""
    found: list[tuple[float, T]] = []
    for _ in range(RUNS):
        before = time.process_time()
        made = what()
        found.append((time.process_time() - before, made))
    return min(found, key=lambda one: one[0])


def main() -> None:
    """Measure, and tell."""
    records = archive()
    for flow in CostFlow:
        kept, ledger = timed(partial(keep_ledger, records, flow))
        priced, total = timed(partial(all_costs, records, ledger))
        print(
            f"{flow.value}: {len(records.projects):,} batches, {len(records.supplies)} supplies,"
            f" {len(ledger.movements):,} movements: ledger {kept:.2f} s, costs {priced:.2f} s,"
            f" together {kept + priced:.2f} s; batches cost {total / 100:,.2f}"
        )


if __name__ == "__main__":
    main()
