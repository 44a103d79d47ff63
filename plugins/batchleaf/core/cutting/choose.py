"""Which of the known patterns, and how often: small programs in whole numbers.

Every answer is recounted in integers before it is handed on.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor, inf, isinf
from typing import Final

from batchleaf.core.cutting.patterns import Pattern
from batchleaf.core.cutting.solver import Answer, Ending, Model, solve

TIDY_NODES: Final = 20
"""Tidying is for the eye and needs no proof."""

Chosen = tuple[tuple[Pattern, int], ...]
"""Patterns with the number of sheets cut like each, none 0."""


@dataclass(frozen=True, slots=True)
class Terms:
    """What is wanted and what there is: by part and by stock of the job (None: no limit).

    ``cost`` counts whole steps of one small amount, so that sums are exact.
    """

    parts: tuple[int, ...]
    each: Mapping[int, int]
    have: Mapping[int, int | None]
    cost: Mapping[int, int]

    def times(self, makes: int) -> Terms:
        """What ``makes`` want, as if it were one."""
        return replace(self, each={part: each * makes for part, each in self.each.items()})

    def caps(self, parts: int) -> list[int]:
        """By part of the job: more of it than this is of no use."""
        return [self.each.get(part, 0) for part in range(parts)]


@dataclass(frozen=True, slots=True)
class Makes:
    """``at_most``: the solver finds no more with these patterns, a claim in floating point."""

    makes: int
    chosen: Chosen
    at_most: int


@dataclass(frozen=True, slots=True)
class Share:
    """Fractions of sheets by pattern, and a price for each part of the job."""

    times: tuple[float, ...]
    prices: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Cheapest:
    """``chosen`` None: nothing was found; ``at_least``: no choice of these patterns costs less.

    That is the solver's claim, in floating point. ``inf``: there is no choice at all.
    """

    chosen: Chosen | None
    at_least: float


def share_covered(patterns: Sequence[Pattern], terms: Terms) -> Share:
    """The program in fractions: how often what ``terms.each`` asks for comes from what there is."""
    model, rows = _makes_model(patterns, terms, whole=False)
    answer = solve(model)
    prices = [0.0] * len(patterns[0].counts)
    for part, row in zip(terms.parts, rows, strict=True):
        prices[part] = answer.prices[row]
    return Share(tuple(answer.values[: len(patterns)]), tuple(prices))


def most_from(patterns: Sequence[Pattern], terms: Terms, cap: int, *, seconds: float | None = None) -> Makes:
    """The most makes, not above ``cap``, that ``patterns`` give, as far as ``seconds`` show them."""
    model, _ = _makes_model(patterns, terms, whole=True, cap=cap)
    answer = solve(model, seconds=seconds)
    chosen = _counted(patterns, answer, terms)
    at_most = cap if answer.bound == -inf else min(cap, floor(-answer.bound + 1e-6))
    if answer.ending is Ending.IMPOSSIBLE:
        at_most = 0
    return Makes(makes_of(chosen, terms), chosen, at_most)


def cost_in_fractions(patterns: Sequence[Pattern], terms: Terms) -> Share:
    """The program in fractions: what covers ``terms.each`` at the least cost."""
    model, rows = _cover_model(patterns, terms, whole=False)
    answer = solve(model)
    prices = [0.0] * len(patterns[0].counts)
    if answer.ending is not Ending.BEST:
        return Share((), tuple(prices))
    for part, row in zip(terms.parts, rows, strict=True):
        prices[part] = answer.prices[row]
    return Share(tuple(answer.values), tuple(prices))


def cheapest(
    patterns: Sequence[Pattern], terms: Terms, *, below: int | None = None, seconds: float | None = None
) -> Cheapest:
    """The least cost of what ``terms`` want with these patterns, if it is ``below`` some cost.

    Also if it is not the least of all within ``seconds``.
    """
    if not patterns:
        return Cheapest(None, inf)
    model, _ = _cover_model(patterns, terms, whole=True)
    if below is not None:
        model.row(dict(enumerate(model.costs)), upper=below - 1)
    answer = solve(model, seconds=seconds)
    at_least = answer.bound if isinf(answer.bound) else ceil(answer.bound - 1e-6)
    return Cheapest(_covering(patterns, answer, terms), at_least)


def fewest_plans(
    patterns: Sequence[Pattern],
    terms: Terms,
    cost: int,
    stops: Sequence[int],
    *,
    seconds: float | None = None,
) -> Chosen | None:
    """Among choices that cost no more than ``cost``: fewest different plans, then fewest ``stops``.

    None where none was found, as far as the ``seconds`` reach.
    """
    model, _ = _cover_model(patterns, terms, whole=True)
    model.row(dict(enumerate(model.costs)), upper=cost)
    model.costs = [0.0] * len(model.costs)
    dearest = 1 + sum(stops)
    for at, pattern in enumerate(patterns):
        limit = _most_useful(pattern, terms)
        used = model.column(cost=dearest + stops[at], upper=1, whole=True)
        model.row({at: 1, used: -limit}, upper=0)
    chosen = _covering(patterns, solve(model, nodes=TIDY_NODES, seconds=seconds), terms)
    return chosen if chosen and cost_of(chosen, terms) <= cost else None


def cost_of(chosen: Chosen, terms: Terms) -> int:
    """What the sheets of ``chosen`` cost."""
    return sum(terms.cost[pattern.stock] * times for pattern, times in chosen)


def makes_of(chosen: Chosen, terms: Terms) -> int:
    """How many makes ``chosen`` gives."""
    return min(
        sum(pattern.counts[part] * times for pattern, times in chosen) // terms.each[part]
        for part in terms.parts
    )


def _makes_model(
    patterns: Sequence[Pattern], terms: Terms, *, whole: bool, cap: float = inf
) -> tuple[Model, list[int]]:
    model = Model()
    for _ in patterns:
        model.column(whole=whole)
    makes = model.column(cost=-1, upper=cap, whole=whole)
    rows = []
    for part in terms.parts:
        entries = {at: float(p.counts[part]) for at, p in enumerate(patterns) if p.counts[part]}
        rows.append(model.row({**entries, makes: -float(terms.each[part])}, lower=0))
    _stock_rows(model, patterns, terms)
    return model, rows


def _cover_model(patterns: Sequence[Pattern], terms: Terms, *, whole: bool) -> tuple[Model, list[int]]:
    model = Model()
    for pattern in patterns:
        model.column(cost=terms.cost[pattern.stock], whole=whole)
    rows = []
    for part in terms.parts:
        entries = {at: float(p.counts[part]) for at, p in enumerate(patterns) if p.counts[part]}
        rows.append(model.row(entries, lower=terms.each[part]))
    _stock_rows(model, patterns, terms)
    return model, rows


def _stock_rows(model: Model, patterns: Sequence[Pattern], terms: Terms) -> None:
    for stock, have in terms.have.items():
        if have is not None:
            model.row({at: 1.0 for at, p in enumerate(patterns) if p.stock == stock}, upper=have)


def _most_useful(pattern: Pattern, terms: Terms) -> int:
    """More sheets than this of one pattern are never needed."""
    needed = max(-(-terms.each[part] // pattern.counts[part]) for part in terms.parts if pattern.counts[part])
    have = terms.have[pattern.stock]
    return needed if have is None else min(needed, have)


def _covering(patterns: Sequence[Pattern], answer: Answer, terms: Terms) -> Chosen | None:
    chosen = _counted(patterns, answer, terms)
    return chosen if chosen and makes_of(chosen, terms) else None


def _counted(patterns: Sequence[Pattern], answer: Answer, terms: Terms) -> Chosen:
    """The solver's numbers as whole sheets; nothing where they are more than there are."""
    if not answer.values:
        return ()
    chosen = tuple(
        (pattern, times)
        for pattern, value in zip(patterns, answer.values, strict=False)
        if (times := round(value)) > 0
    )
    used = Counter[int]()
    for pattern, times in chosen:
        used[pattern.stock] += times
    fits = all(have is None or used[stock] <= have for stock, have in terms.have.items())
    return chosen if fits else ()
