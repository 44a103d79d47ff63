"""The cutting plan as a maker follows it: one heading, drawing and list of settings per sheet plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from batchleaf.core.batch_cutting import Cutting
from batchleaf.core.bench_limits import REMEDY, narrowest_held
from batchleaf.core.cutting.layout import lay_out
from batchleaf.core.cutting.plan import Node, SheetPlan
from batchleaf.core.cutting.steps import LaidOut
from batchleaf.facts import Cut, Project, Supply, Tool, Trim
from batchleaf.measure.display import NBSP, show_length, show_sheet_size
from batchleaf.measure.lengths import Size, Unit
from batchleaf.measure.rects import Rect
from batchleaf.views import site_map
from batchleaf.views.drawing.sheet_plan import draw_sheet_plan
from batchleaf.views.drawing.sheet_to_draw import SheetToDraw, sheet_to_draw
from batchleaf.views.links import supply_named, together
from batchleaf.views.pages import Line, PlanView, SettingRow
from batchleaf.views.settings_rows import CutsInWords
from batchleaf.views.words import counted, joined, listed

PIXELS_PER_MM: Final = 1.46
"""All plans of a page have one scale; at this one a 12 in sheet fills the column."""


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


@dataclass(frozen=True, slots=True)
class PlanToShow:
    """Sheet plans that are cut alike, with what is the same in both units and at every scale.

    ``cuts``: the line of the record for each of the ``plans``. ``kept``: the leftovers that go back
    into the drawer.
    """

    plans: AlikePlans
    cuts: tuple[Cut, ...]
    laid: LaidOut
    kept: tuple[Rect, ...]
    sheet: SheetToDraw


def plans_to_show(
    project: Project, cutting: Cutting | None, supplies: Mapping[str, Supply]
) -> tuple[PlanToShow, ...]:
    """Every sheet plan of a batch, laid out."""
    if cutting is None:
        return ()
    return tuple(_plan_to_show(alike, project, cutting, supplies) for alike in alike_plans(cutting, supplies))


def _plan_to_show(
    alike: AlikePlans, project: Project, cutting: Cutting, supplies: Mapping[str, Supply]
) -> PlanToShow:
    laid = lay_out(alike.plans[0], cutting.job)
    cuts = tuple(cutting.sheets[plan.stock] for plan in alike.plans)
    supply = supplies[cuts[0].supply]
    kept = kept_leftovers(laid, cuts, supply, alike.sheets)
    sheet = sheet_to_draw(
        laid,
        letters={part.letter: part.letter for part in project.parts},
        kept=kept,
        scores={part.letter: part.scores for part in project.parts if part.scores},
        grain=supply.grain,
    )
    return PlanToShow(alike, cuts, laid, kept, sheet)


@dataclass(frozen=True, slots=True)
class ToldPlan:
    """A plan in the words of one unit, which is drawn at any scale."""

    plan: PlanToShow
    number: int
    unit: Unit
    drawing_title: str
    drawing_words: str
    instruction: Line
    settings: tuple[SettingRow, ...]
    remark: str

    @property
    def size(self) -> Size:
        """The sheet that is cut."""
        return self.plan.laid.sheet.size

    def drawn(self, scale: float) -> PlanView:
        """Ready to show, at ``scale`` px to the mm."""
        drawing = draw_sheet_plan(
            self.plan.sheet,
            id=f"plan-{self.number}-drawing",
            title=self.drawing_title,
            description=self.drawing_words,
            unit=self.unit,
            scale=scale,
        )
        return PlanView(f"Plan {self.number}", self.instruction, drawing, self.settings, self.remark)


def told_plans(
    plans: Sequence[PlanToShow],
    project: Project,
    supplies: Mapping[str, Supply],
    tools: Mapping[str, Tool],
) -> tuple[ToldPlan, ...]:
    """The plans in the unit of ``project``."""
    held = narrowest_held(project, tools)
    return tuple(_told(number, plan, project, supplies, held) for number, plan in enumerate(plans, 1))


def plan_views(
    plans: Sequence[PlanToShow],
    project: Project,
    supplies: Mapping[str, Supply],
    tools: Mapping[str, Tool],
) -> tuple[PlanView, ...]:
    """The plans as a page shows them, in the unit of ``project``."""
    return tuple(plan.drawn(PIXELS_PER_MM) for plan in told_plans(plans, project, supplies, tools))


def _told(
    number: int, plan: PlanToShow, project: Project, supplies: Mapping[str, Supply], held: Fraction | None
) -> ToldPlan:
    called = {part.letter: part.name for part in project.parts}
    first = {part.letter: part.before.rstrip(".") for part in project.parts if part.before}
    reading = CutsInWords(plan.laid, called, project.unit, plan.kept, plan.plans.sheets, first)
    size = show_sheet_size(plan.laid.sheet.size, project.unit)
    names = listed([paper.name for paper in together(supplies[cut.supply] for cut in plan.cuts)])
    return ToldPlan(
        plan=plan,
        number=number,
        unit=project.unit,
        drawing_title=f"Plan {number}: {names}, {size} {project.unit.word}",
        drawing_words=reading.whole_sheet(),
        instruction=_instruction(plan, project, supplies, size),
        settings=tuple(reading.settings()),
        remark=_remark(project, plan.laid, held),
    )


def _instruction(plan: PlanToShow, project: Project, supplies: Mapping[str, Supply], size: str) -> Line:
    """Papers of which equally many are cut like this are said together."""
    here = site_map.batch(project.slug)
    times_of = Counter[tuple[str, bool]]()
    for one, cut in zip(plan.plans.plans, plan.cuts, strict=True):
        times_of[cut.supply, cut.scrap is not None] += one.times
    alike: dict[str, list[Supply]] = {}
    for (slug, is_scrap), count in times_of.items():
        supply = supplies[slug]
        noun = ("scrap", "scraps") if is_scrap else (supply.unit, supply.units)
        alike.setdefault(counted(count, *noun), []).append(supply)
    pieces: list[Line] = []
    for times, papers in alike.items():
        names: list[Line] = [(supply_named(paper, here),) for paper in together(papers)]
        pieces.append((f"{times}{' each' if len(papers) > 1 else ''} of ", *joined(names, ", ", " and ")))
    cut = plan.cuts[0]
    first = _trimming(_trim_of(cut, supplies), supplies[cut.supply], project)
    return (f"{first}Cut ", *joined(pieces, ", ", " and "), f" like this, {size} {project.unit.word}.")


def _trim_of(cut: Cut, supplies: Mapping[str, Supply]) -> Trim:
    """An odd piece is trimmed already."""
    return Trim() if cut.scrap else supplies[cut.supply].trim


def _trimming(trim: Trim, supply: Supply, project: Project) -> str:
    """What comes off before the first cut: ``First trim 1/2 off the top of each sheet. ``"""
    edges = (("left", trim.left), ("right", trim.right), ("top", trim.top), ("bottom", trim.bottom))
    said = [f"{show_length(width, project.unit)} off the {edge}" for edge, width in edges if width]
    return f"First trim {listed(said)} of each {supply.unit}. " if said else ""


def _remark(project: Project, laid: LaidOut, held: Fraction | None) -> str:
    """What to see to before the first cut."""
    on_sheet = {placed.part for placed in laid.parts}
    return " ".join((*_nothing_to_spare(laid), *_too_narrow(project, on_sheet, held)))


def _too_narrow(project: Project, on_sheet: Set[str], held: Fraction | None) -> Iterator[str]:
    """What to do about parts that are narrower than the trimmer holds."""
    for part in project.cut_parts:
        if held is not None and part.letter in on_sheet and part.cut_size.upright.width < held:
            least = f"{show_length(held, project.unit)}{NBSP}{project.unit.word}"
            yield f"{part.letter} is narrower than the {least} that the trimmer holds: {REMEDY}."


def _nothing_to_spare(laid: LaidOut) -> Iterator[str]:
    """A part that reaches the far edge is as long as the sheet truly is, and that may be a little short."""
    sheet = laid.sheet
    across = any(one.rect.x + one.rect.width == sheet.width for one in laid.parts)
    down = any(one.rect.y + one.rect.height == sheet.height for one in laid.parts)
    if across or down:
        used = "all of it is" if across and down else f"its whole {'width' if across else 'height'} is"
        yield f"Measure the sheet first: {used} used."


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
