"""What is named outside a sheet, and from which side: cuts by number, parts by letter."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep
from batchleaf.measure.rects import Rect
from batchleaf.views.drawing.sides import Side, Sight
from batchleaf.views.pages import CutNumbers
from batchleaf.views.runs import Run, runs_of


@dataclass(frozen=True, slots=True)
class Callout:
    """A cut or a run by number, a small part by its letter, a kept piece by its word.

    It lies between ``start`` and ``end`` on ``side`` and begins ``inside`` the sheet so
    deep, in mm. A single line, and a part, end where they start.
    """

    side: Side
    start: float
    end: float
    inside: float
    told: CutNumbers | str

    @property
    def is_cut(self) -> bool:
        """True for one with a ring."""
        return isinstance(self.told, CutNumbers)

    @property
    def turn(self) -> int:
        """When it is cut; letters come before all cuts."""
        return self.told.first if isinstance(self.told, CutNumbers) else 0

    @property
    def text(self) -> str:
        """What is written."""
        return self.told.shown if isinstance(self.told, CutNumbers) else self.told


def callouts_of_cuts(
    cuts: Iterable[CutStep], sheet: Rect, standing: Mapping[Side, Sequence[Sight]]
) -> list[Callout]:
    """One for each run and each single cut, from the side that reaches it most easily.

    ``standing``: what is not cut away, as it is seen from each side.
    """
    return [_callout(run, sheet, standing) for run in runs_of(cuts)]


def _callout(run: Run, sheet: Rect, standing: Mapping[Side, Sequence[Sight]]) -> Callout:
    lines = [float(line) for line in run.lines]

    def hindrance(side: Side) -> tuple[bool, float]:
        begins = float(min(side.depth(sheet, cut.piece)[0] for cut in run.cuts))
        blocked = any(one.far <= begins and any(map(one.crosses, lines)) for one in standing[side])
        return blocked, begins

    sides = (Side.TOP, Side.BOTTOM) if run.axis is Axis.X else (Side.LEFT, Side.RIGHT)
    (_, inside), side = min(((hindrance(side), side) for side in sides), key=lambda found: found[0])
    return Callout(side, lines[0], lines[-1], inside, run.numbers)


def from_nearest_side(sheet: Rect, rect: Rect, text: str) -> Callout:
    """A piece with no room for its name is named outside, from its middle."""
    return from_side(min(Side, key=lambda one: one.depth(sheet, rect)), sheet, rect, text)


def from_side(side: Side, sheet: Rect, rect: Rect, text: str) -> Callout:
    """The middle of ``rect`` as it is named from ``side``."""
    start, end = side.span(rect)
    near, far = side.depth(sheet, rect)
    middle = float(start + end) / 2
    return Callout(side, middle, middle, float(near + far) / 2, text)


def with_two_joined(callouts: Sequence[Callout]) -> list[Callout] | None:
    """The same cuts in one callout less: the two nearest whose numbers follow; ``None`` where none do."""
    pairs = [
        (max(one.start, other.start) - min(one.end, other.end), one, other)
        for one in callouts
        for other in callouts
        if _last(one) + 1 == other.turn > 1
    ]
    if not pairs:
        return None
    _, one, other = min(pairs, key=lambda pair: (pair[0], pair[1].turn))
    return [*(rest for rest in callouts if rest not in (one, other)), _joined(one, other)]


def _last(callout: Callout) -> int:
    return callout.told.last if isinstance(callout.told, CutNumbers) else 0


def _joined(one: Callout, other: Callout) -> Callout:
    return replace(
        one,
        start=min(one.start, other.start),
        end=max(one.end, other.end),
        inside=min(one.inside, other.inside),
        told=CutNumbers(one.turn, _last(other)),
    )
