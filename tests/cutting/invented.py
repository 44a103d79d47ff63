"""Batches nobody cut: card and tag parts on sheets as they are sold, and scraps, by a seed."""

from __future__ import annotations

import random
from dataclasses import dataclass, replace
from fractions import Fraction

from batchleaf.facts.jobs import Job, PartKind, Stock
from cutting.jobs import mm

INCHES, MILLIMETRES = Fraction(127, 80), Fraction(1)
"""A sixteenth of an inch, and a millimetre."""
SOLD = {
    INCHES: ((136, 176), (192, 192), (96, 96), (128, 128)),
    MILLIMETRES: ((210, 297), (148, 210), (305, 305), (152, 152)),
}


@dataclass(frozen=True, slots=True)
class Batch:
    """``counted`` for the most makes; for the cost of ``makes`` only scraps have a number."""

    counted: Job
    makes: int

    @property
    def bought(self) -> Job:
        """The same with full sheets without limit."""
        stocks = (stock if stock.scrap else replace(stock, have=None) for stock in self.counted.stocks)
        return replace(self.counted, stocks=tuple(stocks))


def invented(many: int, seed: int) -> tuple[Batch, ...]:
    """So many batches, always the same ones for a seed."""
    dice = random.Random(seed)
    return tuple(_batch(dice) for _ in range(many))


def _batch(dice: random.Random) -> Batch:
    unit = dice.choice((INCHES, MILLIMETRES))
    sizes = dice.sample(SOLD[unit], dice.choice((1, 1, 2, 2, 3)))
    sheets = [
        (width, height, dice.randint(2, 14), dice.choice((12, 15, 20, 35, 40, 55))) for width, height in sizes
    ]
    scraps = []
    for _ in range(dice.choice((0, 0, 1, 2))):
        width, height = dice.choice(SOLD[unit])
        scraps.append(
            (width * dice.randint(3, 8) // 10, height * dice.randint(5, 10) // 10, dice.randint(1, 3))
        )
    widest, highest = max(sizes, key=lambda size: size[0] * size[1])
    parts = tuple(
        PartKind(
            "ABCDEFGH"[at],
            mm(
                dice.randint(widest // 10, widest * 6 // 10) * unit,
                dice.randint(highest // 10, highest * 7 // 10) * unit,
            ),
            dice.choice((1, 1, 1, 2, 2, 3, 4, 6)),
            turns=dice.random() < 0.6,
        )
        for at in range(dice.randint(1, 7))
    )
    stocks = [
        Stock(f"s{at}", mm(w * unit, h * unit), n, Fraction(c)) for at, (w, h, n, c) in enumerate(sheets)
    ]
    stocks += [
        Stock(f"r{at}", mm(w * unit, h * unit), n, Fraction(dice.choice((0, 2, 5))), scrap=True)
        for at, (w, h, n) in enumerate(scraps)
    ]
    return Batch(Job(tuple(stocks), parts), dice.choice((4, 6, 8, 10, 12, 15, 20, 24, 30)))
