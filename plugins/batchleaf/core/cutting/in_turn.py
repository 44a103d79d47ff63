"""Sheet after sheet filled with what is still wanted, again and again under better values.

A part that came only with much waste is worth more in the next pass, so that it is
thought of while there is still something to go with it (sequential value correction:
Mukhacheva, Belov, Kartak, Mukhacheva, Pesquisa Operacional 20 (2000) 153-168; Belov and
Scheithauer, INFORMS J. Comput. 19 (2007) 27-35).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.choose import Chosen, Terms
from batchleaf.core.cutting.effort import Effort
from batchleaf.core.cutting.fullest import filled
from batchleaf.core.cutting.integers import Sheet
from batchleaf.core.cutting.patterns import Pattern, Pool
from batchleaf.core.cutting.strips import Arrangement, parts_of

UNIT: Final = 1 << 24
"""The first value of the largest part."""
FEW_KINDS: Final = 9
"""So few kinds of parts are better served by patterns near the bound; of more, no two sheets may be alike."""
MOVED: Final = Fraction(3, 10)
"""How far a value moves towards what the last sheet says."""
UNEVEN: Final = 48
"""From the third pass on values are shaken by up to this many of 1024 parts."""


@dataclass(slots=True)
class _Values:
    """What a part is worth; ``area`` by part, in any one unit."""

    area: dict[int, int]
    worth: dict[int, int]
    passes: int = 0

    @classmethod
    def by_area(cls, sheets: Sequence[Sheet], wanted: Terms) -> _Values:
        area = {
            shape.part: shape.width * shape.height for stock in wanted.have for shape in sheets[stock].shapes
        }
        top = max(area[part] for part in wanted.parts)
        return cls(area, {part: max(1, area[part] * UNIT // top) for part in wanted.parts})

    def now(self) -> list[int]:
        """Values by part of the job for the sheet that is next; shaken where a pass only repeats another."""
        found = [0] * (1 + max(self.worth))
        for part, worth in self.worth.items():
            shake = (part * 7919 + self.passes * 104_729) % UNEVEN if self.passes > 1 else 0
            found[part] = max(1, worth * (1024 + shake) // 1024)
        return found

    def correct(self, counts: dict[int, int], sheet: Sheet, share: dict[int, Fraction]) -> None:
        """After a sheet with ``counts``, which are a ``share`` of all that is wanted of a part."""
        used = sum(self.area[part] * many for part, many in counts.items())
        whole, top = sheet.width * sheet.height, max(self.area.values())
        for part in counts:
            # The longer number stands for a power a little above 1: large parts come first.
            area = self.area[part] * (66 + self.area[part].bit_length())
            new = area * UNIT * whole // (top * (66 + top.bit_length()) * used)
            self.worth[part] += int((new - self.worth[part]) * MOVED * share[part])


def in_turn(sheets: Sequence[Sheet], wanted: Terms, pool: Pool, effort: Effort) -> Iterator[Chosen | None]:
    """One way after another to cut all that is ``wanted``; None for a pass that runs out of sheets.

    Every filled sheet joins ``pool``. Ends only with the effort.
    """
    values = _Values.by_area(sheets, wanted)
    while effort.step():
        chosen = _one_pass(sheets, wanted, values, pool, effort)
        if effort.over and chosen is None:
            return
        yield chosen
        values.passes += 1


def _one_pass(
    sheets: Sequence[Sheet], wanted: Terms, values: _Values, pool: Pool, effort: Effort
) -> Chosen | None:
    rest, have = dict(wanted.each), dict(wanted.have)
    chosen: list[tuple[Pattern, int]] = []
    while rest:
        filled = _next(sheets, wanted, rest, have, values, effort)
        if filled is None:
            return None
        stock, piece = filled
        counts = dict(parts_of(piece))
        left = have[stock]
        times = min(rest[part] // many for part, many in counts.items())
        if left is not None:
            times = min(times, left)
            have[stock] = left - times
        chosen.append((pool.take(stock, piece), times))
        rest = {part: need for part, many in rest.items() if (need := many - times * counts.get(part, 0))}
        if rest:
            share = {part: Fraction(many * times, wanted.each[part]) for part, many in counts.items()}
            values.correct(counts, sheets[stock], share)
    return tuple(chosen)


def _next(
    sheets: Sequence[Sheet],
    wanted: Terms,
    rest: dict[int, int],
    have: dict[int, int | None],
    values: _Values,
    effort: Effort,
) -> tuple[int, Arrangement] | None:
    """The stock that gives most for its cost, and how it is filled."""
    of_part = values.now()
    limits = [rest.get(part, 0) for part in range(len(of_part))]
    found: dict[Sheet, Arrangement | None] = {}
    best: tuple[Fraction, int, Arrangement] | None = None
    for stock, left in have.items():
        sheet = sheets[stock]
        if left == 0:
            continue
        if sheet not in found:
            found[sheet] = filled(sheet, limits, of_part, effort)
        piece = found[sheet]
        if effort.over or piece is None:
            continue
        worth = sum(values.worth[part] * many for part, many in parts_of(piece).items())
        gain = Fraction(worth, wanted.cost[stock]) if wanted.cost[stock] else Fraction(worth * UNIT)
        if best is None or gain > best[0]:
            best = (gain, stock, piece)
    return best[1:] if best else None
