"""Where the finished makes of a batch are: as a drawn row, and line by line."""

from __future__ import annotations

import string
from collections import Counter
from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from batchleaf.core.cost import Cost
from batchleaf.core.figures import BatchFigures
from batchleaf.core.finished import Finished, finished_of
from batchleaf.facts import Project, Went, Whereabouts
from batchleaf.measure.money import Currency, rounded
from batchleaf.views import site_map
from batchleaf.views.drawing.makes_row import MOST_MARKS, Group, draw_makes_row
from batchleaf.views.drawing.shapes import Drawing
from batchleaf.views.pages import Link, WentRow, WentView
from batchleaf.views.tables.finished import went_table
from batchleaf.views.words import capitalised, counted, listed, money, short_date

_WENT: Final = {
    Whereabouts.KEPT: "kept",
    Whereabouts.GIVEN: "given",
    Whereabouts.SOLD: "sold",
    Whereabouts.SAMPLE: "put by as samples",
    Whereabouts.CLASS: "used in class",
}
NOT_TOLD: Final = "not told"
_LETTERS: Final = string.ascii_lowercase


def went_view(batch: BatchFigures, currency: Currency) -> WentView | None:
    """The section of a batch's page; ``None`` where no line says anything."""
    project = batch.project
    if not project.went:
        return None
    finished = finished_of(project)
    letters = _letters(len(project.went) + bool(finished.not_told))
    rows = [_row(one, letter, currency) for one, letter in zip(project.went, letters, strict=False)]
    if finished.not_told:
        rows.append(WentRow(letters[-1], capitalised(NOT_TOLD), "", "", "", f"{finished.not_told:,}", "", ""))
    here = site_map.batch(project.slug)
    return WentView(
        drawing=_drawing(project, finished, letters),
        caption=_caption(project, finished),
        currency=currency.sign if finished.sold else "",
        rows=tuple(rows),
        total_label="All",
        total_count=f"{finished.finished:,}",
        total_value=money(finished.brought, currency) if finished.sold else "",
        all_of_them=Link("All finished makes", site_map.href(here, site_map.FINISHED)),
        csv=went_table(batch, currency).link(here),
    )


def _letters(count: int) -> tuple[str, ...]:
    """``a``, ``b`` … ``z``, then ``aa``, ``ab`` …: as many as there are lines."""
    singles = [*_LETTERS, *(f"{first}{second}" for first in _LETTERS for second in _LETTERS)]
    return tuple(singles[i] if i < len(singles) else "" for i in range(count))


def _row(went: Went, letter: str, currency: Currency) -> WentRow:
    sold = went.where is Whereabouts.SOLD
    return WentRow(
        letter=letter,
        where=capitalised(went.where.value),
        words=went.words,
        date=short_date(went.date) if went.date else "",
        date_iso=went.date.isoformat() if went.date else "",
        count=f"{went.count:,}",
        one=_of_one(went, currency) if sold else "",
        value=money(Cost(went.value or 0, complete=went.value is not None), currency) if sold else "",
    )


def _of_one(went: Went, currency: Currency) -> str:
    """What was paid for each; ``about`` where all were paid for together and it does not come out even."""
    if went.value is None:
        return ""
    one = rounded(Fraction(went.value, went.count))
    return currency.show(one) if one * went.count == went.value else f"about {currency.show(one)}"


# --- the row ---------------------------------------------------------------------


def _drawing(project: Project, finished: Finished, letters: Sequence[str]) -> Drawing:
    lines = [(letter, one.count, one.where) for one, letter in zip(project.went, letters, strict=False)]
    groups = [Group(letter, count, kept=where is Whereabouts.KEPT) for letter, count, where in lines]
    said = [f"{letter}, {count:,} {_way(where, count)}" for letter, count, where in lines]
    if finished.not_told:
        groups.append(Group(letters[-1], finished.not_told, told=False))
        said.append(f"{letters[-1]}, {finished.not_told:,} {NOT_TOLD}")
    size = project.finished_size
    return draw_makes_row(
        groups,
        aspect=float(size.width / size.height) if size else 1.0,
        id="makes-row",
        title=f"{_all_of(project)}, in a row",
        description=f"{'; '.join(said)}.",
    )


def _caption(project: Project, finished: Finished) -> str:
    many = project.finished > MOST_MARKS
    marks = f"the more {project.things}, the longer the mark" if many else f"one for each {project.thing}"
    said = [marks, "the letters are those of the list"]
    if any(went.where is Whereabouts.KEPT for went in project.went):
        said.append("what is kept is hatched")
    if finished.not_told:
        said.append("what is not told is dotted")
    return f"{capitalised('; '.join(said))}."


def _all_of(project: Project) -> str:
    return counted(project.finished, project.thing, project.things)


# --- in words ---------------------------------------------------------------------


def ways_in_words(counts: Sequence[tuple[Whereabouts, int]]) -> str:
    """``8 were given, 3 sold and 2 kept``."""
    first, *rest = [f"{count:,} {_way(where, count)}" for where, count in counts]
    number, _, way = first.partition(" ")
    verb = "was" if counts[0][1] == 1 else "were"
    return listed([f"{number} {verb} {way}", *rest])


def went_counts(project: Project) -> dict[Whereabouts, int]:
    """How many makes went each way, the most first."""
    counts = Counter[Whereabouts]()
    for one in project.went:
        counts[one.where] += one.count
    return dict(counts.most_common())


def _way(where: Whereabouts, count: int) -> str:
    return "put by as a sample" if where is Whereabouts.SAMPLE and count == 1 else _WENT[where]
