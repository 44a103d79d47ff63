"""Page models to HTML: one template for each kind of page.

Everything that comes from a record is escaped by the environment. The one
exception is ``BatchPage.notes_html``, which is HTML by contract.
"""

from __future__ import annotations

import html
import re
from html.parser import HTMLParser
from pathlib import Path
from typing import Final, TypedDict

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from markupsafe import Markup

from batchleaf.render import sizes
from batchleaf.views.pages import (
    BatchPage,
    BecomePage,
    BenchPage,
    ColoursPage,
    ComparePage,
    DesignPage,
    DrawerPage,
    FindPage,
    FinishedPage,
    HomePage,
    HowPage,
    InBoth,
    ItemPage,
    MovedPage,
    OffcutsPage,
    OtherSheetsPage,
    Page,
    PricesPage,
    ProblemsPage,
    SeriesIndexPage,
    SeriesPage,
    TodayPage,
    ToMakePage,
    YearsPage,
)

TEMPLATES: Final = Path(__file__).parent / "templates"
THEME: Final = Path(__file__).parent / "theme"
"""The folder that goes in front of the theme's own."""

_TEMPLATE_OF: Final[dict[type, str]] = {
    HomePage: "home.html",
    BatchPage: "batch.html",
    DrawerPage: "drawer.html",
    BenchPage: "bench.html",
    ItemPage: "item.html",
    FindPage: "find.html",
    BecomePage: "become.html",
    ComparePage: "compare.html",
    DesignPage: "design.html",
    ToMakePage: "to_make.html",
    TodayPage: "today.html",
    ColoursPage: "colours.html",
    FinishedPage: "finished.html",
    PricesPage: "prices.html",
    OffcutsPage: "offcuts.html",
    OtherSheetsPage: "other_sheets.html",
    SeriesIndexPage: "series_index.html",
    SeriesPage: "series.html",
    YearsPage: "years.html",
    HowPage: "how.html",
    ProblemsPage: "problems.html",
    MovedPage: "moved.html",
}


class TocToken(TypedDict):
    """One heading, in the form that MkDocs reads; ``name`` is escaped."""

    level: int
    id: str
    name: str
    children: list[TocToken]


def environment() -> Environment:
    """The templates' own environment: MkDocs' escapes nothing."""
    made = Environment(
        loader=FileSystemLoader(TEMPLATES),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_in_both,
    )
    made.filters["as_written"] = str
    made.filters["number"] = _number
    made.tests["in_both"] = lambda value: isinstance(value, InBoth)
    made.globals["sizes"] = sizes
    return made


def _number(value: float) -> str:
    """A coordinate of a drawing: a hundredth is finer than any screen."""
    return f"{value:.2f}".replace(".00", "")


def _in_both(value: object) -> object:
    """Words with another wording for the other unit bring it along; all else is written as it is."""
    if not isinstance(value, InBoth):
        return value
    before, written, other, after = value.pieces
    template = ENVIRONMENT.get_template("in_both.html")
    return Markup(template.render(before=before, written=written, other=other, after=after))  # noqa: S704


ENVIRONMENT: Final = environment()
"""Shared by all that is written from a template."""


def render(page: Page) -> str:
    """The body of ``page`` as HTML, to stand inside the theme's ``<main>``."""
    return ENVIRONMENT.get_template(_TEMPLATE_OF[type(page)]).render(page=page)


def searched(body: str) -> str:
    """What of a rendered body the search has to read: no drawings, and no sections that it is not to find."""
    return _NOT_FOUND.sub("", body)


_NOT_FOUND: Final = re.compile(
    r"<svg\b.*?</svg>|<(section|dialog|form)\b[^>]* data-search-exclude\b.*?</\1>", re.DOTALL
)
"""None of these lies in another of its kind."""


def toc_tokens(body: str) -> list[TocToken]:
    """The headings of a rendered body that have an id, nested by level."""
    reader = _Headings()
    for heading in _HEADING.findall(body):
        reader.feed(heading)
    reader.close()
    return _nested(reader.found)


def _nested(found: list[TocToken]) -> list[TocToken]:
    top: list[TocToken] = []
    open_above: list[TocToken] = []
    for token in found:
        while open_above and open_above[-1]["level"] >= token["level"]:
            open_above.pop()
        (open_above[-1]["children"] if open_above else top).append(token)
        open_above.append(token)
    return top


_HEADING: Final = re.compile("<h[1-3][ >].*?</h[1-3]>", re.DOTALL)
"""Nearly all of a body is drawings and tables; only what may be a heading is read."""


class _Headings(HTMLParser):
    """Collects headings in the order they stand."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.found: list[TocToken] = []
        self._inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        anchor = dict(attrs).get("id")
        if tag in ("h1", "h2", "h3") and anchor:
            self._inside = tag
            self.found.append(TocToken(level=int(tag[1]), id=anchor, name="", children=[]))

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.found[-1]["name"] += html.escape(data, quote=False)

    def handle_endtag(self, tag: str) -> None:
        if tag == self._inside:
            self._inside = ""
            self.found[-1]["name"] = " ".join(self.found[-1]["name"].split())
