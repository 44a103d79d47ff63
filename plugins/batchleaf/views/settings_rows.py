"""The cuts of one sheet plan in words: a row for each setting of the trimmer."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from itertools import groupby
from typing import Final

from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.measure.display import NBSP, show_length, show_other, show_size
from batchleaf.measure.lengths import Unit
from batchleaf.measure.rects import Rect
from batchleaf.views.pages import SettingRow
from batchleaf.views.runs import numbers_of
from batchleaf.views.words import counted, listed

NARROW: Final = Fraction(25)
"""A leftover narrower than this, in mm, is a strip of waste; a wider one is worth its size."""


@dataclass(frozen=True, slots=True)
class CutsInWords:
    """``names``: what each part is called, by the letter or id that the plan uses.

    ``kept``: the leftovers that go back into the drawer. ``sheets`` are cut alike.
    ``before``: what is done to the piece in hand before a part is cut from it, in words.
    """

    laid: LaidOut
    names: Mapping[str, str]
    unit: Unit
    kept: tuple[Rect, ...]
    sheets: int
    before: Mapping[str, str] = field(default_factory=dict)

    def settings(self) -> Iterator[SettingRow]:
        """One row for each setting of the trimmer, in order."""
        parts = {placed.rect: placed.part for placed in self.laid.parts}
        for _, group in groupby(self.laid.cuts, key=lambda cut: (cut.setting, cut.axis)):
            cuts = list(group)
            found = (parts.get(rect) for cut in cuts for rect in (cut.first, cut.second))
            made = Counter(part for part in found if part is not None)
            yield SettingRow(
                setting=show_length(cuts[0].setting, self.unit),
                other_setting=show_other(cuts[0].setting, self.unit),
                numbers=numbers_of(cuts),
                before=self._first(made),
                what=self._what(cuts, made),
                keep=self._keeps(cuts),
                waste=self._falls(cuts),
            )

    def whole_sheet(self) -> str:
        """The whole sheet for those who cannot see the drawing."""
        parts = Counter((placed.part, show_size(placed.rect.size, self.unit)) for placed in self.laid.parts)
        said = [f"{n}{NBSP}×{NBSP}{self._called(part)}, {size}" for (part, size), n in parts.items()]
        kept = [show_size(rect.size, self.unit) for rect in self.kept]
        words = f"{'; '.join(said)}. {counted(len(self.laid.cuts), 'through cut', 'through cuts')}."
        return f"{words} Kept: {listed(kept)}." if kept else words

    def _called(self, part: str) -> str:
        return f"{part} {self.names[part]}".rstrip()

    def _first(self, made: Counter[str]) -> str:
        """``First, for B: punch one edge.``, at the cuts that part it from its piece."""
        return " ".join(f"First, for {part}: {what}." for part, what in self.before.items() if made[part])

    def _what(self, cuts: list[CutStep], made: Counter[str]) -> str:
        """``made``: how many of each part the cuts of one sheet set free."""
        strokes = counted(len(cuts) * self.sheets, "cut", "cuts").replace(" ", NBSP)
        if not made:
            left = frozenset(self.laid.leftovers)
            both = all(rect not in left for cut in cuts for rect in (cut.first, cut.second))
            return (
                f"{strokes}; both pieces are cut further."
                if both
                else f"{strokes}; the piece is cut further."
            )
        said = [f"{n * self.sheets}{NBSP}×{NBSP}{self._called(part)}" for part, n in made.items()]
        return f"{strokes}: {listed(said)}."

    def _keeps(self, cuts: list[CutStep]) -> str:
        kept = [rect for cut in cuts for rect in (cut.first, cut.second) if rect in self.kept]
        if not kept:
            return ""
        size = show_size(kept[0].size, self.unit)
        pieces = counted(len(kept) * self.sheets, "piece", "pieces")
        return f"Keep {size} for the drawer, {pieces}."

    def _falls(self, cuts: list[CutStep]) -> str:
        """What is left and not kept: narrow strips by their width, pieces by their size."""
        left = {
            rect.size.upright
            for cut in cuts
            for rect in (cut.first, cut.second)
            if rect in self.laid.leftovers and rect not in self.kept
        }
        strips = sorted(size.width for size in left if size.width < NARROW)
        pieces = sorted((size for size in left if size.width >= NARROW), key=lambda size: size.area)
        said = []
        if strips:
            widths = listed([show_length(width, self.unit) for width in strips])
            said.append(
                f"Strips of {widths} fall away." if len(strips) > 1 else f"A strip of {widths} falls away."
            )
        if pieces:
            sizes = listed([show_size(size, self.unit) for size in pieces])
            said.append(f"Left over: {sizes}.")
        return " ".join(said)
