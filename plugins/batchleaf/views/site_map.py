"""The address of each page, and how one page refers to another.

Addresses are relative to the site's root and end in a slash: ``projects/<slug>/``.
"""

from __future__ import annotations

import posixpath
from collections.abc import Sequence
from typing import Final

HOME: Final = ""
DRAWER: Final = "drawer/"
OFFCUTS: Final = "offcuts/"
COLOURS: Final = "colours/"
BENCH: Final = "bench/"
SERIES: Final = "series/"
FINISHED: Final = "finished/"
PRICES: Final = "prices/"
BECOME: Final = "could-become/"
TO_MAKE: Final = "to-make/"
TODAY: Final = "today/"
YEAR: Final = "year/"
TABLE: Final = "table/"
HOW: Final = "how/"
PHOTOS: Final = "photos/"
HAND_OUTS: Final = "hand-outs/"
DESIGNS: Final = "designs/"
COMPARE: Final = "side-by-side/"
TOLD: Final = "told.js"
FIND: Final = "find/"
FIND_DATA: Final = f"{FIND}batches.js"
OTHER_SHEETS: Final = "other-sheets/"
FIGURES: Final = "figures.json"
FEED: Final = "feed.xml"
VIDEO: Final = "video.txt"


def batch(slug: str) -> str:
    """The address of a batch."""
    return f"projects/{slug}/"


def notes(slug: str) -> str:
    """The address of a batch's companion notes."""
    return f"{batch(slug)}notes/"


def hand_out(slug: str) -> str:
    """Where companion notes lie that no page leads to."""
    return f"{HAND_OUTS}{slug}/"


def in_unit(address: str, unit: str) -> str:
    """Where companion notes lie in another unit than that of their record, beside these."""
    return f"{address}{unit}/"


def other_sheets(slug: str) -> str:
    """Where a batch is planned on other sheets."""
    return f"{batch(slug)}{OTHER_SHEETS}"


def other_sheet(number: int) -> str:
    """The anchor of a size on that page; sizes count from 1."""
    return f"sheet-{number}"


def find(year: int, years: Sequence[int]) -> str:
    """Where the batches of a year are listed; the first of ``years`` stands where links lead."""
    return FIND if year == years[0] else f"{FIND}{year}/"


def design(slug: str) -> str:
    """The address of a design that stands alone."""
    return f"{DESIGNS}{slug}/"


def item(slug: str) -> str:
    """The address of a supply in the drawer."""
    return f"{DRAWER}{slug}/"


def tool(slug: str) -> str:
    """The anchor of a tool on the page of the bench."""
    return f"tool-{slug}"


def step(number: int) -> str:
    """The anchor of a step on the page of its batch; steps count from 1."""
    return f"step-{number}"


def series(slug: str) -> str:
    """The address of a series."""
    return f"{SERIES}{slug}/"


def source(address: str) -> str:
    """The Markdown file that MkDocs turns into the page at ``address``."""
    return f"{address}index.md"


def href(here: str, there: str, anchor: str = "") -> str:
    """How the page at ``here`` refers to ``there``: always relative, so that any sub-path works."""
    way = posixpath.relpath(f"/{there}", f"/{here}")
    if there == "" or there.endswith("/"):
        way = "./" if way == "." else f"{way}/"
    return f"{way}#{anchor}" if anchor else way
