"""The page on which a reader lays batches side by side."""

from __future__ import annotations

from typing import Final

from batchleaf.views import site_map
from batchleaf.views.pages import ComparePage, Link

COMPARE_PAGE: Final = ComparePage(
    title="Side by side",
    sentence=(
        "Two to four batches, chosen where they are ",
        Link("found", site_map.href(site_map.COMPARE, site_map.FIND)),
        ".",
    ),
    root=site_map.href(site_map.COMPARE, site_map.HOME),
)
"""The same in every archive."""
