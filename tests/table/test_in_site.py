"""The page for the table in a whole site: there for all, and beside its frame, its search and its map."""

from __future__ import annotations

import json

from playwright.sync_api import Page, expect

from browsing import Served, Watch


def test_every_page_leads_to_it(demo_site: Served, page: Page, watch: Watch) -> None:
    """From the foot of the first page and of a batch, and back again; the last question waits there."""
    to_it = page.locator("footer").get_by_role("link", name="At the table", exact=True)
    page.goto(demo_site.url)
    to_it.click()
    page.get_by_role("button", name="12 × 12").click()
    page.get_by_label("Size A, width × height").fill("6 x 6 in")
    expect(page.locator("#answer")).to_have_text("4 pieces.")
    page.goto(f"{demo_site.url}projects/wren-note-bookmarks/")
    to_it.click()
    expect(page.locator("#answer")).to_have_text("4 pieces.")
    page.locator("header a").click()
    page.wait_for_url(demo_site.url)
    assert watch.errors == watch.other_hosts == []


def test_neither_search_nor_map_knows_it(demo_site: Served) -> None:
    """It says nothing that somebody looks for in an archive."""
    index = json.loads((demo_site.folder / "search" / "search_index.json").read_text(encoding="utf-8"))
    assert not [one["location"] for one in index["docs"] if one["location"].startswith("table/")]
    assert "table/" not in (demo_site.folder / "sitemap.xml").read_text(encoding="utf-8")
