"""All ways of cutting tiny sheets, tried one by one, at every whole millimetre."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import count
from operator import add

from batchleaf.facts.jobs import Job, Offer, PartKind, Stock
from cutting.jobs import mm

Counts = tuple[int, ...]


def brute_patterns(job: Job, stock: Stock) -> frozenset[Counts]:
    """Every combination of parts that through cuts get from one sheet; whole mm only."""
    kerf = int(job.kerf)

    @cache
    def ways(width: int, height: int) -> frozenset[Counts]:
        found = {(0,) * len(job.parts)}
        for at, part in enumerate(job.parts):
            if part.sources and stock.id not in part.sources:
                continue
            lying = {part.size, part.size.turned} if part.turns else {part.size}
            if mm(width, height) in lying:
                found.add(tuple(int(at == other) for other in range(len(job.parts))))
        for at in range(1, width):
            found |= joined(ways(at, height), ways(max(0, width - at - kerf), height))
        for at in range(1, height):
            found |= joined(ways(width, at), ways(width, max(0, height - at - kerf)))
        return frozenset(found)

    return ways(int(stock.size.width), int(stock.size.height))


def joined(one: frozenset[Counts], other: frozenset[Counts]) -> set[Counts]:
    """Every sum of a combination of each."""
    return {tuple(map(add, x, y)) for x in one for y in other}


def brute_totals(job: Job) -> frozenset[Counts]:
    """Every combination that all sheets at hand give together."""
    total = frozenset({(0,) * len(job.parts)})
    for stock in job.stocks:
        patterns = brute_patterns(job, stock)
        for _ in range(stock.have or 0):
            total = frozenset(joined(total, patterns))
    return total


def brute_most_makes(job: Job) -> int:
    """The most makes, without any cleverness."""
    return max(
        min(count // part.each for count, part in zip(total, job.parts, strict=True))
        for total in brute_totals(job)
    )


def tiny_job(seed: int) -> Job:
    """A job small enough to try everything."""
    dice = random.Random(seed)
    stocks = tuple(
        Stock(
            f"s{n}",
            mm(dice.randint(2, 6), dice.randint(2, 6)),
            dice.randint(1, 2),
            Fraction(dice.randint(1, 4)),
        )
        for n in range(dice.randint(1, 2))
    )
    parts = tuple(
        PartKind(
            "ABC"[n],
            mm(dice.randint(1, 4), dice.randint(1, 4)),
            dice.randint(1, 3),
            turns=dice.random() < 0.6,
            sources=(dice.choice(stocks).id,) if dice.random() < 0.2 else (),
        )
        for n in range(dice.randint(1, 3))
    )
    return Job(stocks, parts, Fraction(dice.choice([0, 0, 0, 1])))


def brute_least_cost(job: Job, makes: int) -> Fraction | None:
    """The least cost of sheets for ``makes``; None where they do not give as many."""
    wanted = tuple(part.each * makes for part in job.parts)
    cheapest: dict[Counts, Fraction] = {(0,) * len(job.parts): Fraction(0)}
    for stock in job.stocks:
        patterns = _clipped(brute_patterns(job, stock), wanted)
        for _ in count() if stock.have is None else range(stock.have):
            grown = _with_one_more(cheapest, patterns, stock.cost, wanted)
            if grown == cheapest:
                break
            cheapest = grown
    return cheapest.get(wanted)


def _clipped(patterns: frozenset[Counts], wanted: Counts) -> frozenset[Counts]:
    """Parts beyond what is wanted count as none."""
    return frozenset(tuple(map(min, pattern, wanted)) for pattern in patterns)


def _with_one_more(
    cheapest: dict[Counts, Fraction], patterns: frozenset[Counts], cost: Fraction, wanted: Counts
) -> dict[Counts, Fraction]:
    """What one more sheet of a kind gives."""
    grown = dict(cheapest)
    for total, paid in cheapest.items():
        price = paid + cost
        for pattern in patterns:
            more = tuple(map(min, map(add, total, pattern), wanted))
            before = grown.get(more)
            if before is None or price < before:
                grown[more] = price
    return grown


def brute_best_use(job: Job, offers: Sequence[Offer]) -> int:
    """The most worth of the first stock of ``job``; sources are none of its business."""
    parts = tuple(replace(offer.part, sources=()) for offer in offers)
    ways = brute_patterns(Job(job.stocks[:1], parts, job.kerf), job.stocks[0])
    return max(
        sum(o.worth * (n if o.most is None else min(n, o.most)) for o, n in zip(offers, way, strict=True))
        for way in ways
    )
