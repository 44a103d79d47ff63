"""What it costs to send one, at the maker's own rates."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from batchleaf.facts.postage import Rate


def rate_for(name: str, grams: Fraction, rates: Iterable[Rate]) -> Rate | None:
    """The rate of a kind of letter for a weight: of its newest day, the lowest step that reaches so far.

    A list of a day takes the place of all that were before it; ``None`` where no step reaches.
    """
    mine = [rate for rate in rates if rate.post == name]
    newest = max((rate.date for rate in mine), default=None)
    steps = [rate for rate in mine if rate.date == newest and grams <= rate.up_to]
    return min(steps, key=lambda rate: rate.up_to, default=None)
