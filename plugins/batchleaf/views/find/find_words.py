"""All words by which a batch is found, and how they are compared; the page's script does the same."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator, Sequence

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views.find.indexed import Indexed
from batchleaf.views.sentence import short_line


def plain(text: str) -> str:
    """Small letters without accents, with spaces that are all of one kind."""
    apart = unicodedata.normalize("NFKD", text.lower())
    return "".join(one for one in apart if not unicodedata.combining(one)).replace("\u00a0", " ")


def found_by(words: Sequence[str], index: Indexed, figures: Figures) -> Iterator[BatchFigures]:
    """The batches of which every word is a part of what is told of them, newest first."""
    wanted = [plain(word) for word in words]
    for at, batch in enumerate(index.batches):
        text = plain(" ".join(_told(at, index, figures)))
        if all(word in text for word in wanted):
            yield batch


def _told(at: int, index: Indexed, figures: Figures) -> Iterator[str]:
    batch = index.batches[at]
    yield from (batch.project.title, short_line(batch, figures.settings.currency))
    yield batch.project.date.isoformat()
    for facet in index.chosen:
        yield from (facet.view.choices[choice].text for choice in facet.true_of[at])
