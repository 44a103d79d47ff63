"""The index of series, and each series in order with its totals."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.cost import NOTHING, Cost
from batchleaf.core.cutting.plan import CuttingPlan
from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.facts import Series
from batchleaf.measure.money import Currency
from batchleaf.views import site_map
from batchleaf.views.home import gallery, sheets_and_scraps, to_come
from batchleaf.views.pages import Line, Link, Picture, SeriesBatchRow, SeriesIndexPage, SeriesPage, SeriesRow
from batchleaf.views.pictures import Prepared, cover
from batchleaf.views.tables.batches import series_table
from batchleaf.views.trends import trends
from batchleaf.views.unpriced import is_whole
from batchleaf.views.words import (
    capitalised,
    counted,
    listed,
    money,
    money_said,
    number_word,
    sheets_and_scraps_in_words,
    short_date,
)

Batches = tuple[BatchFigures, ...]


def series_index_page(figures: Figures, prepared: Prepared) -> SeriesIndexPage:
    """All series."""
    rows = tuple(_index_row(one, figures, prepared) for one in figures.archive.series)
    number = number_word(len(rows))
    return SeriesIndexPage(
        title="Series",
        sentence=(f"{capitalised(number)} series of batches that belong together.",),
        rows=rows,
    )


def _index_row(series: Series, figures: Figures, prepared: Prepared) -> SeriesRow:
    batches = figures.in_series(series.slug)
    return SeriesRow(
        series=Link(series.title, site_map.href(site_map.SERIES, site_map.series(series.slug))),
        line=_made(batches),
        about=series.about,
        picture=_newest_cover(batches, prepared),
        totals=_totals(batches, figures.settings.currency),
        trends=trends(batches, figures.settings.currency, series),
    )


def _totals(batches: Batches, currency: Currency) -> str:
    """``From 32 sheets and 13 scraps, for at least 28.40 €.``"""
    made = tuple(batch for batch in batches if batch.made and batch.project.cut)
    if not made:
        return ""
    taken = sheets_and_scraps_in_words(*sheets_and_scraps(made))
    costs = [Cost(batch.cost.batch.known, is_whole(batch)) for batch in made if batch.cost]
    spent = f", for {money_said(sum(costs, NOTHING), currency)}" if costs else ""
    return f"From {taken}{spent}."


def _newest_cover(batches: Batches, prepared: Prepared) -> Picture | None:
    made = [batch for batch in batches if batch.made]
    covers = (cover(batch.project, prepared, site_map.SERIES) for batch in reversed(made))
    return next((picture for picture in covers if picture), None)


def _made(batches: Batches) -> str:
    made = [batch for batch in batches if batch.made]
    in_hand = sum(batch.project.in_hand for batch in batches)
    planned = len(batches) - len(made) - in_hand
    pieces = sum(batch.project.finished for batch in made)
    others = [f"{count} {so_far}" for count, so_far in ((in_hand, "cut"), (planned, "planned")) if count]
    also = f", and {listed(others)}" if others else ""
    return f"{counted(pieces, 'piece', 'pieces')} in {counted(len(made), 'batch', 'batches')}{also}."


def series_page(series: Series, figures: Figures, prepared: Prepared) -> SeriesPage:
    """One series."""
    batches = figures.in_series(series.slug)
    here = site_map.series(series.slug)
    currency = figures.settings.currency
    return SeriesPage(
        title=series.title,
        sentence=_sentence(batches),
        about=series.about,
        currency=currency.sign,
        entries=gallery(batches, figures, prepared, here),
        to_come=to_come(batches, figures, here),
        rows=tuple(_row(place, batch, here, currency) for place, batch in enumerate(batches, 1)),
        total=_total(batches, currency),
        csv=series_table(series, figures).link(here),
    )


def _sentence(batches: Batches) -> Line:
    made = tuple(batch for batch in batches if batch.made)
    taken = sheets_and_scraps_in_words(*sheets_and_scraps(made))
    if not any(batch.project.cut for batch in made):
        return (_made(batches),)
    return (f"{_made(batches).removesuffix('.')}; made from {taken}.",)


def _row(place: int, batch: BatchFigures, here: str, currency: Currency) -> SeriesBatchRow:
    project = batch.project
    most = next(_could_have((batch,)), None)
    return SeriesBatchRow(
        ordinal=str(place),
        batch=Link(project.title, site_map.href(here, site_map.batch(project.slug))),
        date=short_date(project.date),
        date_iso=project.date.isoformat(),
        makes=_makes(batch),
        sheets=_sheets((batch,)),
        could_have=str(most.makes) if most else "",
        cost=_cost((batch,), currency) if batch.taken and batch.cost and batch.cost.counted else "",
        one=money(Cost(batch.one, is_whole(batch)), currency) if batch.one is not None else "",
    )


def _makes(batch: BatchFigures) -> str:
    if batch.project.in_hand:
        return "cut"
    return str(batch.project.finished) if batch.taken else "planned"


def _sheets(batches: Batches) -> str:
    """``12``, or ``12 + 3 scraps``; nothing before the first is cut."""
    if not any(batch.taken for batch in batches):
        return ""
    sheets, scraps = sheets_and_scraps(batches)
    return f"{sheets} + {counted(scraps, 'scrap', 'scraps')}" if scraps else str(sheets)


def _could_have(batches: Batches) -> Iterator[CuttingPlan]:
    for batch in batches:
        made = batch.made
        if made and batch.cutting and batch.cutting.most:
            yield batch.cutting.most


def _total(batches: Batches, currency: Currency) -> SeriesBatchRow:
    made = tuple(batch for batch in batches if batch.taken)
    return SeriesBatchRow(
        ordinal="",
        batch=Link("Together", "#table"),
        date="",
        date_iso="",
        makes=str(sum(batch.project.finished for batch in made)),
        sheets=_sheets(made),
        could_have=str(sum(most.makes for most in _could_have(made))),
        cost=_cost(made, currency),
        one="",
    )


def _cost(made: Batches, currency: Currency) -> str:
    """What the batches cost together, where that is told."""
    costs = [Cost(batch.cost.batch.known, is_whole(batch)) for batch in made if batch.cost]
    return money(sum(costs, NOTHING), currency) if costs else ""
