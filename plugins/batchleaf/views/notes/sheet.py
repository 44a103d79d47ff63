"""The companion notes of a batch: the printable sheet that goes with a tutorial.

Front: the finished make, what to gather, what to cut. Back: how each sheet is cut, how a make
is put together. Further sides: templates at their true size.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.remembered import Remembering, afresh
from batchleaf.facts import Companion, Project, Settings, Supply, Tool
from batchleaf.measure.display import NBSP, show_length, show_size
from batchleaf.measure.durations import show_film_time, show_minutes
from batchleaf.views import site_map
from batchleaf.views.about_batch import credits_of, things_named
from batchleaf.views.cautions import cautions_for
from batchleaf.views.disclosure import disclosure_for, told_by_name
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.in_both import for_readers
from batchleaf.views.masthead import Masthead
from batchleaf.views.measures import CALLED, rounded_from
from batchleaf.views.notes.back import ForBack, back_shelves, for_back
from batchleaf.views.notes.check_bar import check_bar
from batchleaf.views.notes.cut_list import cut_list
from batchleaf.views.notes.gather import gather_rows
from batchleaf.views.notes.heights import of_cut_list, of_tools_and_cautions, steps_fit_beside
from batchleaf.views.notes.on_paper import HEIGHT, printed
from batchleaf.views.notes.templates import larger_than_a_side, template_views
from batchleaf.views.pages import (
    Line,
    Link,
    NotesSheet,
    PrintedDrawing,
    PrintedStep,
)
from batchleaf.views.together import front_view
from batchleaf.views.words import capitalised, counted

WORDS: Final = "Companion notes, to print"
"""What a link calls them."""
_WIDEST_FRONT: Final = 100.0
_HIGHEST_FRONT: Final = 125.0
_LEAST_FRONT: Final = 60.0
_TRUE: Final = 1.0
"""The finished make is never drawn larger than it is."""
_OF_FRONT: Final = 64.0
"""What its title, the rule to check the size and the space between take."""

_OF_ROUNDED: Final = 7.0
"""A line with the space below it."""


def has_notes(project: Project) -> bool:
    """Whether there is anything to print: what is cut, or how it is made."""
    return bool(project.parts or project.steps)


def companion_line(batch: BatchFigures, figures: Figures) -> Line:
    """The way from the page of a batch to its notes. Of a hand-out no page but the maker's own knows."""
    project = batch.project
    if not has_notes(project):
        return ()
    if project.companion is Companion.PUBLIC:
        here, there = site_map.batch(project.slug), site_map.notes(project.slug)
        other = project.unit.for_readers.word
        in_other = site_map.href(here, site_map.in_unit(there, other))
        return (Link(WORDS, site_map.href(here, there)), ", or ", Link(f"in {CALLED[other]}", in_other))
    if figures.ledger is None:
        return ()
    where = site_map.hand_out(project.slug).rstrip("/")
    return (f"Companion notes, to hand out: they lie in {where}, in the folder of this site.",)


Placed = Iterator[tuple[str, NotesSheet]]
"""Sheets with their addresses: in the unit of the record, then in the other."""


def notes_sheets(
    batch: BatchFigures, figures: Figures, masthead: Masthead, remembered: Remembering = afresh
) -> Placed:
    """The sheet as a page beside that of its batch, which it leads back to."""
    unit = batch.project.unit
    page = site_map.batch(batch.project.slug)
    here = site_map.notes(batch.project.slug)
    there = site_map.in_unit(here, unit.for_readers.word)
    in_its_unit, in_the_other = _sheets(batch, figures, masthead, remembered)
    # By its file's name, since no script of the site leads on from here where it is opened as files.
    yield (
        here,
        replace(
            in_its_unit,
            back=f"{site_map.href(here, page)}index.html",
            other=Link(f"In {CALLED[unit.for_readers.word]}", f"{site_map.href(here, there)}index.html"),
        ),
    )
    yield (
        there,
        replace(
            in_the_other,
            back=f"{site_map.href(there, page)}index.html",
            other=Link(f"In {CALLED[unit.word]}", f"{site_map.href(there, here)}index.html"),
        ),
    )


def hand_out_sheets(
    batch: BatchFigures, figures: Figures, masthead: Masthead, remembered: Remembering = afresh
) -> Placed:
    """The sheet as a file that is handed to some: it leads nowhere."""
    here = site_map.hand_out(batch.project.slug)
    in_its_unit, in_the_other = _sheets(batch, figures, masthead, remembered)
    yield here, in_its_unit
    yield site_map.in_unit(here, batch.project.unit.for_readers.word), in_the_other


@dataclass(frozen=True, slots=True)
class _Around:
    """What a sheet tells besides its batch."""

    supplies: tuple[Supply, ...]
    tools: tuple[Tool, ...]
    credits: tuple[Line, ...]
    settings: Settings
    masthead: Masthead


def _sheets(
    batch: BatchFigures, figures: Figures, masthead: Masthead, remembered: Remembering
) -> tuple[NotesSheet, NotesSheet]:
    """In the unit of the record, and in the other."""
    archive, told = figures.archive, tuple(credits_of(batch.project, figures))
    around = _Around(archive.supplies, archive.tools, told, figures.settings, masthead)
    return remembered(batch.project.slug, _in_both, batch, around)


def _in_both(batch: BatchFigures, around: _Around) -> tuple[NotesSheet, NotesSheet]:
    back = for_back(batch, {supply.slug: supply for supply in around.supplies})
    rounded = rounded_from(batch.project.unit)
    return _sheet(batch, back, around), _sheet(for_readers(batch), back, around, rounded)


def _sheet(batch: BatchFigures, back: ForBack, around: _Around, rounded: str = "") -> NotesSheet:
    project = batch.project
    supplies = {supply.slug: supply for supply in around.supplies}
    tools = {tool.slug: tool for tool in around.tools}
    steps = tuple(_steps(project))
    shelves = back_shelves(back, project, supplies, tools, steps)
    cut, cautions = cut_list(project, supplies), cautions_for(batch, supplies, tools)
    named, larger = (
        tuple(capitalised(told_by_name(tools[slug])) for slug in project.tools),
        larger_than_a_side(project),
    )
    listed = of_cut_list(cut) + (_OF_ROUNDED if rounded else 0.0)
    front = HEIGHT - _OF_FRONT - listed - of_tools_and_cautions(named, (*cautions, *larger))
    return NotesSheet(
        title=project.title,
        sentence=_sentence(project),
        disclosure=disclosure_for(things_named(batch, supplies, tools), around.settings),
        credits=around.credits,
        front=_front(front_view(batch, supplies), front),
        gather_head=f"What to gather for {counted(project.begun, project.thing, project.things)}",
        gather=gather_rows(batch, supplies),
        cut_unit=CALLED[project.unit.word],
        rounded=rounded,
        cut=cut,
        tools=named,
        cautions=cautions,
        larger=larger,
        check_bar=check_bar("check-bar"),
        shelves=shelves,
        steps=steps,
        steps_beside=steps_fit_beside(shelves, steps),
        templates=template_views(project),
        of=around.masthead.name,
        licence=around.masthead.licence,
    )


def _sentence(project: Project) -> str:
    """``14 cards of 4 1/4 × 5 1/2 in, 2 h 40 at the table.``"""
    size = ""
    if project.finished_size:
        unit = project.unit
        high = f"{NBSP}×{NBSP}{show_length(project.height, unit)}" if project.height else ""
        size = f" of {show_size(project.finished_size, unit)}{high}{NBSP}{unit.word}"
    time = f", {show_minutes(project.minutes)} at the table" if project.minutes else ""
    return f"{counted(project.begun, project.thing, project.things)}{size}{time}."


def _front(drawing: Drawing | None, room: float) -> PrintedDrawing | None:
    highest = max(min(room, _HIGHEST_FRONT), _LEAST_FRONT)
    return printed(drawing, _WIDEST_FRONT, highest, _TRUE) if drawing else None


def _steps(project: Project) -> Iterator[PrintedStep]:
    for step in project.steps:
        film = show_film_time(step.film_seconds) if step.film_seconds is not None else ""
        yield PrintedStep(step.sentence, film)
