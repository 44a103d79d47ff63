"""The year at the table: what was made, where the paper went, what the drawer held, year by year."""

from __future__ import annotations

import string
from collections.abc import Iterator, Sequence
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.core.years import Made, Year, years_of
from batchleaf.facts import Settings
from batchleaf.measure.durations import show_minutes
from batchleaf.measure.money import share
from batchleaf.views import site_map
from batchleaf.views.areas import area_unit
from batchleaf.views.drawing.charts.makes import Pile, draw_makes
from batchleaf.views.drawing.charts.paper import Share, draw_paper
from batchleaf.views.pages import (
    Line,
    Link,
    MadeInYear,
    PaperOfYear,
    PaperRow,
    YearBatchRow,
    YearsPage,
    YearView,
)
from batchleaf.views.tables.years import months_table
from batchleaf.views.words import NBSP, capitalised, counted, day_of_year, listed, month_name
from batchleaf.views.years_money import drawer_of_year, money_in_words, used_in_year

HERE: Final = site_map.YEAR


def years_page(figures: Figures) -> YearsPage:
    """All years of the records, of which there is at least one."""
    newest, *earlier = reversed(years_of(figures))
    return YearsPage(
        title="The year at the table",
        sentence=(f"In {newest.number}: ", *_sentence(newest, figures.settings)),
        years=(
            _view(newest, figures, sentence=()),
            *(_view(year, figures, sentence=_opening(year, figures)) for year in earlier),
        ),
        csv=months_table(figures).link(HERE),
    )


def _anchor_of(year: Year) -> str:
    return f"y{year.number}"


def _view(year: Year, figures: Figures, sentence: Line) -> YearView:
    return YearView(
        anchor=_anchor_of(year),
        heading=str(year.number),
        sentence=sentence,
        made=_made(year) if year.made.batches else None,
        paper=_paper(year, figures.settings),
        drawer=drawer_of_year(year, year.money, figures.settings.currency) if year.money else None,
        used=used_in_year(year, year.money, figures) if year.money and year.money.drawn else None,
    )


# --- in a sentence ----------------------------------------------------------------


def _opening(year: Year, figures: Figures) -> Line:
    first, *rest = _sentence(year, figures.settings)
    return (capitalised(first) if isinstance(first, str) else first, *rest)


def _sentence(year: Year, settings: Settings) -> Line:
    """Made, how long, how much of the paper is in it; what was spent and used, what is left."""
    return (*_made_in_words(year.made), *_paper_in_words(year.made), ".", *_money_in_words(year, settings))


def _made_in_words(made: Made) -> Line:
    if not made.batches:
        return ("nothing was made",)
    begun = f" of {made.begun:,} begun" if made.spoiled else ""
    said = [
        counted(len(made.batches), "batch", "batches"),
        f"{counted(made.finished, 'make', 'makes')}{begun}",
    ]
    if made.minutes:
        said.append(f"{show_minutes(made.minutes)} at the table{_without(made)}")
    return (", ".join(said),)


def _without(made: Made) -> str:
    """A sum of times that is not whole says so."""
    return f" (without {counted(made.untimed, 'batch', 'batches')})" if made.untimed else ""


def _paper_in_words(made: Made) -> Line:
    paper = made.paper
    if paper is None:
        return ()
    how = site_map.href(HERE, site_map.HOW, "paper")
    in_makes = f"{share(100, (paper.used, paper.kept, paper.waste))[0]}{NBSP}%"
    return ("; ", Link(in_makes, how), " of the paper cut is in finished makes")


def _money_in_words(year: Year, settings: Settings) -> Line:
    if year.money is None:
        return ()
    how = site_map.href(HERE, site_map.HOW, "years")
    return (" ", *money_in_words(year, year.money, settings.currency, how))


# --- what was made ------------------------------------------------------------------


def _made(year: Year) -> MadeInYear:
    made = year.made
    letters = dict(zip((one.project.slug for one in made.batches), _letters(len(made.batches)), strict=True))
    return MadeInYear(
        anchor=f"made-{year.number}",
        chart=draw_makes(
            [[_pile(batch, letters) for batch in month.batches] for month in year.months],
            id=f"makes-{year.number}",
            title=f"Makes by month, {year.number}",
            description=f"{'; '.join(_months_in_words(year, letters))}.",
        ),
        caption=_caption(made, letters),
        rows=tuple(_row(batch, letters) for batch in made.batches),
        total_label=counted(len(made.batches), "batch", "batches"),
        total_makes=f"{made.finished:,}",
        total_spoiled=f"{made.spoiled:,}" if made.spoiled else "",
        total_time=show_minutes(made.minutes) if made.minutes else "",
        notes=tuple(_notes(made)),
    )


def _letters(count: int) -> Sequence[str]:
    """One for each batch; none where there are more batches than letters."""
    return string.ascii_lowercase[:count] if count <= len(string.ascii_lowercase) else [""] * count


def _pile(batch: BatchFigures, letters: dict[str, str]) -> Pile:
    project = batch.project
    return Pile(letters[project.slug], project.finished, project.begun - project.finished)


def _months_in_words(year: Year, letters: dict[str, str]) -> Iterator[str]:
    for number, month in enumerate(year.months, 1):
        if month.batches and all(letters.values()):
            said = [
                f"{letters[batch.project.slug]}, {_of_begun(batch.project.finished, batch.project.begun)}"
                for batch in month.batches
            ]
            yield f"{month_name(number)}: {', '.join(said)}"
        elif month.batches:
            batches = counted(len(month.batches), "batch", "batches")
            yield f"{month_name(number)}: {batches}, {_of_begun(month.finished, month.begun)}"


def _of_begun(finished: int, begun: int) -> str:
    return str(finished) if finished == begun else f"{finished} of {begun}"


def _caption(made: Made, letters: dict[str, str]) -> str:
    lettered = ", with its letter from the list" if all(letters.values()) else ""
    spoiled = " On top, with a dotted edge, lies what was spoiled." if made.spoiled else ""
    return f"Each batch is a pile of its makes{lettered}; over it stands how many are finished.{spoiled}"


def _row(batch: BatchFigures, letters: dict[str, str]) -> YearBatchRow:
    project = batch.project
    spoiled = project.begun - project.finished
    return YearBatchRow(
        letter=letters[project.slug],
        date=day_of_year(project.date),
        date_iso=project.date.isoformat(),
        batch=Link(project.title, site_map.href(HERE, site_map.batch(project.slug))),
        makes=f"{project.finished:,}",
        spoiled=f"{spoiled:,}" if spoiled else "",
        time="" if project.minutes is None else show_minutes(project.minutes),
    )


def _notes(made: Made) -> Iterator[str]:
    if made.untimed and made.minutes:
        of = "of one batch" if made.untimed == 1 else f"of {made.untimed:,} batches"
        yield f"The time at the table is not told {of}."


# --- paper -----------------------------------------------------------------------------

_ROWS: Final = (
    ("part", "In finished makes", "in makes"),
    ("keep", "Kept", "kept"),
    ("waste", "Waste", "waste"),
)


def _paper(year: Year, settings: Settings) -> PaperOfYear | None:
    paper = year.made.paper
    if paper is None:
        return None
    areas = (paper.used, paper.kept, paper.waste)
    unit = area_unit(settings.unit, paper.cut)
    *shown, whole = unit.shown(areas)
    shares = [f"{one}{NBSP}%" for one in share(100, areas)]
    rows = list(zip(_ROWS, areas, shown, shares, strict=True))
    said = [f"{word} {figure} {unit.name}, {part}" for (_, _, word), area, figure, part in rows if area]
    return PaperOfYear(
        anchor=f"paper-{year.number}",
        chart=draw_paper(
            [
                Share(role, f"{word} {part}", figure, float(area))
                for (role, _, word), area, figure, part in rows
            ],
            f"{whole}{NBSP}{unit.name}",
            id=f"strip-{year.number}",
            title=f"The paper cut in {year.number} as a strip",
            description=f"Of {whole} {unit.name}: {listed(said)}.",
        ),
        unit=unit.name,
        rows=tuple(PaperRow(label, figure, part) for (_, label, _), _, figure, part in rows),
        total=PaperRow("Cut", whole, f"100{NBSP}%"),
    )
