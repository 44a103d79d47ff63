"""What one make costs: a strip of paper cut into shares, lying on a rule of money."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import Final

from batchleaf.views.drawing.canvas import WIDEST_PX, Canvas, Lettering
from batchleaf.views.drawing.shapes import Box, Drawing, Label, Stroke
from batchleaf.views.drawing.spread import spread

LENGTH: Final = WIDEST_PX["strip"] - 24.0
"""The strip, in units of the drawing; the rest is room for the last figure."""
HEIGHT: Final = 48.0
MOST_FIGURES: Final = 9
"""More figures on the rule would meet on a narrow screen."""
_MAJOR_FROM: Final = 10
"""From ten of the major unit on, the rule is in that unit."""


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule for amounts up to ``total``, in minor units of money.

    ``figure_every`` and ``tick_every`` are in minor units; ``divisor`` of them make
    one of the unit that its figures are in.
    """

    total: int
    figure_every: int
    tick_every: int
    divisor: int

    @property
    def in_minor(self) -> bool:
        """True where the figures are minor units (cents)."""
        return self.divisor == 1

    def figure(self, at: int) -> str:
        """What is written at ``at`` minor units."""
        whole, rest = divmod(at, self.divisor)
        places = len(str(self.divisor)) - 1
        return f"{whole}.{rest:0{places}d}".rstrip("0") if rest else str(whole)


def rule_for(total: int, digits: int) -> Rule:
    """The rule for one make of ``total`` minor units; ``digits`` of the currency's minor unit.

    Steps are 1, 2 or 5 times a power of ten, the finest with at most :data:`MOST_FIGURES`
    figures; ticks divide a step by 10 where they stay apart, else by 5, 2 or not at all.
    """
    step = next(step for step in _round_steps() if total <= step * MOST_FIGURES)
    tick = next(step // by for by in (10, 5, 4, 2, 1) if step % by == 0 and total * by <= step * 90)
    major = 10**digits
    divisor = major if digits and total >= _MAJOR_FROM * major else 1
    return Rule(total, step, tick, divisor)


def _round_steps() -> Iterable[int]:
    power = 1
    while True:
        yield from (power, 2 * power, 5 * power)
        power *= 10


def draw_cost_strip(
    shares: Sequence[tuple[str, int]],
    *,
    id: str,  # noqa: A002  the name that the page gives it
    title: str,
    description: str,
    digits: int,
    lost: Collection[str] = (),
) -> Drawing:
    """``shares`` are letters with minor units, in the order of the list beside the strip.

    Shares of nothing are left out; a share too narrow for its letter carries it above.
    ``lost``: the letters of what is in no make; they are left blank, as waste is on a sheet.
    """
    paid = [(letter, amount) for letter, amount in shares if amount > 0]
    total = sum(amount for _, amount in paid)
    canvas = Canvas(Lettering(1.0, "strip"))
    unit = LENGTH / max(total, 1)
    ends = [0.0, *accumulate(amount * unit for _, amount in paid)]
    _draw_rule(canvas, rule_for(max(total, 1), digits), unit)
    for (letter, _), (start, end) in zip(paid, pairwise(ends), strict=True):
        canvas.add(Box("share lost" if letter in lost else "share", start, 0, end - start, HEIGHT))
    canvas.add(Box("outline", 0, 0, LENGTH, HEIGHT))
    _draw_letters(canvas, [letter for letter, _ in paid], ends)
    around = canvas.extent
    left = min(0.0, around.left)
    return Drawing(
        id,
        title,
        description,
        left,
        around.top,
        max(LENGTH, around.right) - left,
        around.bottom - around.top,
        1.0,
        "strip",
        tuple(canvas.shapes),
    )


def _draw_rule(canvas: Canvas, rule: Rule, unit: float) -> None:
    em = canvas.lettering.em
    half = rule.figure_every / 2
    ticks = []
    for at in range(0, rule.total + 1, rule.tick_every):
        deep = 0.5 if at % rule.figure_every == 0 else 0.35 if at % half == 0 else 0.2
        ticks.append((at * unit, HEIGHT, at * unit, HEIGHT + deep * em))
    canvas.add(Stroke("tick", tuple(ticks)))
    for at in range(0, rule.total + 1, rule.figure_every):
        role = "quiet" if at else "quiet start"
        canvas.add_if_free(Label(role, at * unit, HEIGHT + 1.15 * em, rule.figure(at)))


def _draw_letters(canvas: Canvas, letters: Sequence[str], ends: Sequence[float]) -> None:
    em = canvas.lettering.em
    above: list[tuple[str, float]] = []
    for letter, (start, end) in zip(letters, pairwise(ends), strict=True):
        if end - start >= canvas.lettering.width(letter, 1.23) + 0.4 * em:
            canvas.add(Label("key", (start + end) / 2, HEIGHT / 2, letter))
        else:
            above.append((letter, (start + end) / 2))
    pitch = 1.15 * em
    steps = [pitch] * (len(above) - 1)
    places = spread([middle for _, middle in above], steps, 0.5 * em, LENGTH - 0.4 * em)
    for (letter, middle), place in zip(above, places, strict=True):
        canvas.add(
            Stroke(
                "extension",
                ((middle, HEIGHT / 2, middle, -0.15 * em), (middle, -0.15 * em, place, -0.55 * em)),
            ),
            Label("key", place, -1.2 * em, letter),
        )
