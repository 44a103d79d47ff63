"""Odd pieces where the drawer speaks of them: ``chalk-card 3 scraps 60 x 210``."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.facts import Supply
from batchleaf.measure.errors import MeasureError
from batchleaf.measure.lengths import Size, Unit, parse_size
from batchleaf.records.amounts import read_amount, read_named

_PIECES: Final = re.compile(
    r"(?P<supply>\S+)\s+(?P<about>about\s+)?(?:(?P<count>[0-9]{1,4})\s+)?(?:scraps?|pieces?\s+of)\s+(?P<size>\S.*)"
)


@dataclass(frozen=True, slots=True)
class AmountLine:
    """A supply and an amount of it in words, or so many odd pieces of a ``size``."""

    supply: str
    amount: str = ""
    count: int = 0
    size: Size | None = None
    about: bool = False

    def quantity(self, supply: Supply) -> Fraction:
        """How many pieces, or how much of the supply. Raises :class:`MeasureError`."""
        if self.size is None:
            return read_amount(self.amount, supply)
        if supply.size is None:
            raise MeasureError(f"“{supply.slug}” has no size, so it is not cut and leaves no scraps")
        return Fraction(self.count)

    def piece(self, supply: Supply) -> Size | None:
        """The size of the pieces as the supply names it; ``None`` for whole units."""
        return supply.piece(self.size) if self.size and supply.size else None


def pieces_in(text: str, unit: Unit) -> AmountLine | None:
    """Odd pieces, where the line is of such. Raises :class:`MeasureError` for a size that is none."""
    found = _PIECES.fullmatch(text.strip())
    if found is None:
        return None
    count = int(found["count"]) if found["count"] else 1
    return AmountLine(found["supply"], "", count, parse_size(found["size"], unit), about=bool(found["about"]))


def read_amount_line(text: str, unit: Unit) -> AmountLine:
    """``oat-card 2 sheets`` · ``oat-card scrap 4 x 9 in``. Raises :class:`MeasureError`."""
    if pieces := pieces_in(text, unit):
        return pieces
    supply, amount = read_named(text)
    if not amount:
        raise MeasureError(f"“{text}” does not say how much; write for example chalk-card 2 sheets")
    return AmountLine(supply, amount)
