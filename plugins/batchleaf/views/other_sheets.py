"""The page of a batch for readers who have other sheets."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.other_sheets import OnOther
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import Project, Supply, Tool
from batchleaf.measure.display import NBSP, show_size
from batchleaf.views import site_map
from batchleaf.views.for_makes import sheets_in_words
from batchleaf.views.in_both import for_readers, in_both
from batchleaf.views.links import together
from batchleaf.views.measures import measures_view
from batchleaf.views.pages import Link, OtherSheetsPage, OtherSheetView, PlanView
from batchleaf.views.plan import PlanToShow, plan_views, plans_to_show
from batchleaf.views.words import capitalised, counted, listed, uncapitalised


def other_sheets_page(
    batch: BatchFigures, figures: Figures, remembered: Remembering = afresh
) -> OtherSheetsPage | None:
    """One part for each size, in the unit of the record and in the other; ``None`` where there is none."""
    if not batch.on_other:
        return None
    return remembered(batch.project.slug, _page_in_both, batch, figures.archive.tools)


def _page_in_both(batch: BatchFigures, tools: tuple[Tool, ...]) -> OtherSheetsPage:
    plans = [plans_to_show(one.project, one.cutting, one.papers) for one in batch.on_other]
    page = in_both(_page(batch, plans, tools), _page(for_readers(batch), plans, tools))
    return replace(page, measures=measures_view(batch.project.unit))


def _page(
    batch: BatchFigures, plans: Sequence[Sequence[PlanToShow]], tools: Sequence[Tool]
) -> OtherSheetsPage:
    """In the unit of the batch; ``plans``: of each size in turn."""
    by_slug = {tool.slug: tool for tool in tools}
    project = batch.project
    here = site_map.other_sheets(project.slug)
    made = f"{project.begun} {project.name_of(project.begun)}"
    return OtherSheetsPage(
        title=f"{project.title} on other sheets",
        batch=Link(project.title, site_map.href(here, site_map.batch(project.slug))),
        sentence=(f"The same {made} from sheets of another size, all papers of one size, untrimmed.",),
        sheets=tuple(
            _view(number, one, these, batch, by_slug)
            for number, (one, these) in enumerate(zip(batch.on_other, plans, strict=True), 1)
        ),
    )


def link_to_other_sheets(batch: BatchFigures) -> Link | None:
    """The way from the batch to that page."""
    if not batch.on_other:
        return None
    here, there = site_map.batch(batch.project.slug), site_map.other_sheets(batch.project.slug)
    names = listed([one.sheet.name for one in batch.on_other], last="or")
    return Link(f"Cut from {names}", site_map.href(here, there))


def _view(
    number: int,
    one: OnOther,
    plans: Sequence[PlanToShow],
    batch: BatchFigures,
    tools: Mapping[str, Tool],
) -> OtherSheetView:
    project = batch.project
    views = plan_views(plans, replace(one.project, unit=project.unit), one.papers, tools)
    size = f"{show_size(one.sheet.size, project.unit)}{NBSP}{project.unit.word}"
    name = one.sheet.name if one.sheet.name != size.replace(NBSP, " ").replace("×", "x") else ""
    return OtherSheetView(
        anchor=site_map.other_sheet(number),
        name=capitalised(name or size),
        size=size if name else "",
        total=_total(one),
        sentence=_sentence(one, project),
        plans=tuple(_placed(plan, number, one) for plan in views),
        numbers=_numbers(one, batch),
    )


def _numbers(one: OnOther, batch: BatchFigures) -> tuple[tuple[int, str], ...]:
    """Each number of makes that is worked out, and its sheets."""
    counts = next((other.counts for other in batch.for_makes_on if other.sheet == one.sheet), ())
    return tuple((count.makes, sheets_in_words(count.sheets, dict(one.papers))) for count in counts)


def _placed(plan: PlanView, number: int, one: OnOther) -> PlanView:
    """With a name of its own on the page, whose links lead from one folder below the batch."""
    title = f"On {one.sheet.name}, {uncapitalised(plan.drawing.title)}"
    drawing = replace(plan.drawing, id=f"{site_map.other_sheet(number)}-{plan.drawing.id}", title=title)
    line = tuple(
        replace(piece, href=f"../{piece.href}") if isinstance(piece, Link) else piece
        for piece in plan.instruction
    )
    return replace(plan, drawing=drawing, instruction=line)


def _sentence(one: OnOther, project: Project) -> str:
    made = f"{project.begun} {project.name_of(project.begun)}"
    if one.too_large is not None:
        unit, part = project.unit, one.too_large
        size = f"{show_size(part.cut_size, unit)}{NBSP}{unit.word}"
        return f"Not from these: {part.letter}, {part.name}, is {size} and does not fit."
    if one.cutting is None:
        return f"No way was found to cut {made} from these."
    papers = _needed(one)
    named = [f"{count} of {_named(some)}" for count, some in papers.items()]
    return f"{capitalised(made)} take {_total(one)}: {listed(named)}."


def _total(one: OnOther) -> str:
    """All sheets of all papers."""
    total = sum(count * len(some) for count, some in _needed(one).items())
    return counted(total, "sheet", "sheets") if one.cutting else "none"


def _named(papers: Sequence[Supply]) -> str:
    """``clear film``; of several each takes as many."""
    names = listed([paper.name for paper in together(papers)])
    return names if len(papers) == 1 else f"each of {names}"


def _needed(one: OnOther) -> dict[int, list[Supply]]:
    """The papers of which equally many sheets are needed, together."""
    slugs = dict.fromkeys(cut.supply for cut in one.cutting.sheets.values()) if one.cutting else {}
    found: dict[int, list[Supply]] = {}
    for slug in slugs:
        found.setdefault(one.needed(slug), []).append(one.papers[slug])
    return found
