"""Nothing on a page moves when its rows, or its pictures, arrive late."""

from __future__ import annotations

import re
import time
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from itertools import islice
from pathlib import Path
from threading import Thread
from typing import Any, Final

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from browsing import Served

PAGES: Final = {
    "home": "",
    "batch": "projects/sloe-lane-cards/",
    "series": "series/",
    "one series": "series/hedgerow-year/",
    "item": "drawer/oat-card/",
}
WITHOUT_PICTURES: Final = {
    "drawer": "drawer/",
    "kept pieces": "offcuts/",
    "finished": "finished/",
    "prices": "prices/",
    "year": "year/",
}
ALL: Final = PAGES | WITHOUT_PICTURES

WATCH: Final = """
  window.shifts = [];
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      const moved = entry.sources.map(({node}) => node?.outerHTML || node?.textContent || "");
      window.shifts.push([entry.value, ...moved.map((html) => html.trim().slice(0, 60))]);
    }
  }).observe({type: "layout-shift", buffered: true});
"""
"""Notes each shift as the browser counts it, those after a key or a click too."""

PAINTED: Final = "() => new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(then)))"


HEIGHT: Final = "document.documentElement.scrollHeight"


class Late:
    """The pictures of a page, each held back until it is let go."""

    def __init__(self, page: Page) -> None:
        self._held: dict[str, Route] = {}
        page.route("**/photos/**", self._hold)

    def _hold(self, route: Route) -> None:
        self._held[_photo(route.request.url)] = route

    def asked_for(self) -> set[str]:
        """The photos that wait."""
        return set(self._held)

    def let_go(self, photo: str) -> None:
        """Hand over what was asked for, if it was not yet: a page may show it twice."""
        if photo in self._held:
            self._held.pop(photo).continue_()


def _photo(address: str) -> str:
    """What the files of one photo have in common, whichever the browser takes."""
    return address.rpartition("/")[2].partition("-")[0]


def shifts(page: Page, url: str, width: int) -> list[Any]:
    """What moved while picture after picture came, the last one first, each in the middle of the window."""
    page.set_viewport_size({"width": width, "height": 900})
    page.add_init_script(WATCH)
    late = Late(page)
    page.goto(url, wait_until="domcontentloaded")
    height: int = page.evaluate(HEIGHT)
    images = page.locator("main picture img")
    for place in range(images.count()):
        _look_at(page, images.nth(place))
    page.wait_for_timeout(100)  # for the browser to ask for the last of them
    photos = [_photo(address) for address in images.evaluate_all("images => images.map(image => image.src)")]
    assert photos
    assert set(photos) == late.asked_for(), "every picture comes later than the page"
    for place in reversed(range(images.count())):
        image = images.nth(place)
        _look_at(page, image)
        late.let_go(photos[place])
        expect(image).to_have_js_property("complete", value=True)
        page.evaluate(PAINTED)
    found: list[Any] = page.evaluate("shifts")
    grown = page.evaluate(HEIGHT) - height
    return [*found, [grown, "higher"]] if grown else found


def _look_at(page: Page, image: Locator) -> None:
    image.evaluate("image => image.scrollIntoView({block: 'center', behavior: 'instant'})")
    page.evaluate(PAINTED)


@pytest.mark.parametrize("width", [pytest.param(390, marks=pytest.mark.slow), 1400])
@pytest.mark.parametrize("name", PAGES.values(), ids=PAGES)
def test_pictures_have_their_room(demo_site: Served, page: Page, name: str, width: int) -> None:
    """The whole page has its final heights before the first picture is there."""
    assert shifts(page, demo_site.url + name, width) == []


def test_a_picture_without_its_room_is_seen(demo_site: Served, page: Page) -> None:
    """Without the measures in the page, the photos of the steps move what stands below them."""

    def torn(route: Route) -> None:
        body = demo_site.file(PAGES["batch"]).read_text(encoding="utf-8")
        route.fulfill(body=re.sub(r' width="\d+" height="\d+"', "", body), content_type="text/html")

    page.route("**/sloe-lane-cards/", torn)
    moved = shifts(page, demo_site.url + PAGES["batch"], 1400)
    assert "higher" in moved.pop()
    assert sum(value for value, *_ in moved) > 0.01


# --- rows that come one after the other ----------------------------------------

PIECES: Final = 20
"""In so many pieces a page comes; the browser paints between two of them."""
BETWEEN_TWO: Final = 0.03
"""Seconds."""


class _RowByRow(SimpleHTTPRequestHandler):
    """Sends a page as a slow line does: the head at once, then a few rows at a time."""

    def do_GET(self) -> None:
        file = Path(self.translate_path(self.path), "index.html")
        if not file.is_file():
            super().do_GET()
            return
        head, *rows = re.split(r"(?=<tr|<section|<figure|<li)", file.read_text(encoding="utf-8"))
        several = iter(rows)
        self.send_response(200)
        self.send_header("Content-Type", "text/html; charset=utf-8")
        self.end_headers()
        while head:
            self.wfile.write(head.encode())
            time.sleep(BETWEEN_TWO)
            head = "".join(islice(several, max(len(rows) // PIECES, 1)))

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Keep the test's output readable."""


@contextmanager
def served_slowly(folder: Path) -> Iterator[str]:
    """The address of a site whose pages come row by row."""
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(_RowByRow, directory=str(folder))) as server:
        thread = Thread(target=server.serve_forever, daemon=True)
        thread.start()
        yield f"http://127.0.0.1:{server.server_address[1]}/"
        server.shutdown()
        thread.join()


def shifts_of_main(page: Page, url: str, width: int) -> list[Any]:
    """What moved below the header while the page came."""
    page.set_viewport_size({"width": width, "height": 900})
    page.add_init_script(WATCH)
    page.goto(url)
    page.evaluate(PAINTED)
    found: list[Any] = page.evaluate("shifts")
    return [shift for shift in found if not all(moved.startswith("<nav") for moved in shift[1:])]


@pytest.mark.parametrize("width", [pytest.param(390, marks=pytest.mark.slow), 1400])
@pytest.mark.parametrize("name", ALL.values(), ids=ALL)
def test_columns_have_their_widths_before_their_last_row(
    demo_site: Served, page: Page, name: str, width: int
) -> None:
    """The rows that are there already stay where they are while others come."""
    with served_slowly(demo_site.folder) as address:
        assert shifts_of_main(page, address + name, width) == []


def test_a_column_that_grows_is_seen(demo_site: Served, page: Page, tmp_path: Path) -> None:
    """Without widths of its own, the table of what moved moves itself."""
    text = demo_site.file("drawer/oat-card/").read_text(encoding="utf-8")
    # Other sections are hidden, so that it stands in the window.
    style = (
        "<style>.moves { table-layout: auto !important; } .moves th { width: auto !important; }"
        "section:is(:has(#bought), :has(#goes-with)) { display: none; }</style>"
    )
    text = text.replace('href="../../', f'href="{demo_site.url}').replace("</head>", f"{style}</head>")
    (tmp_path / "index.html").write_text(text, encoding="utf-8")
    with served_slowly(tmp_path) as address:
        assert shifts_of_main(page, address, 1400)
