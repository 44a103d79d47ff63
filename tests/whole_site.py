"""All pages and files of an archive as models, for tests that look at what they say."""

from __future__ import annotations

from collections.abc import Iterator

from batchleaf.core.figures import Figures
from batchleaf.views.site import (
    PlacedData,
    PlacedPage,
    data_of_all,
    data_of_batch,
    pages_of_all,
    pages_of_batch,
)


def all_pages(figures: Figures) -> Iterator[PlacedPage]:
    """Every page; notes are text, and photos are not there."""
    yield from pages_of_all(figures, {})
    for batch in figures.batches.values():
        yield from pages_of_batch(batch, figures, {}, str)


def all_data(figures: Figures) -> Iterator[PlacedData]:
    """Every file beside them."""
    for batch in figures.batches.values():
        yield from data_of_batch(batch, figures, is_one_of_several=len(figures.batches) > 1)
    yield from data_of_all(figures, {})
