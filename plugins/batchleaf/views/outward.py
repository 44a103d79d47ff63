"""What a page of a batch brings for elsewhere: the text for a video, and the batch for machines."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from batchleaf.core.figures import BatchFigures, Figures
from batchleaf.views import site_map
from batchleaf.views.how_to import how_to
from batchleaf.views.masthead import Masthead
from batchleaf.views.pages import BatchPage, Link, VideoView
from batchleaf.views.video_text import NO_VIDEOS, Videos, length_note


@dataclass(frozen=True, slots=True)
class Outward:
    """Where the site will stand, and the texts for the videos of its batches."""

    masthead: Masthead
    videos: Videos


AT_HOME: Final = Outward(Masthead(""), NO_VIDEOS)
"""A site without an address, of which nothing goes out."""


def with_words_out(page: BatchPage, batch: BatchFigures, figures: Figures, out: Outward) -> BatchPage:
    """The page with both."""
    text = out.videos.get(batch.project.slug)
    note = length_note(text, figures.settings.video_text) if text else ""
    video = VideoView(text.text, Link("as a file", site_map.VIDEO), note) if text else None
    return replace(page, video=video, how_to=how_to(page, batch, figures, out.masthead))
