"""The page at an old address."""

from __future__ import annotations

from batchleaf.facts import Project
from batchleaf.views import site_map
from batchleaf.views.pages import Link, MovedPage


def moved_page(project: Project, old: str) -> MovedPage:
    """Leads from the address ``old`` to where the batch is now."""
    href = site_map.href(site_map.batch(old), site_map.batch(project.slug))
    return MovedPage(project.title, ("This batch has a new address: ", Link(project.title, href), "."), href)
