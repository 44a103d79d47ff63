"""Which lines a score board has a groove for.

A board holds the piece against a stop, and its grooves lie at whole steps from there; a line between
two of them may lie on one when the piece is turned round and measured from its other edge.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from batchleaf.facts import Part, Tool


@dataclass(frozen=True, slots=True)
class ScoreLine:
    """A line at ``at``, in mm from the edge the record measures from, and ``other`` from the one across.

    ``step``: of the set of grooves it lies on, ``None``: on none. ``setting``: how far from the
    stop it is; not ``at`` where the piece has to be turned round.
    """

    at: Fraction
    other: Fraction
    step: Fraction | None
    setting: Fraction

    @property
    def nearest(self) -> Fraction:
        """How far it is from the edge that it is nearer to."""
        return min(self.at, self.other)

    @property
    def turned_round(self) -> bool:
        """Whether it is measured from the other edge."""
        return self.setting != self.at


def score_lines(part: Part, board: Tool) -> tuple[ScoreLine, ...]:
    """Every score of a part on a board."""
    return tuple(
        _line(score.at, part.size.width if score.runs_down else part.size.height, board.grooves)
        for score in part.scores
    )


def _line(at: Fraction, length: Fraction, steps: Iterable[Fraction]) -> ScoreLine:
    """The widest step that it lies on, from its own edge if there is one."""
    for setting in (at, length - at):
        for step in sorted(steps, reverse=True):
            if (setting / step).denominator == 1:
                return ScoreLine(at, length - at, step, setting)
    return ScoreLine(at, length - at, None, at)
