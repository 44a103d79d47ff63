"""The demo archive as it is served from below a path: sound links, quiet pages, no other host."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, Final
from urllib.parse import urlsplit
from xml.etree import ElementTree as ET

import html5lib
import pytest
from playwright.sync_api import Page

from batchleaf.commands.opened import open_archive
from batchleaf.linkcheck import broken_links, read_page
from browsing import SUB_PATH, Served, Watch, is_moved, parsed

ROOT: Final = Path(__file__).parents[2]
LINKS: Final = ("href", "{http://www.w3.org/1999/xlink}href")


ORDINARY: Final = ("first-frost-tags", "ropewalk-place-cards", "wren-note-bookmarks")
MOST_LINES, MOST_LETTERS = 25, 900


@pytest.mark.parametrize("batch", ORDINARY)
def test_an_ordinary_record_is_short(batch: str) -> None:
    """What a maker types for a batch, with the line for the editor, fits on the back of an envelope."""
    record = (ROOT / "projects" / batch / "project.yml").read_text(encoding="utf-8")
    assert len(record.splitlines()) <= MOST_LINES
    assert len(record) <= MOST_LETTERS


def test_what_nobody_has_made_yet_was_not_filmed() -> None:
    """No step of a batch that is planned or cut has a time in a film."""
    waiting = [one for one in open_archive(ROOT).worked().archive.projects if one.finished == 0]
    assert len(waiting) == 3
    timed = [step.sentence for one in waiting for step in one.steps if step.film_seconds is not None]
    assert timed == []


PROSE: Final = sorted(
    [*ROOT.glob("projects/**/*.md"), *ROOT.glob("projects/**/*.yml"), ROOT / "site_src/about.md"]
)


@pytest.mark.parametrize("path", PROSE, ids=lambda path: "/".join(path.parts[-2:]))
def test_apostrophes_are_those_of_print(path: Path) -> None:
    """No note, record or page of the demo has one of a typewriter."""
    assert "'" not in path.read_text(encoding="utf-8")


def test_every_link_leads_somewhere(demo_site: Served) -> None:
    """No page of the demo links to a page, picture or place that is not there."""
    assert broken_links(demo_site.folder, SUB_PATH) == ()


def test_the_link_check_overlooks_nothing(demo_site: Served) -> None:
    """On every page it reads the links and names that a full HTML parser reads (html5lib)."""
    for path in demo_site.pages():
        read = read_page(path.read_text(encoding="utf-8"))
        elements = list(parsed(path).iter())
        assert read.links == {
            href.strip() for e in elements for name in LINKS if (href := e.get(name)) is not None
        }
        assert read.names == {e.get("id") for e in elements if e.get("id")}
        assert {e.get("src") for e in elements if e.get("src")} <= read.files


def test_every_page_is_html_without_a_fault(demo_site: Served) -> None:
    """A strict parser of the HTML standard takes every page (html5lib)."""
    for path in demo_site.pages():
        html5lib.HTMLParser(strict=True).parse(path.read_text(encoding="utf-8"))


def _leads_nowhere(site: Served, name: str) -> bool:
    """Whether an address below the root, with its fragment, is no page or no place on it."""
    address, _, fragment = name.partition("#")
    file = site.file(address)
    return not file.is_file() or (
        fragment != "" and fragment not in read_page(file.read_text(encoding="utf-8")).names
    )


def test_every_result_of_the_search_leads_somewhere(demo_site: Served) -> None:
    """Each entry of the index names a page, and a place on it where it names one."""
    docs = index(demo_site)
    assert docs
    assert [doc["location"] for doc in docs if _leads_nowhere(demo_site, doc["location"])] == []


def index(site: Served) -> list[Any]:
    """The entries of a site's search index."""
    entries: list[Any] = json.loads((site.folder / "search" / "search_index.json").read_text("utf-8"))["docs"]
    return entries


def test_the_list_of_pages_for_robots_is_sound(demo_site: Served) -> None:
    """Each address of ``sitemap.xml`` is the site's own and leads to a page."""
    tree = ET.parse(demo_site.folder / "sitemap.xml")
    found = [e.text or "" for e in tree.iter("{http://www.sitemaps.org/schemas/sitemap/0.9}loc")]
    assert found
    assert [address for address in found if not address.startswith(demo_site.url)] == []
    assert [one for one in found if _leads_nowhere(demo_site, one.removeprefix(demo_site.url))] == []


def test_no_link_names_the_place_where_the_site_lies(demo_site: Served) -> None:
    """Links are relative, so that a built site may be moved; but for the page of what is not found."""
    for path in demo_site.pages():
        for link in read_page(path.read_text(encoding="utf-8")).links:
            if path.name != "404.html" and urlsplit(link).path.startswith(SUB_PATH):
                assert link == demo_site.url + demo_site.name(path), "only as the page's own address"


@pytest.mark.slow
def test_no_page_asks_another_host_or_complains(demo_site: Served, page: Page, watch: Watch) -> None:
    """Every page loads from the site alone, with nothing on the console; none scrolls sideways on a phone."""
    page.set_viewport_size({"width": 320, "height": 900})
    for path in demo_site.pages():
        demo_site.visit(page, demo_site.name(path))
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, path
    assert watch.other_hosts == []
    assert watch.errors == []


def test_an_old_address_leads_on(demo_site: Served, page: Page) -> None:
    """Who comes to where a batch was sees it at once where it is."""
    old = demo_site.name(next(path for path in demo_site.pages() if is_moved(path)))
    demo_site.visit(page, old)
    assert page.url.startswith(f"{demo_site.url}projects/")
    assert page.locator("#steps").count() == 1
