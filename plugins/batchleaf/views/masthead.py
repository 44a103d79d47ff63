"""What the site is called and where it will stand on the web."""

from __future__ import annotations

from dataclasses import dataclass

from batchleaf.measure.licences import Licence


@dataclass(frozen=True, slots=True)
class Masthead:
    """``address``: the site's own on the web, which ends in a slash; empty while it has none.

    ``author``: who makes it, or nothing. ``licence``: what others may do with its texts and
    pictures; ``None`` where the maker says nothing of it.
    """

    name: str
    address: str = ""
    author: str = ""
    licence: Licence | None = None
