"""Places in a row that keep their distance, as near as can be to where they are wanted."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate


def spread(
    wanted: Sequence[float],
    steps: Sequence[float],
    low: float,
    high: float,
    weights: Sequence[float] | None = None,
) -> tuple[float, ...]:
    """Places nearest to ``wanted`` (sorted), each ``steps`` from the next, between ``low`` and ``high``.

    What weighs less gives way more; without ``weights`` all weigh the same.

    Isotonic regression by pooling neighbours (Ayer et al. 1955, Annals of Mathematical
    Statistics 26, 641) on the places less the room before them; then cut to the bounds,
    which keeps it the nearest solution.
    """
    if not wanted:
        return ()
    before = list(accumulate(steps, initial=0.0))
    pools: list[tuple[float, float, int]] = []
    for place, room, weight in zip(wanted, before, weights or [1.0] * len(wanted), strict=True):
        mean, heft, size = place - room, weight, 1
        while pools and pools[-1][0] > mean:
            earlier, more, many = pools.pop()
            mean = (mean * heft + earlier * more) / (heft + more)
            heft, size = heft + more, size + many
        pools.append((mean, heft, size))
    most = max(low, high - before[-1])
    free = [min(max(mean, low), most) for mean, _, size in pools for _ in range(size)]
    return tuple(place + room for place, room in zip(free, before, strict=True))
