"""What the site is called and where it will stand on the web."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Masthead:
    """``address``: the site's own on the web, which ends in a slash; empty while it has none.

    ``author``: who makes it, or nothing.
    """

    name: str
    address: str = ""
    author: str = ""
