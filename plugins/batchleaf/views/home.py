"""The gallery: what was made, newest first; after it, what is to come."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.measure.display import show_share
from batchleaf.views import site_map
from batchleaf.views.more import more_links
from batchleaf.views.pages import ComingEntry, GalleryEntry, HomePage, Line, Link
from batchleaf.views.pictures import Prepared, cover
from batchleaf.views.sentence import needs_line, short_line
from batchleaf.views.stand_in import stand_in
from batchleaf.views.tables.batches import batches_table
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
    made = tuple(batch for batch in batches if batch.made)
    return HomePage(
        title=_title(len(made)),
        sentence=_sentence(made, figures),
        entries=gallery(batches, figures, prepared, site_map.HOME),
        series=tuple(
            Link(one.title, site_map.href(site_map.HOME, site_map.series(one.slug)))
            for one in figures.archive.series
        ),
        more=more_links(figures, site_map.HOME),
        to_come=to_come(batches, figures, site_map.HOME),
        csv=batches_table(figures).link(site_map.HOME),
    )


def gallery(
    batches: Iterable[BatchFigures], figures: Figures, prepared: Prepared, here: str
) -> tuple[GalleryEntry, ...]:
    """What was made of ``batches``, which are the oldest first, turned round."""
    made = [batch for batch in batches if batch.made]
    return tuple(gallery_entry(batch, figures, prepared, here) for batch in reversed(made))


def to_come(batches: Iterable[BatchFigures], figures: Figures, here: str) -> tuple[ComingEntry, ...]:
    """What of ``batches`` is cut, planned or an idea, nearest date first as they are."""
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    return tuple(
        ComingEntry(
            batch=Link(batch.project.title, site_map.href(here, site_map.batch(batch.project.slug))),
            line=needs_line(batch, supplies),
            date=long_date(batch.project.date),
            date_iso=batch.project.date.isoformat(),
        )
        for batch in batches
        if not batch.made
    )


def gallery_entry(batch: BatchFigures, figures: Figures, prepared: Prepared, here: str) -> GalleryEntry:
    """One batch for the gallery of the page at ``here``."""
    project = batch.project
    picture = cover(project, prepared, here)
    supplies = {supply.slug: supply for supply in figures.archive.supplies}
    return GalleryEntry(
        title=project.title,
        href=site_map.href(here, site_map.batch(project.slug)),
        picture=picture,
        line=short_line(batch, figures.settings.currency),
        date=long_date(project.date),
        date_iso=project.date.isoformat(),
        stand_in=() if picture else stand_in(batch, supplies),
    )


def _title(made: int) -> str:
    if not made:
        return "Batches"
    return f"{capitalised(number_word(made))} {'batch' if made == 1 else 'batches'}"


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
    cuts = [cut for batch in batches if batch.taken for cut in batch.project.cut]
    return (
        sum(cut.count for cut in cuts if cut.scrap is None),
        sum(cut.count for cut in cuts if cut.scrap is not None),
    )
