"""The pages on which batches are found: one for each year, on the first of which all can be filtered."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views import site_map
from batchleaf.views.find.indexed import Indexed
from batchleaf.views.pages import FacetView, FindPage, FoundView, Link
from batchleaf.views.sentence import short_line
from batchleaf.views.words import batches_counted, capitalised, long_date

_SORTS: Final = (
    ("newest", "newest first"),
    ("oldest", "oldest first"),
    ("title", "by title"),
    ("cost", "least cost first"),
    ("sheets", "fewest sheets first"),
    ("time", "least time first"),
)
"""What stands in the address, and what is read; the last three where some batch has such a number."""
_COLUMNS: Final = 4
_ROWS_OF_HEAD: Final = 2
_FIRST: Final = ("today", "thing", "sheet", "cost", "series", "occasion")
"""The facets that stand first; the others follow in their order."""


def find_pages(index: Indexed, figures: Figures) -> Iterator[tuple[str, FindPage]]:
    """Address and page, the newest year first, which is the one that links lead to."""
    years = tuple(dict.fromkeys(batch.project.date.year for batch in index.batches))
    measured = {one.view.key for one in index.measured}
    sorts = tuple(one for one in _SORTS if one[0] in measured or one in _SORTS[:3])
    for year in years:
        here = site_map.find(year, years)
        batches = [batch for batch in index.batches if batch.project.date.year == year]
        page = FindPage(
            title="Find a batch",
            sentence=(f"{capitalised(batches_counted(len(index.batches)))}, by what they are.",),
            year=str(year),
            years=tuple(
                Link(str(one), site_map.href(here, site_map.find(one, years)))
                for one in years
                if len(years) > 1
            ),
            entries=tuple(_found(batch, figures, here) for batch in batches),
        )
        if here == site_map.FIND:
            compare = site_map.href(here, site_map.COMPARE)
            data = site_map.href(here, site_map.FIND_DATA)
            page = replace(
                page, columns=in_columns(_in_order(index)), sorts=sorts, data=data, compare=compare
            )
        yield here, page


def _in_order(index: Indexed) -> tuple[FacetView, ...]:
    views = [*(one.view for one in index.chosen), *(one.view for one in index.measured)]
    order = {key: at for at, key in enumerate(_FIRST)}
    return tuple(sorted(views, key=lambda view: order.get(view.key, len(order))))


def in_columns(facets: Sequence[FacetView]) -> tuple[tuple[FacetView, ...], ...]:
    """Side by side in their order, in columns of about the same height."""
    rows = [len(facet.choices) - facet.beyond + _ROWS_OF_HEAD for facet in facets]
    columns: list[list[FacetView]] = [[] for _ in range(_COLUMNS)]
    for facet, above, own in zip(facets, accumulate(rows, initial=0), rows, strict=False):
        columns[min((2 * above + own) * _COLUMNS // (2 * sum(rows)), _COLUMNS - 1)].append(facet)
    return tuple(tuple(column) for column in columns if column)


def _found(batch: BatchFigures, figures: Figures, here: str) -> FoundView:
    project = batch.project
    return FoundView(
        title=project.title,
        href=site_map.href(here, site_map.batch(project.slug)),
        line=short_line(batch, figures.settings.currency),
        date=long_date(project.date),
        date_iso=project.date.isoformat(),
    )
