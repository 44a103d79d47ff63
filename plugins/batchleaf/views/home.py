"""The gallery: every batch, newest first."""

from __future__ import annotations

from fractions import Fraction

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.measure.display import show_share
from batchleaf.views import site_map
from batchleaf.views.pages import GalleryEntry, HomePage, Line, Link
from batchleaf.views.pictures import Prepared, cover
from batchleaf.views.sentence import short_line
from batchleaf.views.words import (
    capitalised,
    counted,
    long_date,
    month_and_year,
    number_word,
    sheets_and_scraps_in_words,
)


def home_page(figures: Figures, prepared: Prepared) -> HomePage:
    """All batches of the archive."""
    batches = tuple(figures.batches.values())
    word = number_word(len(batches))
    return HomePage(
        title=f"{capitalised(word)} {'batch' if len(batches) == 1 else 'batches'}",
        sentence=_sentence(tuple(batch for batch in batches if batch.made), figures),
        entries=tuple(gallery_entry(batch, figures, prepared, site_map.HOME) for batch in reversed(batches)),
        series=tuple(
            Link(one.title, site_map.href(site_map.HOME, site_map.series(one.slug)))
            for one in figures.archive.series
        ),
    )


def gallery_entry(batch: BatchFigures, figures: Figures, prepared: Prepared, here: str) -> GalleryEntry:
    """One batch for the gallery of the page at ``here``."""
    project = batch.project
    return GalleryEntry(
        title=project.title,
        href=site_map.href(here, site_map.batch(project.slug)),
        picture=cover(project, prepared, here),
        line=short_line(batch, figures.settings.currency),
        date=long_date(project.date),
        date_iso=project.date.isoformat(),
    )


def _sentence(batches: tuple[BatchFigures, ...], figures: Figures) -> Line:
    if not batches:
        return ("Nothing has been made yet." if figures.ledger else "Nothing is published yet.",)
    made = sum(batch.project.finished for batch in batches)
    since = month_and_year(min(batch.project.date for batch in batches))
    papers = [batch.paper for batch in batches if batch.paper]
    cut = sum((paper.cut for paper in papers), Fraction(0))
    used = sum((paper.used for paper in papers), Fraction(0))
    taken = sheets_and_scraps_in_words(*sheets_and_scraps(batches))
    start = f"{counted(made, 'piece', 'pieces')} since {since} from {taken}."
    if not cut:
        return (start,)
    how = site_map.href(site_map.HOME, site_map.HOW, "paper")
    return (f"{start} Of all the paper cut, ", Link(show_share(used, cut), how), " is in finished pieces.")


def sheets_and_scraps(batches: tuple[BatchFigures, ...]) -> tuple[int, int]:
    """How many whole sheets and how many odd pieces the batches took."""
    cuts = [cut for batch in batches if batch.made for cut in batch.project.cut]
    return (
        sum(cut.count for cut in cuts if cut.scrap is None),
        sum(cut.count for cut in cuts if cut.scrap is not None),
    )
