"""Runs: cuts with consecutive numbers that one setting makes on the same lines.

Strips that are cut off one after the other, equal pieces that are cut together on one
line, or both: rows of equal pieces, each cut into strips on the same lines.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.cutting.plan import Axis
from batchleaf.core.cutting.steps import CutStep
from batchleaf.views.pages import CutNumbers

LEAST: Final = 3
"""So many cuts make a run; two are told one by one."""


@dataclass(frozen=True, slots=True)
class Run:
    """One cut, or a run of them, in the order of cutting."""

    cuts: tuple[CutStep, ...]

    @property
    def numbers(self) -> CutNumbers:
        """Its first and its last number."""
        return CutNumbers(self.cuts[0].n, self.cuts[-1].n)

    @property
    def axis(self) -> Axis:
        """The axis along which all its settings are measured."""
        return self.cuts[0].axis

    @property
    def lines(self) -> tuple[Fraction, ...]:
        """Where its cuts lie on the sheet, from the left or from the top, each place once."""
        return tuple(sorted({line_of(cut) for cut in self.cuts}))


def line_of(cut: CutStep) -> Fraction:
    """Where ``cut`` lies on the sheet, from the left or from the top."""
    return (cut.piece.x if cut.axis is Axis.X else cut.piece.y) + cut.setting


def runs_of(cuts: Iterable[CutStep]) -> Iterator[Run]:
    """Each of ``cuts``, which follow one another, in one run or alone."""
    for together in _on_the_same_lines(_strip_by_strip(cuts)):
        if len(together) < LEAST:
            yield from (Run((cut,)) for cut in together)
        else:
            yield Run(tuple(together))


def _strip_by_strip(cuts: Iterable[CutStep]) -> list[list[CutStep]]:
    """Cuts of one setting, each through what the one before left over."""
    found: list[list[CutStep]] = []
    for cut in cuts:
        if found and _alike(found[-1][-1], cut) and found[-1][-1].second == cut.piece:
            found[-1].append(cut)
        else:
            found.append([cut])
    return found


def _on_the_same_lines(rows: Iterable[list[CutStep]]) -> list[list[CutStep]]:
    found: list[tuple[list[CutStep], list[Fraction]]] = []
    for row in rows:
        lines = [line_of(cut) for cut in row]
        if found and _alike(found[-1][0][-1], row[0]) and found[-1][1] == lines:
            found[-1][0].extend(row)
        else:
            found.append((row, lines))
    return [together for together, _ in found]


def _alike(one: CutStep, other: CutStep) -> bool:
    return (one.setting, one.axis) == (other.setting, other.axis)


def numbers_of(cuts: Sequence[CutStep]) -> tuple[CutNumbers, ...]:
    """What the rings of ``cuts`` say."""
    return tuple(run.numbers for run in runs_of(cuts))
