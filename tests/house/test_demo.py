"""The demo archive as it is served: sound links, quiet pages, no other host."""

from __future__ import annotations

from pathlib import Path
from typing import Final, Literal

import html5lib
import pytest
from playwright.sync_api import Page

from batchleaf.linkcheck import broken_links, read_page
from browsing import SUB_PATH, AxeFaults, Served, Watch

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


def _pages(site: Served) -> list[Path]:
    return sorted(site.folder.rglob("*.html"))


def _fullest_of_each_kind(site: Served) -> list[Path]:
    """The pages at the top, and of those that lie side by side the largest."""
    kinds: dict[Path, Path] = {}
    for path in sorted(_pages(site), key=_size):
        inside = path.relative_to(site.folder)
        kinds[inside if len(inside.parts) < 3 else inside.parent.parent] = path
    return list(kinds.values())


def _size(path: Path) -> int:
    return path.stat().st_size


def _address(site: Served, path: Path) -> str:
    return site.url + path.relative_to(site.folder).as_posix().removesuffix("index.html")


def test_every_link_leads_somewhere(demo_site: Served) -> None:
    """No page of the demo links to a page, picture or place that is not there."""
    assert broken_links(demo_site.folder, SUB_PATH) == ()


def test_the_link_check_overlooks_nothing(demo_site: Served) -> None:
    """On every page it reads the links and names that a full HTML parser reads (html5lib)."""
    for path in _pages(demo_site):
        text = path.read_text(encoding="utf-8")
        elements = list(html5lib.parse(text, namespaceHTMLElements=False).iter())
        read = read_page(text)
        assert read.links == {
            href.strip() for e in elements for name in LINKS if (href := e.get(name)) is not None
        }
        assert read.names == {e.get("id") for e in elements if e.get("id")}
        assert {e.get("src") for e in elements if e.get("src")} <= read.files


def test_no_page_asks_another_host_or_complains(demo_site: Served, page: Page, watch: Watch) -> None:
    """Every page loads from the site alone, with nothing on the console."""
    for path in _pages(demo_site):
        page.goto(_address(demo_site, path))
    assert watch.other_hosts == []
    assert watch.errors == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pages_are_plain_to_all(
    demo_site: Served, page: Page, axe_faults: AxeFaults, scheme: Literal["light", "dark"]
) -> None:
    """On the fullest page of each kind axe-core finds no fault."""
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    faults: dict[str, tuple[str, ...]] = {}
    for path in _fullest_of_each_kind(demo_site):
        page.goto(_address(demo_site, path))
        faults[path.relative_to(demo_site.folder).as_posix()] = axe_faults(page)
    assert {name: found for name, found in faults.items() if found} == {}
