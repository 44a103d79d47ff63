"""The cutting plan as a maker follows it: one heading, drawing and list of settings per sheet plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby
from typing import Final

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Node, Rect, SheetPlan
from batchleaf.core.cutting.steps import CutStep, LaidOut
from batchleaf.core.figures import BatchFigures
from batchleaf.facts import Cut, Project, Supply, Trim
from batchleaf.measure.display import show_length, show_other, show_size
from batchleaf.measure.lengths import Size
from batchleaf.views import site_map
from batchleaf.views.drawing.sheet_plan import draw_sheet_plan
from batchleaf.views.links import supply_named, together
from batchleaf.views.pages import Line, PlanView, SettingRow
from batchleaf.views.scoring import how_to_score
from batchleaf.views.words import counted, joined, listed

PIXELS_PER_MM: Final = 1.46
"""All plans of a page have one scale; at this one a 12 in sheet fills the column."""
NARROW: Final = Fraction(25)
"""A leftover narrower than this, in mm, is a strip of waste; a wider one is worth its size."""


@dataclass(frozen=True, slots=True)
class AlikePlans:
    """Sheet plans that cut equal sheets in the same way: one drawing serves them all."""

    plans: tuple[SheetPlan, ...]

    @property
    def sheets(self) -> int:
        """How many sheets are cut like this."""
        return sum(plan.times for plan in self.plans)


def alike_plans(cutting: Cutting, supplies: Mapping[str, Supply]) -> tuple[AlikePlans, ...]:
    """The plans grouped, in the order in which they are first met."""
    sizes = {stock.id: (stock.size, stock.scrap) for stock in cutting.job.stocks}
    groups: dict[tuple[Size, bool, Trim, Node], list[SheetPlan]] = {}
    for plan in cutting.plans:
        trim = _trim_of(cutting.sheets[plan.stock], supplies)
        groups.setdefault((*sizes[plan.stock], trim, plan.tree), []).append(plan)
    return tuple(AlikePlans(tuple(group)) for group in groups.values())


def plan_views(batch: BatchFigures, supplies: Mapping[str, Supply]) -> tuple[PlanView, ...]:
    """Every sheet plan of a batch, ready to show."""
    if batch.cutting is None:
        return ()
    alike = alike_plans(batch.cutting, supplies)
    return tuple(
        _plan_view(number, group, batch, batch.cutting, supplies) for number, group in enumerate(alike, 1)
    )


def _plan_view(
    number: int,
    group: AlikePlans,
    batch: BatchFigures,
    cutting: Cutting,
    supplies: Mapping[str, Supply],
) -> PlanView:
    project = batch.project
    laid = lay_out(group.plans[0], cutting.job)
    cuts = [cutting.sheets[plan.stock] for plan in group.plans]
    supply = supplies[cuts[0].supply]
    kept = kept_leftovers(laid, cuts, supply, group.sheets)
    reading = _Reading(project, laid, kept, group.sheets)
    size = show_size(laid.sheet.size, project.unit)
    names = listed([paper.name for paper in together(supplies[cut.supply] for cut in cuts)])
    drawing = draw_sheet_plan(
        laid,
        id=f"plan-{number}-drawing",
        title=f"Plan {number}: {names}, {size} {project.unit.value}",
        description=reading.in_words(),
        letters={part.letter: part.letter for part in project.parts},
        kept=kept,
        scores={part.letter: part.scores for part in project.parts if part.scores},
        grain=supply.grain,
        unit=project.unit,
        scale=PIXELS_PER_MM,
    )
    return PlanView(
        title=f"Plan {number}",
        instruction=_instruction(group, cuts, project, supplies, size),
        drawing=drawing,
        settings=tuple(reading.settings()),
        remark=_remark(project, laid),
    )


def _instruction(
    group: AlikePlans, cuts: Sequence[Cut], project: Project, supplies: Mapping[str, Supply], size: str
) -> Line:
    """Papers of which equally many are cut like this are said together."""
    here = site_map.batch(project.slug)
    times_of = Counter[tuple[str, bool]]()
    for plan, cut in zip(group.plans, cuts, strict=True):
        times_of[cut.supply, cut.scrap is not None] += plan.times
    alike: dict[str, list[Supply]] = {}
    for (slug, is_scrap), count in times_of.items():
        supply = supplies[slug]
        noun = ("scrap", "scraps") if is_scrap else (supply.unit, supply.units)
        alike.setdefault(counted(count, *noun), []).append(supply)
    pieces: list[Line] = []
    for times, papers in alike.items():
        names: list[Line] = [(supply_named(paper, here),) for paper in together(papers)]
        pieces.append((f"{times}{' each' if len(papers) > 1 else ''} of ", *joined(names, ", ", " and ")))
    first = _trimming(_trim_of(cuts[0], supplies), supplies[cuts[0].supply], project)
    return (f"{first}Cut ", *joined(pieces, ", ", " and "), f" like this, {size} {project.unit.value}.")


def _trim_of(cut: Cut, supplies: Mapping[str, Supply]) -> Trim:
    """An odd piece is trimmed already."""
    return Trim() if cut.scrap else supplies[cut.supply].trim


def _trimming(trim: Trim, supply: Supply, project: Project) -> str:
    """What comes off before the first cut: ``First trim 1/2 off the top of each sheet. ``"""
    edges = (("left", trim.left), ("right", trim.right), ("top", trim.top), ("bottom", trim.bottom))
    said = [f"{show_length(width, project.unit)} off the {edge}" for edge, width in edges if width]
    return f"First trim {listed(said)} of each {supply.unit}. " if said else ""


def _remark(project: Project, laid: LaidOut) -> str:
    """Where to score the parts that this sheet gives."""
    on_sheet = {placed.part for placed in laid.parts}
    scored = (part for part in project.parts if part.letter in on_sheet and part.scores)
    return " ".join(how_to_score(part, project.unit) for part in scored)


def kept_leftovers(laid: LaidOut, cuts: Sequence[Cut], supply: Supply, sheets: int) -> tuple[Rect, ...]:
    """The leftovers of a sheet that the record says went back into the drawer, size for size.

    A piece counts only where every sheet of the plan keeps one.
    """
    kept = Counter[Size]()
    for cut in cuts:
        for piece in cut.kept:
            kept[piece.size] += piece.count
    found: list[Rect] = []
    for left in laid.leftovers:
        size = supply.piece(left.size)
        if kept[size] >= sheets:
            kept[size] -= sheets
            found.append(left)
    return tuple(found)


class _Reading:
    """Says the cuts of one sheet plan in words."""

    def __init__(self, project: Project, laid: LaidOut, kept: tuple[Rect, ...], sheets: int) -> None:
        self._project, self._laid, self._kept, self._sheets = project, laid, kept, sheets
        self._parts = {placed.rect: placed.part for placed in laid.parts}
        self._names = {part.letter: part.name for part in project.parts}
        self._left = frozenset(laid.leftovers)

    def settings(self) -> Iterator[SettingRow]:
        """One row for each setting of the trimmer, in order."""
        for _, group in groupby(self._laid.cuts, key=lambda cut: (cut.setting, cut.axis)):
            cuts = list(group)
            yield SettingRow(
                setting=show_length(cuts[0].setting, self._project.unit),
                other_setting=show_other(cuts[0].setting, self._project.unit),
                numbers=tuple(str(cut.n) for cut in cuts),
                what=self._what(cuts),
                keep=self._keeps(cuts),
                waste=self._falls(cuts),
            )

    def in_words(self) -> str:
        """The whole sheet for those who cannot see the drawing."""
        unit = self._project.unit
        parts = Counter((placed.part, show_size(placed.rect.size, unit)) for placed in self._laid.parts)
        said = [f"{n} × {letter} {self._names[letter]}, {size}" for (letter, size), n in parts.items()]
        kept = [show_size(rect.size, unit) for rect in self._kept]
        words = f"{'; '.join(said)}. {counted(len(self._laid.cuts), 'through cut', 'through cuts')}."
        return f"{words} Kept: {listed(kept)}." if kept else words

    def _what(self, cuts: list[CutStep]) -> str:
        strokes = counted(len(cuts) * self._sheets, "cut", "cuts")
        made = Counter(
            self._parts[rect] for cut in cuts for rect in (cut.first, cut.second) if rect in self._parts
        )
        if not made:
            both = all(rect not in self._left for cut in cuts for rect in (cut.first, cut.second))
            return (
                f"{strokes}; both pieces are cut further."
                if both
                else f"{strokes}; the piece is cut further."
            )
        parts = [f"{n * self._sheets} × {letter} {self._names[letter]}" for letter, n in made.items()]
        return f"{strokes}: {listed(parts)}."

    def _keeps(self, cuts: list[CutStep]) -> str:
        kept = [rect for cut in cuts for rect in (cut.first, cut.second) if rect in self._kept]
        if not kept:
            return ""
        size = show_size(kept[0].size, self._project.unit)
        pieces = counted(len(kept) * self._sheets, "piece", "pieces")
        return f"Keep {size} for the drawer, {pieces}."

    def _falls(self, cuts: list[CutStep]) -> str:
        """What is left and not kept: narrow strips by their width, pieces by their size."""
        left = {
            rect.size.upright
            for cut in cuts
            for rect in (cut.first, cut.second)
            if rect in self._left and rect not in self._kept
        }
        strips = sorted(size.width for size in left if size.width < NARROW)
        pieces = sorted((size for size in left if size.width >= NARROW), key=lambda size: size.area)
        said = []
        if strips:
            widths = listed([show_length(width, self._project.unit) for width in strips])
            said.append(
                f"Strips of {widths} fall away." if len(strips) > 1 else f"A strip of {widths} falls away."
            )
        if pieces:
            sizes = listed([show_size(size, self._project.unit) for size in pieces])
            said.append(f"Left over: {sizes}.")
        return " ".join(said)
